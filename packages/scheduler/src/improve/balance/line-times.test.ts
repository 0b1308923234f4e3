import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { createRandom } from "../../chance/random.ts";
import { LineFold } from "./line-fold.ts";
import type { LineTimes } from "./line-times.ts";
import type { ParallelLines } from "./parallel-lines.ts";
import { SmoothedEnds } from "./smoothed-ends.ts";
import { SumLines } from "./sum-lines.ts";

const M = 3;

interface Case {
  readonly n: number;
  readonly seed: number;
  readonly waits: boolean;
  /** Longest change, s; the narrow and the wide layout of arcs both occur. */
  readonly longest: number;
}

const caseArb: fc.Arbitrary<Case> = fc.record({
  n: fc.integer({ min: 3, max: 12 }),
  seed: fc.nat(1e6),
  waits: fc.boolean(),
  longest: fc.constantFrom(4, 40, 40_000),
});

function randomLines({ n, seed, waits, longest }: Case): ParallelLines {
  const random = createRandom(seed);
  const ints = (length: number, most: number): Int32Array =>
    Int32Array.from({ length }, () => random.below(most));
  const run = ints(M * n, 50);
  // every order may run on line 0; about a fifth of the others are refused
  for (let cell = n; cell < M * n; cell++) if (random.below(5) === 0) run[cell] = -1;
  return {
    m: M,
    n,
    freeAt: ints(M, 30),
    change: ints(M * (n + 1) * n, longest),
    run,
    opens: waits ? ints(M * n, 300) : new Int32Array(M * n),
    release: waits ? ints(n, 300) : new Int32Array(n),
    option: new Int32Array(M * n),
    waits,
  };
}

/** The end of a line, order by order: the oracle. */
function endOf(lines: ParallelLines, line: number, row: readonly number[]): number {
  const { n } = lines;
  let t = lines.freeAt[line]!;
  let before = n;
  for (const order of row) {
    const opened = Math.max(t, lines.opens[line * n + order]!);
    const changed = opened + lines.change[(line * (n + 1) + before) * n + order]!;
    t = Math.max(changed, lines.release[order]!) + lines.run[line * n + order]!;
    before = order;
  }
  return t;
}

interface Filled {
  readonly lines: ParallelLines;
  readonly smoothed: SmoothedEnds;
  readonly times: LineTimes;
  readonly rows: number[][];
}

/** All orders but the last on lines at random, their ends measured. Kernels that suit the case: sums where nothing waits, folds anywhere. */
function fill(given: Case, kernel: typeof SumLines | typeof LineFold): Filled {
  const lines = randomLines(given);
  const random = createRandom(given.seed + 1);
  const smoothed = new SmoothedEnds(M);
  const times = new kernel(lines, smoothed, () => false);
  const rows: number[][] = Array.from({ length: M }, () => []);
  for (let order = 0; order + 1 < given.n; order++) {
    let line = random.below(M);
    if (lines.run[line * given.n + order]! < 0) line = 0;
    const position = random.below(rows[line]!.length + 1);
    times.insert(line, position, order);
    rows[line]!.splice(position, 0, order);
  }
  smoothed.aimAt(Math.max(...times.end) - 1);
  times.end.forEach((end, line) => {
    smoothed.measure(line, end);
  });
  return { lines, smoothed, times, rows };
}

const rowsOf = (times: LineTimes): number[][] =>
  Array.from(times.length, (length, line) =>
    Array.from({ length }, (_, position) => times.orderAt(line, position)),
  );

function expectTrueEnds({ lines, times }: Filled): void {
  rowsOf(times).forEach((row, line) => {
    expect(times.end[line]).toBe(endOf(lines, line, row));
  });
}

