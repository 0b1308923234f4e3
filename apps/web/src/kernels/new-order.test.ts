import { describe, expect, it } from "vitest";
import { emptyOrder, isDueBeforePlanning, readNewOrder, type NewOrderDraft } from "./new-order.ts";
import { zoneClock } from "./zone-clock.ts";

const clock = zoneClock("Europe/Paris");
const products = [
  ["C75-60 white", "Cup 75, white"],
  ["C75-60 black", "Cup 75, black"],
  ["L1", "Lid"],
  ["L-1", "Lid, old"],
] as const;
const written = { id: " N-1 ", productId: "C75-60 white", pieces: "40.000", dueAt: "2026-12-04" };
const read = (changes: Partial<NewOrderDraft>) =>
  readNewOrder(
    { ...emptyOrder(clock), ...written, ...changes },
    { clock, products, isTaken: (id) => id === "A-1" },
  );
const faultsOf = (changes: Partial<NewOrderDraft>) => {
  const reading = read(changes);
  return reading.kind === "faulty" ? reading.faults : [];
};

describe("a due time before planning begins", () => {
  // 2026-12-04T06:00 in Paris, by `date -u -d "2026-12-04 05:00" +%s`
  const planStart = 1_796_360_400;

  it.each([
    ["2026-12-04", "05:59", true],
    ["2026-12-04", "06:00", false],
    ["2026-12-03", "", true],
    // without a time the day's end counts, as in the import
    ["2026-12-04", "", false],
    ["", "", false],
    ["", "05:59", false],
  ])("%s %s: %s", (dueAt, dueTime, isBefore) => {
    expect(isDueBeforePlanning({ dueAt, dueTime }, clock, planStart)).toBe(isBefore);
  });
});

describe("a new order in a form", () => {
  it("has what an import gives to a row of number, product, pieces and due day", () => {
    expect(read({})).toEqual({
      kind: "read",
      terms: {
        id: "N-1",
        customer: "—",
        productId: "C75-60 white",
        pieces: 40_000,
        dueAt: "2026-12-04T23:00:00Z",
        earliestStartAt: null,
        weight: 1,
        kind: "firm",
        underTolerance: 0,
        overTolerance: 0,
        partsAllowed: false,
      },
    });
  });

  it("is due at the time that is written, also on the day on which the clocks change", () => {
    expect(read({ dueTime: "14:30" })).toMatchObject({ terms: { dueAt: "2026-12-04T13:30:00Z" } });
    expect(read({ dueAt: "2026-10-25" })).toMatchObject({ terms: { dueAt: "2026-10-25T23:00:00Z" } });
  });

  it.each([
    ["cup 75 WHITE", "C75-60 white"],
    ["c7560black", "C75-60 black"],
    ["L1", "L1"],
    ["lid", "L1"],
  ])("finds the product written as %s", (productId, found) => {
    expect(read({ productId })).toMatchObject({ terms: { productId: found } });
  });

  it.each(["", "  ", "cup", "l 1", "—"])("does not guess at the product written as %j", (productId) => {
    expect(faultsOf({ productId })).toEqual([{ field: "productId", kind: "unreadable" }]);
  });

  it("names every field that is bad", () => {
    const bad = { id: " ", productId: "none", pieces: "0", dueAt: "", weight: "1001", overTolerance: "x" };
    expect(faultsOf(bad).map(({ field }) => field)).toEqual([
      "id",
      "productId",
      "pieces",
      "dueAt",
      "weight",
      "overTolerance",
    ]);
    expect(faultsOf({ id: "x".repeat(65) })).toEqual([{ field: "id", kind: "unreadable" }]);
    expect(faultsOf({ earliestStartAt: "2026-12-06T00:00" }).map(({ field }) => field)).toEqual([
      "earliestStartAt",
    ]);
  });

  it("does not take a number that the book has", () => {
    expect(faultsOf({ id: "A-1" })).toEqual([{ field: "id", kind: "taken" }]);
  });
});
