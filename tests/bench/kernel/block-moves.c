/*
 * The same work as BlockMoves.load and BlockMoves.descend where changes cost no money, as plain C loops: the measure for the
 * engine's own speed. Reads n, freeAt, (n + 1) x n steps, n due times, n rates, the number of sequences, and those.
 * Prints moves judged, moves made, the sum of the final money, and processor seconds of the descents alone.
 */
#include <stdio.h>
#include <stdlib.h>
#include <time.h>

#define LONGEST_BLOCK 10
#define LEAST_GAIN 1e-7

static int n, *step, *sequence, *scratch;
static double freeAt, money, *due, *rateOf, *end, *lateness, *rate, *rateBefore;
static long long evaluations, exchanges;

static void timeSequence(void) {
  double at = freeAt, late = 0;
  money = 0;
  for (int p = 0, before = n; p < n; before = sequence[p++]) {
    int order = sequence[p];
    at += step[before * n + order];
    end[p] = at;
    lateness[p] = at - due[order];
    rate[p] = rateOf[order];
    if (lateness[p] > 0) {
      money += lateness[p] * rate[p];
      late += rate[p];
    }
    rateBefore[p + 1] = late;
  }
}

static void exchange(int i, int a, int j, int k) {
  int size = 0;
  for (int p = j; p < k; p++) scratch[size++] = sequence[p];
  for (int p = a; p < j; p++) scratch[size++] = sequence[p];
  for (int p = i; p < a; p++) scratch[size++] = sequence[p];
  for (int p = 0; p < size; p++) sequence[i + p] = scratch[p];
  exchanges++;
  timeSequence();
}

static double lessCrossings(int from, int to, double shift, double gain) {
  if (shift == 0) return gain;
  if (shift > 0) {
    for (int p = from; p < to; p++)
      if (lateness[p] <= 0 && lateness[p] + shift > 0) {
        gain -= (lateness[p] + shift) * rate[p];
        if (gain <= 0) return gain;
      }
    return gain;
  }
  for (int p = from; p < to; p++)
    if (lateness[p] > 0 && lateness[p] + shift < 0) {
      gain += (lateness[p] + shift) * rate[p];
      if (gain <= 0) return gain;
    }
  return gain;
}

static int tryNeighbours(int i, int j) {
  int last = j - i <= LONGEST_BLOCK || j + LONGEST_BLOCK > n ? n : j + LONGEST_BLOCK;
  int before = (i == 0 ? n : sequence[i - 1]) * n, firstOfA = sequence[i], afterA = sequence[j - 1] * n;
  double shiftB = (i == 0 ? freeAt : end[i - 1]) + step[before + sequence[j]] - end[j];
  double fromA = end[i], sizeA = end[j - 1] - fromA, toS = fromA + sizeA;
  double rateJ = rateBefore[j], rateA = rateJ - rateBefore[i], rateAll = rateBefore[n];
  evaluations += last - j;
  for (int k = j + 1; k <= last; k++) {
    double shiftA = end[k - 1] + shiftB + step[sequence[k - 1] * n + firstOfA] - fromA;
    double bound = shiftB * (rateBefore[k] - rateJ) + shiftA * rateA, shiftS = 0;
    if (k < n) {
      shiftS = toS + shiftA + step[afterA + sequence[k]] - end[k];
      bound += shiftS * (rateAll - rateBefore[k]);
    }
    if (bound >= -LEAST_GAIN) continue;
    double gain = lessCrossings(i, j, shiftA, -bound);
    if (gain > LEAST_GAIN) gain = lessCrossings(j, k, shiftB, gain);
    if (gain > LEAST_GAIN) gain = lessCrossings(k, n, shiftS, gain);
    if (gain <= LEAST_GAIN) continue;
    exchange(i, j, j, k);
    return 1;
  }
  return 0;
}

static int tryTrades(int i) {
  int m = i + 1, a = sequence[i], before = (i == 0 ? n : sequence[i - 1]) * n;
  double atI = i == 0 ? freeAt : end[i - 1], rateA = lateness[i] > 0 ? rate[i] : 0, rateAll = rateBefore[n];
  if (n > m + 1) evaluations += n - m - 1;
  for (int j = m + 1; j < n; j++) {
    int b = sequence[j], k = j + 1;
    double shiftB = atI + step[before + b] - end[j];
    double shiftM = end[j] + shiftB + step[b * n + sequence[m]] - end[m];
    double shiftA = end[j - 1] + shiftM + step[sequence[j - 1] * n + a] - end[i], shiftS = 0;
    double bound = shiftB * (rateBefore[k] - rateBefore[j]) + shiftM * (rateBefore[j] - rateBefore[m]) + shiftA * rateA;
    if (k < n) {
      shiftS = end[i] + shiftA + step[a * n + sequence[k]] - end[k];
      bound += shiftS * (rateAll - rateBefore[k]);
    }
    if (bound >= -LEAST_GAIN) continue;
    double gain = lessCrossings(i, m, shiftA, -bound);
    if (gain > LEAST_GAIN) gain = lessCrossings(m, j, shiftM, gain);
    if (gain > LEAST_GAIN) gain = lessCrossings(j, k, shiftB, gain);
    if (gain > LEAST_GAIN) gain = lessCrossings(k, n, shiftS, gain);
    if (gain <= LEAST_GAIN) continue;
    exchange(i, m, j, k);
    return 1;
  }
  return 0;
}

static int improveAt(int i) {
  if (rateBefore[n] == rateBefore[i]) return 0;
  for (int j = i + 1; j < n; j++)
    if (tryNeighbours(i, j)) return 1;
  return tryTrades(i);
}

static void descend(void) {
  for (int i = 0, quiet = 0; quiet < n; i = i + 1 < n ? i + 1 : 0) quiet = improveAt(i) ? 0 : quiet + 1;
}

static void *array(size_t count, size_t size) {
  void *memory = calloc(count, size);
  if (!memory) exit(2);
  return memory;
}

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
  step = array((size_t)(n + 1) * n, sizeof *step);
  sequence = array(n, sizeof *sequence);
  scratch = array(n, sizeof *scratch);
  due = array(n, sizeof *due);
  rateOf = array(n, sizeof *rateOf);
  end = array(n, sizeof *end);
  lateness = array(n, sizeof *lateness);
  rate = array(n, sizeof *rate);
  rateBefore = array(n + 1, sizeof *rateBefore);
  for (int p = 0; p < (n + 1) * n; p++) readNumber("%d", &step[p]);
  for (int p = 0; p < n; p++) readNumber("%lf", &due[p]);
  for (int p = 0; p < n; p++) readNumber("%lf", &rateOf[p]);
  readNumber("%d", &count);
  if (count < 1 || count > 1000000) return 1;
  int *starts = array((size_t)count * n, sizeof *starts);
  for (int p = 0; p < count * n; p++) {
    readNumber("%d", &starts[p]);
    if (starts[p] < 0 || starts[p] >= n) return 1;
  }
  double sum = 0;
  clock_t began = clock();
  for (int s = 0; s < count; s++) {
    for (int p = 0; p < n; p++) sequence[p] = starts[s * n + p];
    timeSequence();
    descend();
    sum += money;
  }
  printf("%lld %lld %.17g %.6f\n", evaluations, exchanges, sum, (double)(clock() - began) / CLOCKS_PER_SEC);
  return 0;
}
