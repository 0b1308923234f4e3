import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { NEAR, NearPlaces } from "./near-places.ts";

/** Positions where orders, or an end of the line, have another neighbour than before. */
function newJoins(before: readonly number[], after: readonly number[]): number[] {
  return [...after, undefined].flatMap((order, p) => {
    const place = order === undefined ? before.length : before.indexOf(order);
    return after[p - 1] === before[place - 1] ? [] : [p];
  });
}

/** A line of n orders, and where the blocks of a move on it begin and end. */
const moveArb = fc
  .tuple(fc.integer({ min: 4, max: 60 }), fc.array(fc.nat(1e6), { minLength: 4, maxLength: 4 }))
  .map(([n, draws]) => {
    const [i, a, j, k] = draws.map((draw) => draw % (n + 1)).sort((x, y) => x - y) as [
      number,
      number,
      number,
      number,
    ];
    return { n, i, a, j, k };
  })
  .filter(({ i, a, j, k }) => i < a && a <= j && j < k);

describe("the places that a near search looks at again", () => {
  it.each([
    ["all near the orders that it moved, where changes matter", false],
    ["those near its cuts, on a plain line", true],
  ])("are after a move %s", (_, cutsOnly) => {
    fc.assert(
      fc.property(moveArb, ({ n, i, a, j, k }) => {
        const before = Array.from({ length: n }, (_order, p) => p);
        const blocks = [before.slice(j, k), before.slice(a, j), before.slice(i, a)];
        const joins = newJoins(before, [...before.slice(0, i), ...blocks.flat(), ...before.slice(k)]);
        const places = new NearPlaces(n, cutsOnly);
        places.wakeMoved(i, a, j, k);
        const expected = before.map((p) =>
          cutsOnly
            ? joins.some((join) => Math.abs(p - join) <= NEAR)
            : p >= joins[0]! - NEAR && p < joins.at(-1)! + NEAR,
        );
        expect([...places.awake].map((each) => each === 1)).toEqual(expected);
      }),
      { seed: 85, numRuns: 500 },
    );
  });

  it("are at first those near the changed stretch alone", () => {
    const places = new NearPlaces(20, true);
    places.begin(0, 20);
    places.begin(8, 10);
    const awake = [...places.awake].flatMap((each, p) => (each === 1 ? [p] : []));
    expect(awake).toEqual([3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14]);
  });
});
