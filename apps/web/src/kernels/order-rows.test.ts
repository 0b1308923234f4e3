import type { BookedOrder } from "@formweek/contracts";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { readOrderQuery } from "./order-query.ts";
import { countStates, orderChoices, orderRows, type OrderColumn, type ProductNames } from "./order-rows.ts";

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
const products: ProductNames = {
  productName: (id) => (id === "P1" ? "Cup 200" : "Lid 95"),
  sheetOf: (id) => (id === "P1" ? "S1" : id === "P2" ? "S2" : null),
};
const query = readOrderQuery(new URLSearchParams());
const columns: readonly OrderColumn[] = ["id", "customer", "pieces", "dueAt", "slackSeconds"];

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
          if (before !== undefined) expect(isDescending ? before >= value : before <= value).toBe(true);
        }
      }),
    );
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
