import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { gapsBetween, spellsInSight } from "./culling.ts";

/** Sorted spells that never overlap, some touching. */
const spells = fc
  .array(fc.tuple(fc.integer({ min: 0, max: 5 }), fc.integer({ min: 1, max: 9 })), { maxLength: 40 })
  .map((steps) => {
    let at = 0;
    return steps.map(([gap, length]) => {
      const start = at + gap;
      at = start + length;
      return { start, end: at };
    });
  });
const stretch = fc.tuple(fc.integer({ min: 0, max: 200 }), fc.integer({ min: 1, max: 100 }));

describe("spellsInSight", () => {
  it("finds exactly the spells that a plain look at each one finds", () => {
    fc.assert(
      fc.property(spells, stretch, (all, [from, length]) => {
        const range = spellsInSight(all, from, from + length);
        const plain = all.filter((spell) => spell.end > from && spell.start < from + length);
        expect(all.slice(range.from, range.to)).toEqual(plain);
      }),
    );
  });
});

describe("gapsBetween", () => {
  it("fills what the spells leave, to the second", () => {
    fc.assert(
      fc.property(spells, stretch, (all, [from, length]) => {
        const gaps = gapsBetween(all, from, from + length);
        for (let second = from; second < from + length; second += 1) {
          const covers = (spell: { start: number; end: number }): boolean =>
            spell.start <= second && second < spell.end;
          expect(gaps.some(covers)).toBe(!all.some(covers));
        }
      }),
    );
  });
});
