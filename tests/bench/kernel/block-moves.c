/*
 * The same work as BlockMoves.load and BlockMoves.descend where changes cost no money, as plain C loops: the measure for the
 * engine's own speed. Reads n, freeAt, (n + 1) x n steps, n due times, n rates, the number of sequences, and those.
 * Prints moves judged, moves made, the sum of the final money, and processor seconds of the descents alone.
 *
 * Plain unless built with some of these, each a cost that the engine's machine code bears:
 * INDEX_CHECKS     each index is held against the array's length: the language asks for it
 * OVERFLOW_CHECKS  each sum and product of whole numbers is checked: the language asks for it
 * FRESH_LOADS      each pass of a loop compares the stack with its limit, and then loads each array's kind, place (the sum
 *                  of two addresses) and length anew and checks the kind: not the language but its compiler does (Node 20)
 */
#include <stdio.h>
#include <stdlib.h>
#include <time.h>

#define LONGEST_BLOCK 10
#define LEAST_GAIN 1e-7

enum kind { INTS = 3, DOUBLES = 7 };
typedef struct {
  enum kind kind;
  int length;
  int *at;
  size_t base;
} Ints;
typedef struct {
  enum kind kind;
  int length;
  double *at;
  size_t base;
} Doubles;

static int n;
static Ints step, sequence, scratch;
static double freeAt, money;
static Doubles due, rateOf, end, lateness, rate, rateBefore, delayAfter;
static long long evaluations, exchanges;

#ifdef FRESH_LOADS
static char *volatile stackLimit;
#define CHECK_KIND(array, wanted) \
  if ((array)->kind != wanted) abort()
#define PLACE(array) ((array)->at + (array)->base)
/* The empty assembly says that all memory may have changed. */
static inline void beginPass(void) {
  if ((char *)__builtin_frame_address(0) <= stackLimit) abort();
  __asm__ volatile("" ::: "memory");
}
#else
#define CHECK_KIND(array, wanted)
#define PLACE(array) ((array)->at)
static inline void beginPass(void) {}
#endif

#ifdef INDEX_CHECKS
#define CHECK_INDEX(array, index) \
  if ((unsigned)(index) >= (unsigned)(array)->length) abort()
#else
#define CHECK_INDEX(array, index)
#endif

static inline int *whole(const Ints *array, int index) {
  CHECK_KIND(array, INTS);
  CHECK_INDEX(array, index);
  return &PLACE(array)[index];
}

static inline double *real(const Doubles *array, int index) {
  CHECK_KIND(array, DOUBLES);
  CHECK_INDEX(array, index);
  return &PLACE(array)[index];
}

#define WHOLE(array, index) (*whole(&(array), index))
#define REAL(array, index) (*real(&(array), index))

#ifdef OVERFLOW_CHECKS
static inline int sum(int a, int b) {
  int result;
  if (__builtin_add_overflow(a, b, &result)) abort();
  return result;
}
static inline int product(int a, int b) {
  int result;
  if (__builtin_mul_overflow(a, b, &result)) abort();
  return result;
}
#else
static inline int sum(int a, int b) { return a + b; }
static inline int product(int a, int b) { return a * b; }
#endif

static void timeSequence(void) {
  double at = freeAt, late = 0;
  money = 0;
  for (int p = 0, before = n; p < n; p = sum(p, 1)) {
    beginPass();
    int order = WHOLE(sequence, p);
    at += WHOLE(step, sum(product(before, n), order));
    REAL(end, p) = at;
    double tardy = at - REAL(due, order);
    REAL(lateness, p) = tardy;
    REAL(rate, p) = REAL(rateOf, order);
    if (tardy > 0) {
      money += tardy * REAL(rateOf, order);
      late += REAL(rateOf, order);
    }
    REAL(rateBefore, sum(p, 1)) = late;
    before = order;
  }
}

static int setAside(int from, int to, int size) {
  for (int p = from; p < to; p = sum(p, 1)) {
    beginPass();
    WHOLE(scratch, size) = WHOLE(sequence, p);
    size = sum(size, 1);
  }
  return size;
}

static void exchange(int i, int a, int j, int k) {
  int size = setAside(i, a, setAside(a, j, setAside(j, k, 0)));
  for (int p = 0; p < size; p = sum(p, 1)) {
    beginPass();
    WHOLE(sequence, sum(i, p)) = WHOLE(scratch, p);
  }
  exchanges++;
  timeSequence();
}

/* By what [i, a), [a, b), [b, k) and [k, n) shift. */
typedef struct {
  int a, b, k;
  double first, second, third, rest;
} Shifts;

/* What is left of a promised gain after the shifts; at most LEAST_GAIN once it is used up. */
static inline double lessCrossings(int i, Shifts by, double gain) {
  for (int p = i; p < n; p = sum(p, 1)) {
    beginPass();
    double late = REAL(lateness, p);
    double moved = late + (p < by.a ? by.first : p < by.b ? by.second : p < by.k ? by.third : by.rest);
    if (!(late > 0 ? moved < 0 : moved > 0)) continue;
    gain -= __builtin_fabs(moved) * REAL(rate, p);
    if (gain <= LEAST_GAIN) break;
  }
  return gain;
}

static void findDelays(int i) {
  int a = WHOLE(sequence, i);
  for (int p = sum(i, 1); p < n; p = sum(p, 1)) {
    beginPass();
    REAL(delayAfter, p) = REAL(end, p) - REAL(end, i) + WHOLE(step, sum(product(WHOLE(sequence, p), n), a));
  }
}

