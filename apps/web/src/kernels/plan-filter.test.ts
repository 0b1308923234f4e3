import { describe, expect, it } from "vitest";
import { madePlan } from "../fixtures/made-plan.ts";
import { boardPlan } from "./board-plan.ts";
import { everything, filterChoices, isSegmentKept, ordersKept } from "./plan-filter.ts";

const document = madePlan({ lines: 4, runsPerLine: 10, seed: 3 });
const plan = boardPlan("p", document);

describe("ordersKept", () => {
  it("keeps all without a filter", () => {
    expect(ordersKept(plan, everything)).toBeNull();
  });

  it("keeps exactly the late orders", () => {
    const kept = ordersKept(plan, { ...everything, onlyLate: true });
    expect(kept).toEqual(new Set(plan.lateOrderIds));
  });

  it("finds by number, mould and colour whatever the case", () => {
    expect(ordersKept(plan, { ...everything, text: " 20007 " })).toEqual(new Set(["20007"]));
    const black = ordersKept(plan, { ...everything, text: "BLACK" });
    const expected = document.segments.flatMap((segment) =>
      segment.kind === "run" && segment.colour.name === "black" ? [segment.orderId] : [],
    );
    expect(black).toEqual(new Set(expected));
    expect(expected.length).toBeGreaterThan(0);
  });

  it("keeps by product, mould and sheet what the runs say, and by several parts what passes all", () => {
    const runs = document.segments.filter((segment) => segment.kind === "run");
    for (const [sheetId] of filterChoices(plan).sheetId) {
      const expected = runs.filter((run) => run.sheetId === sheetId).map(({ orderId }) => orderId);
      expect(expected.length).toBeGreaterThan(0);
      expect(ordersKept(plan, { ...everything, sheetId })).toEqual(new Set(expected));
      for (const [mouldId] of filterChoices(plan).mouldId) {
        const both = runs.filter((run) => run.sheetId === sheetId && run.mould?.mouldId === mouldId);
        expect(ordersKept(plan, { ...everything, sheetId, mouldId })).toEqual(
          new Set(both.map(({ orderId }) => orderId)),
        );
      }
    }
    for (const [productId] of filterChoices(plan).productId) {
      const own = document.orders.filter((order) => order.productId === productId);
      expect(ordersKept(plan, { ...everything, productId })).toEqual(
        new Set(own.map(({ orderId }) => orderId)),
      );
    }
    expect(ordersKept(plan, { ...everything, customer: "nobody" })).toEqual(new Set());
  });

  it("offers each value of the plan once", () => {
    const { customer, mouldId } = filterChoices(plan);
    expect(customer).toEqual([["Customer", "Customer"]]);
    const ids = mouldId.map(([id]) => id);
    expect(new Set(ids).size).toBe(ids.length);
  });

  it("keeps a change with the run that it prepares", () => {
    const change = plan.lines[1]?.segments.find((segment) => segment.source.kind === "change");
    const run = plan.lines[1]?.segments[(change?.place ?? 0) + 1];
    if (change === undefined || run?.source.kind !== "run")
      throw new Error("the made plan has a change before a run");
    expect(isSegmentKept(plan, change, new Set([run.source.orderId]))).toBe(true);
    expect(isSegmentKept(plan, change, new Set())).toBe(false);
  });
});
