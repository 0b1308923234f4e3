import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { createRandom } from "../../chance/random.ts";
import { LineFold } from "./line-fold.ts";
import type { ParallelLines } from "./parallel-lines.ts";
import { shortenLine } from "./shorten-line.ts";

function randomLines(n: number, seed: number, waits: boolean): ParallelLines {
  const random = createRandom(seed);
  const m = 2;
  const ints = (length: number, most: number): Int32Array =>
    Int32Array.from({ length }, () => random.below(most));
  return {
    m,
    n,
    freeAt: ints(m, 30),
    change: ints(m * (n + 1) * n, 40),
    run: ints(m * n, 50),
    opens: waits ? ints(m * n, 300) : new Int32Array(m * n),
    release: waits ? ints(n, 300) : new Int32Array(n),
    option: new Int32Array(m * n),
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

const caseArb = fc.record({ n: fc.integer({ min: 3, max: 12 }), seed: fc.nat(1e6), waits: fc.boolean() });

describe("a line folded from both ends", () => {
  it("knows what one order more or less does to its end", () => {
    fc.assert(
      fc.property(caseArb, ({ n, seed, waits }) => {
        const lines = randomLines(n, seed, waits);
        const fold = new LineFold(lines);
        const row: number[] = [];
        for (let order = 0; order + 1 < n; order++) {
          const position = (seed + order * 7) % (row.length + 1);
          fold.insert(1, position, order);
          row.splice(position, 0, order);
        }
        expect(fold.end[1]).toBe(endOf(lines, 1, row));
        for (let position = 0; position <= row.length; position++) {
          const longer = [...row.slice(0, position), n - 1, ...row.slice(position)];
          expect(fold.endWith(1, position, n - 1)).toBe(endOf(lines, 1, longer));
        }
      }),
      { seed: 91, numRuns: 300 },
    );
  });
  it("is never lengthened by moving single orders", () => {
    fc.assert(
      fc.property(caseArb, ({ n, seed, waits }) => {
        const lines = randomLines(n, seed, waits);
        const fold = new LineFold(lines);
        for (let order = 0; order < n; order++) fold.insert(0, order, order);
        const before = fold.end[0]!;
        shortenLine(fold, 0);
        expect(fold.end[0]).toBeLessThanOrEqual(before);
        expect(fold.end[0]).toBe(endOf(lines, 0, [...fold.rows[0]!.subarray(0, n)]));
        expect(new Set(fold.rows[0]!.subarray(0, n)).size).toBe(n);
      }),
      { seed: 92, numRuns: 200 },
    );
  });
});
