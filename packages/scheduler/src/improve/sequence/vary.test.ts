import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { createRandom } from "../../chance/random.ts";
import { cross, moveBlock, shuffle } from "./vary.ts";

const sizeAndSeed = [fc.integer({ min: 2, max: 40 }), fc.nat(1e6)] as const;

function identity(n: number): Int32Array {
  return Int32Array.from({ length: n }, (_, i) => i);
}

/** Longest run of places at which two sequences hold the same order, going round. */
function longestCommonStretch(a: Int32Array, b: Int32Array): number {
  let longest = 0;
  let run = 0;
  for (let i = 0; i < 2 * a.length; i++) {
    run = a[i % a.length] === b[i % a.length] ? run + 1 : 0;
    longest = Math.max(longest, run);
  }
  return Math.min(longest, a.length);
}

describe("variation of sequences", () => {
  it("crosses two parents into a sequence of all orders that keeps places of the first", () => {
    fc.assert(
      fc.property(...sizeAndSeed, (n, seed) => {
        const random = createRandom(seed);
        const [a, b] = [identity(n), identity(n)];
        shuffle(random, a);
        shuffle(random, b);
        const child = new Int32Array(n).fill(-1);
        cross(random, a, b, child);
        expect([...child].sort((x, y) => x - y)).toEqual([...identity(n)]);
        expect(longestCommonStretch(child, a)).toBeGreaterThan(0);
      }),
      { seed: 91, numRuns: 300 },
    );
  });
  it("crosses a parent with itself, front to back, into itself", () => {
    const random = createRandom(4);
    const a = identity(20);
    shuffle(random, a);
    let same = 0;
    for (let times = 0; times < 60; times++) {
      const child = new Int32Array(20);
      cross(random, a, a, child);
      if (child.every((order, p) => order === a[p])) same++;
    }
    expect(same).toBeGreaterThan(15);
  });
  it("moves a block and says which stretch changed", () => {
    fc.assert(
      fc.property(...sizeAndSeed, (n, seed) => {
        const sequence = identity(n);
        const { from, to } = moveBlock(createRandom(seed), sequence);
        expect([...sequence].sort((x, y) => x - y)).toEqual([...identity(n)]);
        sequence.forEach((order, p) => {
          if (p < from || p >= to) expect(order).toBe(p);
        });
      }),
      { seed: 92, numRuns: 300 },
    );
  });
});