static int tryNeighbours(int i, int j) {
  int last = sum(j, -i) <= LONGEST_BLOCK || sum(j, LONGEST_BLOCK) > n ? n : sum(j, LONGEST_BLOCK);
  int before = product(i == 0 ? n : WHOLE(sequence, sum(i, -1)), n), afterA = product(WHOLE(sequence, sum(j, -1)), n);
  double startA = i == 0 ? freeAt : REAL(end, sum(i, -1)), endOfA = REAL(end, sum(j, -1));
  double shiftB = startA + WHOLE(step, sum(before, WHOLE(sequence, j))) - REAL(end, j);
  double rateJ = REAL(rateBefore, j), rateA = rateJ - REAL(rateBefore, i), rateAll = REAL(rateBefore, n);
  evaluations += last - j;
  for (int k = sum(j, 1); k <= last; k = sum(k, 1)) {
    beginPass();
    double shiftA = REAL(delayAfter, sum(k, -1)) + shiftB, rateK = REAL(rateBefore, k);
    double bound = shiftB * (rateK - rateJ) + shiftA * rateA, shiftS = 0;
    if (k < n) {
      shiftS = endOfA + shiftA + WHOLE(step, sum(afterA, WHOLE(sequence, k))) - REAL(end, k);
      bound += shiftS * (rateAll - rateK);
    }
    if (bound >= -LEAST_GAIN) continue;
    if (lessCrossings(i, (Shifts){j, j, k, shiftA, 0, shiftB, shiftS}, -bound) <= LEAST_GAIN) continue;
    exchange(i, j, j, k);
    return 1;
  }
  return 0;
}

static int tryTrades(int i) {
  int m = sum(i, 1), a = WHOLE(sequence, i), before = product(i == 0 ? n : WHOLE(sequence, sum(i, -1)), n);
  double atI = i == 0 ? freeAt : REAL(end, sum(i, -1));
  double rateA = REAL(lateness, i) > 0 ? REAL(rate, i) : 0, rateAll = REAL(rateBefore, n);
  if (n > m + 1) evaluations += n - m - 1;
  for (int j = sum(m, 1); j < n; j = sum(j, 1)) {
    beginPass();
    int b = WHOLE(sequence, j), k = sum(j, 1);
    double shiftB = atI + WHOLE(step, sum(before, b)) - REAL(end, j);
    double shiftM = REAL(end, j) + shiftB + WHOLE(step, sum(product(b, n), WHOLE(sequence, m))) - REAL(end, m);
    double shiftA = REAL(delayAfter, sum(j, -1)) + shiftM, shiftS = 0;
    double bound = shiftB * (REAL(rateBefore, k) - REAL(rateBefore, j)) +
                   shiftM * (REAL(rateBefore, j) - REAL(rateBefore, m)) + shiftA * rateA;
    if (k < n) {
      shiftS = REAL(end, i) + shiftA + WHOLE(step, sum(product(a, n), WHOLE(sequence, k))) - REAL(end, k);
      bound += shiftS * (rateAll - REAL(rateBefore, k));
    }
    if (bound >= -LEAST_GAIN) continue;
    if (lessCrossings(i, (Shifts){m, j, k, shiftA, shiftM, shiftB, shiftS}, -bound) <= LEAST_GAIN) continue;
    exchange(i, m, j, k);
    return 1;
  }
  return 0;
}

static int improveAt(int i) {
  if (REAL(rateBefore, n) == REAL(rateBefore, i)) return 0;
  findDelays(i);
  for (int j = sum(i, 1); j < n; j = sum(j, 1)) {
    beginPass();
    if (tryNeighbours(i, j)) return 1;
  }
  return tryTrades(i);
}

static void descend(void) {
  for (int i = 0, quiet = 0; quiet < n; i = sum(i, 1) < n ? sum(i, 1) : 0) {
    beginPass();
    quiet = improveAt(i) ? 0 : sum(quiet, 1);
  }
}

static void *array(size_t count, size_t size) {
  void *memory = calloc(count, size);
  if (!memory) exit(2);
  return memory;
}

static Ints ints(int length) { return (Ints){INTS, length, array(length, sizeof(int)), 0}; }

static Doubles doubles(int length) { return (Doubles){DOUBLES, length, array(length, sizeof(double)), 0}; }

static void readNumber(const char *format, void *into) {
  if (scanf(format, into) == 1) return;
  fprintf(stderr, "input ends early or is no number\n");
  exit(1);
}

int main(void) {
  int count;
  readNumber("%d", &n);
  readNumber("%lf", &freeAt);
  if (n < 2 || n > 10000) return 1;
  step = ints((n + 1) * n);
  sequence = ints(n);
  scratch = ints(n);
  due = doubles(n);
  rateOf = doubles(n);
  end = doubles(n);
  lateness = doubles(n);
  rate = doubles(n);
  rateBefore = doubles(n + 1);
  delayAfter = doubles(n);
  for (int p = 0; p < (n + 1) * n; p++) readNumber("%d", &step.at[p]);
  for (int p = 0; p < n; p++) readNumber("%lf", &due.at[p]);
  for (int p = 0; p < n; p++) readNumber("%lf", &rateOf.at[p]);
  readNumber("%d", &count);
  if (count < 1 || count > 1000000) return 1;
  int *starts = array((size_t)count * n, sizeof *starts);
  for (int p = 0; p < count * n; p++) {
    readNumber("%d", &starts[p]);
    if (starts[p] < 0 || starts[p] >= n) return 1;
  }
  double paid = 0;
  clock_t began = clock();
  for (int s = 0; s < count; s++) {
    for (int p = 0; p < n; p++) sequence.at[p] = starts[s * n + p];
    timeSequence();
    descend();
    paid += money;
  }
  printf("%lld %lld %.17g %.6f\n", evaluations, exchanges, paid, (double)(clock() - began) / CLOCKS_PER_SEC);
  return 0;
}
