import type { BookedOrder } from "@formweek/contracts";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { readOrderQuery } from "./order-query.ts";
import { namesIn } from "./name-order.ts";
import {
  byNumber,
  countStates,
  orderChoices,
  orderRows,
  type OrderColumn,
  type SortedBy,
} from "./order-rows.ts";

const states: readonly BookedOrder["state"][] = ["on time", "late", "unplanned", "not planned yet"];
const order = fc.record({
  id: fc.integer({ min: 1, max: 99_999 }).map(String),
  customer: fc.constantFrom("Alder Foods", "Birch Dairy", "Cedar Ices"),
  productId: fc.constantFrom("P1", "P2"),
  pieces: fc.integer({ min: 1, max: 1_000_000 }),
  dueAt: fc.constantFrom("2026-11-30T05:00:00Z", "2026-12-02T05:00:00Z"),
  state: fc.constantFrom(...states),
  slackSeconds: fc.option(fc.integer({ min: -100, max: 100 })),
});
const orders = fc.uniqueArray(order, { maxLength: 60, selector: (each) => each.id }).map((some) =>
  some.map((each): BookedOrder => ({
    ...each,
    earliestStartAt: null,
    weight: 1,
    kind: "firm",
    underTolerance: 0,
    overTolerance: 0,
    partsAllowed: false,
    finish: null,
    fromStockPieces: null,
    toMakePieces: null,
    reasons: [],
  })),
);
const products: SortedBy = {
  names: namesIn("en"),
  stateName: (state) => state,
  productName: (id) => (id === "P1" ? "Cup 200" : "Lid 95"),
  sheetOf: (id) => (id === "P1" ? "S1" : id === "P2" ? "S2" : null),
};
const query = readOrderQuery(new URLSearchParams());
const columns: readonly OrderColumn[] = ["id", "customer", "pieces", "dueAt", "slackSeconds"];

/** Order numbers of these tests are whole numbers and stand by their value. */
const isBefore = (one: string | number, other: string | number): boolean =>
  Number.isNaN(Number(one)) ? one < other : Number(one) < Number(other);

describe("orderRows", () => {
  it("loses no order without a filter, and puts empty values last both ways", () => {
    fc.assert(
      fc.property(orders, fc.constantFrom(...columns), fc.boolean(), (all, column, isDescending) => {
        const rows = orderRows(all, { ...query, sort: { column, isDescending } }, products);
        expect(rows).toHaveLength(all.length);
        expect(new Set(rows)).toEqual(new Set(all));
        const values = rows.map((row) => row[column]);
        const filled = values.filter((value) => value !== null);
        expect(values.slice(0, filled.length)).toEqual(filled);
        for (const [place, value] of filled.slice(1).entries()) {
          const before = filled[place];
          if (before !== undefined)
            expect(isDescending ? !isBefore(before, value) : !isBefore(value, before)).toBe(true);
        }
      }),
    );
  });

  it("sorts names as readers of the locale do, numbers by value, both ways with ties by number", () => {
    const made = (id: string, customer: string, productId = "P1"): BookedOrder => {
      const [sample] = fc.sample(
        orders.filter((some) => some.length > 0),
        1,
      );
      const [first] = sample ?? [];
      if (first === undefined) throw new Error("no order was drawn");
      return { ...first, id, customer, productId };
    };
    const all = [
      made("A-10", "Zander"),
      made("A-9", "Ähre"),
      made("A-009", "adler"),
      made("B-1", "Ahorn"),
      made("A-1", "Adler"),
    ];
    const ids = (column: OrderColumn, locale: string, isDescending = false) => {
      const names = namesIn(locale);
      const shown = { ...products, names };
      const sorted = byNumber(all, names);
      return orderRows(sorted, { ...query, sort: { column, isDescending } }, shown).map(({ id }) => id);
    };
    expect(ids("id", "de")).toEqual(["A-1", "A-009", "A-9", "A-10", "B-1"]);
    expect(ids("customer", "de")).toEqual(["A-009", "A-1", "B-1", "A-9", "A-10"]);
    // In Swedish, Ä comes after Z (CLDR's root of the sv tailoring; the built-in collator has it too).
    expect(ids("customer", "sv")).toEqual(["A-009", "A-1", "B-1", "A-10", "A-9"]);
    expect(ids("productId", "de")).toEqual(["A-1", "A-009", "A-9", "A-10", "B-1"]);
    expect(ids("productId", "de", true)).toEqual(["A-1", "A-009", "A-9", "A-10", "B-1"]);
  });

  it("finds by product name and by state", () => {
    fc.assert(
      fc.property(orders, (all) => {
        const sort = { column: "id", isDescending: false } as const;
        const lids = orderRows(all, { ...query, text: "lid", state: "late", sort }, products);
        expect(lids).toHaveLength(
          all.filter((each) => each.productId === "P2" && each.state === "late").length,
        );
      }),
    );
  });

  it("keeps the orders that meet every wish", () => {
    fc.assert(
      fc.property(orders, (all) => {
        const ofSheet = orderRows(all, { ...query, sheetId: "S2", customer: "Alder Foods" }, products);
        expect(ofSheet).toHaveLength(
          all.filter((each) => each.productId === "P2" && each.customer === "Alder Foods").length,
        );
        expect(orderRows(all, { ...query, kind: "forecast" }, products)).toEqual([]);
        expect(orderRows(all, { ...query, productId: "P3" }, products)).toEqual([]);
      }),
    );
  });

  it("offers what the orders of the book have, by name", () => {
    fc.assert(
      fc.property(orders, (all) => {
        const choices = orderChoices(all, products, (id) => `Sheet ${id}`);
        expect(choices.productId.map(([id]) => id)).toEqual(
          ["P1", "P2"].filter((id) => all.some((each) => each.productId === id)),
        );
        expect(choices.sheetId.map(([, name]) => name)).toEqual(
          choices.productId.map(([id]) => `Sheet ${products.sheetOf(id) ?? ""}`),
        );
        for (const [id] of choices.customer) expect(all.some(({ customer }) => customer === id)).toBe(true);
      }),
    );
  });

  it("counts every order in one state", () => {
    fc.assert(
      fc.property(orders, (all) => {
        expect([...countStates(all).values()].reduce((sum, count) => sum + count, 0)).toBe(all.length);
      }),
    );
  });
});
