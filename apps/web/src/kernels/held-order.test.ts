import type { PinnedOrder } from "@formweek/contracts";
import { describe, expect, it } from "vitest";
import { madePlan } from "../fixtures/made-plan.ts";
import { boardPlan } from "./board-plan.ts";
import { heldOrders, isKept, plannedPlace } from "./held-order.ts";

const made = madePlan({ lines: 2, runsPerLine: 2, seed: 1 });
const setupId = "S";
const lot = (orderId: string, number: number, lineId: string, start: string) => {
  const finish = "2026-12-05T06:00:00Z";
  return { orderId, lot: number, lineId, setupId, pieces: 10, start, end: finish, finish };
};
const [monday, tuesday] = ["2026-11-30T06:00:00Z", "2026-12-01T06:00:00Z"];
const plan = boardPlan("p", {
  ...made,
  lots: [lot("A", 1, "L2", monday), lot("A", 0, "L1", tuesday), lot("B", 0, "L1", monday)],
});
const pin = (orderId: string, lineId: string | null, start: string | null): PinnedOrder => ({
  orderId,
  lineId,
  start,
  pinnedBy: "local",
  pinnedAt: monday,
  idle: null,
});

describe("where an order can be held", () => {
  it("is the place of its first lot unless another is named", () => {
    expect(plannedPlace(plan, "A", null)).toEqual({ lineId: "L1", start: tuesday });
    expect(plannedPlace(plan, "A", 0)).toEqual({ lineId: "L1", start: tuesday });
  });
  it("has no start for a later lot", () => {
    expect(plannedPlace(plan, "A", 1)).toEqual({ lineId: "L2", start: null });
  });
  it("is nowhere for what the plan does not have", () => {
    expect(plannedPlace(plan, "none", null)).toBeNull();
    expect(plannedPlace(plan, "B", 1)).toBeNull();
  });
});

describe("a pin is kept by a plan", () => {
  it("whose lots are all on the line, and whose first lot has the start", () => {
    expect(isKept(plan, pin("B", "L1", monday))).toBe(true);
    expect(isKept(plan, pin("B", "L2", null))).toBe(false);
    expect(isKept(plan, pin("B", "L1", tuesday))).toBe(false);
    expect(isKept(plan, pin("A", "L1", null))).toBe(false);
    expect(isKept(plan, pin("A", null, tuesday))).toBe(true);
  });
  it("and not by one that leaves the order out", () => {
    expect(isKept(plan, pin("none", "L1", null))).toBe(false);
  });
});

describe("held orders", () => {
  it("are found by number, and are none before the list has come", () => {
    const held = pin("B", "L1", null);
    expect(heldOrders({ revision: 3, pins: [held] }).get("B")).toBe(held);
    expect(heldOrders(undefined).size).toBe(0);
  });
});
