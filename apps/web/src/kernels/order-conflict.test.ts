import { describe, expect, it } from "vitest";
import { madeOrder } from "../fixtures/made-order.ts";
import { conflictsOf, following, onTopOfTheirs, withoutConflicts } from "./order-conflict.ts";
import { isSameOrder, turnedRound } from "./order-terms.ts";

const seen = madeOrder();
const other = madeOrder({ id: "O-2" });
const mine = { ...seen, pieces: 36_000 };
const theirs = { ...seen, weight: 5, dueAt: "2026-12-05T11:00:00Z" };
const changes = [
  { before: seen, after: mine },
  { before: other, after: { ...other, weight: 2 } },
];
const book = (...orders: readonly (typeof seen)[]) => new Map(orders.map((order) => [order.id, order]));

describe("changes of an order book that others change too", () => {
  it("have no conflict with what was seen, or with changes of other orders", () => {
    const untouched = book(seen, other, madeOrder({ id: "O-3", pieces: 1 }));
    expect(conflictsOf(changes, untouched)).toEqual([]);
    expect(withoutConflicts(changes, untouched)).toEqual(changes);
    expect(onTopOfTheirs(changes, untouched)).toEqual(changes);
  });

  it("name the versions and the fields in which they differ", () => {
    expect(conflictsOf(changes, book(theirs, other))).toEqual([
      { id: "O-1", seen, mine, theirs, fields: ["pieces", "dueAt", "weight"] },
    ]);
    expect(withoutConflicts(changes, book(theirs, other))).toEqual(changes.slice(1));
  });

  it("can be made on top: only the planner's own fields become the planner's", () => {
    expect(onTopOfTheirs(changes, book(theirs, other))[0]).toEqual({
      before: theirs,
      after: { ...theirs, pieces: 36_000 },
    });
  });

  it("bring an order back that others removed, and remove one that others changed", () => {
    expect(conflictsOf(changes.slice(0, 1), book(other))).toMatchObject([{ theirs: null, fields: [] }]);
    expect(onTopOfTheirs(changes.slice(0, 1), book(other))).toEqual([{ before: null, after: mine }]);
    const removal = [{ before: seen, after: null }];
    expect(onTopOfTheirs(removal, book(theirs))).toEqual([{ before: theirs, after: null }]);
    expect(onTopOfTheirs(removal, book())).toEqual([]);
  });

  it("come to nothing where the others made the same change", () => {
    expect(onTopOfTheirs(changes.slice(0, 1), book(mine))).toEqual([]);
  });

  it("follow earlier ones of the same planner, whatever others did", () => {
    const later = [{ before: seen, after: { ...seen, weight: 8 } }, ...changes.slice(1)];
    expect(following(later, changes.slice(0, 1))).toEqual([
      { before: mine, after: { ...mine, weight: 8 } },
      ...changes.slice(1),
    ]);
    expect(following(later, [{ before: seen, after: null }])).toEqual(later);
  });

  it("take themselves back turned round", () => {
    const [first] = turnedRound(turnedRound(changes));
    expect(isSameOrder(first?.before ?? null, seen)).toBe(true);
    expect(turnedRound(changes)[0]).toEqual({ before: mine, after: seen });
  });
});