/** The least growth over every place, each line timed anew. */
function leastGrowth({ lines, smoothed, rows }: Filled, order: number): number {
  let least = Infinity;
  rows.forEach((row, line) => {
    if (lines.run[line * lines.n + order]! < 0) return;
    const before = smoothed.costOf(endOf(lines, line, row));
    for (let p = 0; p <= row.length; p++) {
      const longer = [...row.slice(0, p), order, ...row.slice(p)];
      least = Math.min(least, smoothed.costOf(endOf(lines, line, longer)) - before);
    }
  });
  return least;
}

const kernels = [
  { name: "sums", kernel: SumLines, arb: caseArb.map((given) => ({ ...given, waits: false })) },
  { name: "folds", kernel: LineFold, arb: caseArb },
];

describe.each(kernels)("lines timed by $name", ({ kernel, arb }) => {
  const holds = (law: (filled: Filled, given: Case) => void): void => {
    fc.assert(
      fc.property(arb, (given) => {
        law(fill(given, kernel), given);
      }),
      { seed: 91, numRuns: 400 },
    );
  };

  it("know their ends", () => {
    holds((filled) => {
      expect(rowsOf(filled.times)).toEqual(filled.rows);
      expectTrueEnds(filled);
    });
  });
  it("find the place of least growth that a look at every place finds", () => {
    holds((filled, { n }) => {
      const { times, smoothed } = filled;
      times.findPlace(n - 1);
      const line = times.placeLine;
      times.insert(line, times.placePosition, n - 1);
      expectTrueEnds(filled);
      const growth = smoothed.costOf(times.end[line]!) - smoothed.cost[line]!;
      expect(growth).toBe(leastGrowth(filled, n - 1));
    });
  });
  it("find nothing where every place is blinked at", () => {
    const times = new kernel(
      randomLines({ n: 4, seed: 3, waits: false, longest: 9 }),
      new SmoothedEnds(M),
      () => true,
    );
    times.findPlace(2);
    expect(times.placeLine).toBe(-1);
  });
  it("take strings out and put the old line back", () => {
    holds((filled, { seed }) => {
      const { times, rows } = filled;
      const random = createRandom(seed + 2);
      const ends = [...times.end];
      for (let line = 0; line < M; line++) {
        times.keep(line);
        const row = rows[line]!;
        const count = random.below(row.length + 1);
        const from = random.below(row.length - count + 1);
        times.remove(line, from, count);
        expect(rowsOf(times)[line]).toEqual([...row.slice(0, from), ...row.slice(from + count)]);
        expectTrueEnds(filled);
        times.insert(line, 0, 0);
        times.restore(line);
      }
      expect(rowsOf(times)).toEqual(rows);
      expect([...times.end]).toEqual(ends);
    });
  });
  it("are shortened to where no single order can move", () => {
    let shortened = 0;
    holds((filled) => {
      const { lines, times, rows } = filled;
      for (let line = 0; line < M; line++) {
        const before = times.end[line]!;
        times.shorten(line);
        if (times.end[line]! < before) shortened++;
        expect(times.end[line]).toBeLessThanOrEqual(before);
        expect([...rowsOf(times)[line]!].sort((a, b) => a - b)).toEqual(
          [...rows[line]!].sort((a, b) => a - b),
        );
        expect(times.end[line]).toBe(endOf(lines, line, rowsOf(times)[line]!));
      }
    });
    expect(shortened).toBeGreaterThan(100);
  });
});

describe("the smoothed ends", () => {
  it("never allow less room than a growth takes", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 1_000_000 }),
        fc.integer({ min: 0, max: 1_000_000 }),
        fc.integer({ min: 0, max: 100_000 }),
        (target, end, added) => {
          const smoothed = new SmoothedEnds(1);
          smoothed.aimAt(target);
          smoothed.measure(0, end);
          const growth = smoothed.costOf(end + added) - smoothed.costOf(end);
          // one second for what rounding loses
          expect(smoothed.room(0, growth) + 1).toBeGreaterThanOrEqual(added);
        },
      ),
      { seed: 92, numRuns: 500 },
    );
  });
});
