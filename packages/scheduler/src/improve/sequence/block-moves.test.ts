import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { createRandom } from "../../chance/random.ts";
import { BlockMoves } from "./block-moves.ts";
import type { OneLine } from "./one-line.ts";
import { moveBlock } from "./vary.ts";

function randomLine(n: number, seed: number, changesCost: boolean): OneLine {
  const random = createRandom(seed);
  const step = Int32Array.from({ length: (n + 1) * n }, () => 1 + random.below(60));
  const changeMoney = Float64Array.from(step, () => (changesCost ? random.below(50) : 0));
  return {
    n,
    freeAt: random.below(20),
    step,
    changeMoney,
    changesCost,
    due: Float64Array.from({ length: n }, () => random.below(25 * n)),
    rate: Float64Array.from({ length: n }, () => random.below(8)),
  };
}

/** The fold written out: the oracle of all shortcuts. */
function moneyOf(line: OneLine, sequence: readonly number[]): number {
  let at = line.freeAt;
  let before = line.n;
  let money = 0;
  for (const order of sequence) {
    at += line.step[before * line.n + order]!;
    money +=
      line.changeMoney[before * line.n + order]! + Math.max(0, at - line.due[order]!) * line.rate[order]!;
    before = order;
  }
  return money;
}

function permutations(items: readonly number[]): number[][] {
  if (items.length <= 1) return [[...items]];
  return items.flatMap((item, i) =>
    permutations(items.filter((_, j) => j !== i)).map((rest) => [item, ...rest]),
  );
}

const lineArb = fc.record({
  n: fc.integer({ min: 2, max: 30 }),
  seed: fc.nat(1e6),
  changesCost: fc.boolean(),
});

/** All sequences that one move makes: neighbouring blocks exchanged, or two single orders over a middle. */
function neighboursOf(at: readonly number[]): number[][] {
  const n = at.length;
  const moved: number[][] = [];
  for (let i = 0; i < n; i++) {
    for (let j = i + 1; j < n; j++) {
      for (let k = j + 1; k <= n; k++)
        moved.push([...at.slice(0, i), ...at.slice(j, k), ...at.slice(i, j), ...at.slice(k)]);
      moved.push([...at.slice(0, i), at[j]!, ...at.slice(i + 1, j), at[i]!, ...at.slice(j + 1)]);
    }
  }
  return moved;
}

describe("block moves on one line", () => {
  it("keep the money equal to a fold over the sequence, and never make it dearer", () => {
    fc.assert(
      fc.property(lineArb, ({ n, seed, changesCost }) => {
        const line = randomLine(n, seed, changesCost);
        const moves = new BlockMoves(line);
        moves.load(Int32Array.from({ length: n }, (_, i) => i));
        const first = moves.money;
        expect(first).toBeCloseTo(moneyOf(line, [...moves.sequence]), 6);
        moves.descend(seed % n);
        expect(moves.money).toBeCloseTo(moneyOf(line, [...moves.sequence]), 6);
        expect(moves.money).toBeLessThanOrEqual(first);
        expect(new Set(moves.sequence).size).toBe(n);
      }),
      { seed: 81, numRuns: 200 },
    );
  });
  it("leave no exchange of blocks or of two orders that would gain: the bound refuses none wrongly", () => {
    fc.assert(
      fc.property(fc.integer({ min: 2, max: 9 }), fc.nat(1e6), fc.boolean(), (n, seed, changesCost) => {
        const line = randomLine(n, seed, changesCost);
        const moves = new BlockMoves(line);
        moves.load(Int32Array.from({ length: n }, (_, i) => i));
        moves.descend(0);
        for (const neighbour of neighboursOf([...moves.sequence]))
          expect(moneyOf(line, neighbour)).toBeGreaterThanOrEqual(moves.money - 1e-6);
      }),
      { seed: 82, numRuns: 100 },
    );
  });
  it("near a changed stretch keep the money equal to a fold, and move what the stretch asks for", () => {
    let improved = 0;
    fc.assert(
      fc.property(lineArb, ({ n, seed, changesCost }) => {
        const line = randomLine(n, seed, changesCost);
        const random = createRandom(seed + 1);
        const moves = new BlockMoves(line);
        moves.load(Int32Array.from({ length: n }, (_, i) => i));
        moves.descend(0);
        const kicked = Int32Array.from(moves.sequence);
        const { from, to } = moveBlock(random, kicked);
        moves.load(kicked);
        const first = moves.money;
        moves.descendNear(from, to);
        expect(moves.money).toBeCloseTo(moneyOf(line, [...moves.sequence]), 6);
        expect(moves.money).toBeLessThanOrEqual(first);
        expect(new Set(moves.sequence).size).toBe(n);
        if (moves.money < first) improved++;
      }),
      { seed: 83, numRuns: 200 },
    );
    expect(improved).toBeGreaterThan(100);
  });
  it("near a changed stretch leave no gain that begins at the outer cuts of a single move made", () => {
    let looked = 0;
    fc.assert(
      fc.property(fc.integer({ min: 8, max: 16 }), fc.nat(1e6), (n, seed) => {
        const line = randomLine(n, seed, seed % 2 === 0);
        const moves = new BlockMoves(line);
        moves.load(Int32Array.from({ length: n }, (_, i) => i));
        moves.descend(0);
        const kicked = Int32Array.from(moves.sequence);
        const { from, to } = moveBlock(createRandom(seed + 1), kicked);
        moves.load(kicked);
        moves.descendNear(from, to);
        const rest = [...moves.sequence];
        if (!neighboursOf([...kicked]).some((moved) => moved.every((order, p) => order === rest[p]))) return;
        const changed = rest.flatMap((order, p) => (order === kicked[p] ? [] : [p]));
        if (changed.length === 0) return;
        for (const neighbour of neighboursOf(rest)) {
          const begin = neighbour.findIndex((order, p) => order !== rest[p]);
          if (begin !== changed[0] && begin !== changed.at(-1)! + 1) continue;
          expect(moneyOf(line, neighbour)).toBeGreaterThanOrEqual(moves.money - 1e-6);
          looked++;
        }
      }),
      { seed: 84, numRuns: 300 },
    );
    expect(looked).toBeGreaterThan(1000);
  });
  it("reach the optimum of five orders from one of a few starts", () => {
    for (let seed = 1; seed <= 30; seed++) {
      const line = randomLine(5, seed, seed % 2 === 0);
      const all = permutations([0, 1, 2, 3, 4]);
      const optimum = Math.min(...all.map((sequence) => moneyOf(line, sequence)));
      const moves = new BlockMoves(line);
      const found = all.slice(0, 24).map((start) => {
        moves.load(Int32Array.from(start));
        moves.descend(0);
        return moves.money;
      });
      expect(Math.min(...found)).toBeCloseTo(optimum, 6);
    }
  });
});
