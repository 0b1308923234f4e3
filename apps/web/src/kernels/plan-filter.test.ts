import { describe, expect, it } from "vitest";
import { madePlan } from "../fixtures/made-plan.ts";
import { boardPlan } from "./board-plan.ts";
import { everything, isSegmentKept, ordersKept } from "./plan-filter.ts";

const document = madePlan({ lines: 4, runsPerLine: 10, seed: 3 });
const plan = boardPlan("p", document);

describe("ordersKept", () => {
  it("keeps all without a filter", () => {
    expect(ordersKept(plan, everything)).toBeNull();
  });

  it("keeps exactly the late orders", () => {
    const kept = ordersKept(plan, { onlyLate: true, text: "" });
    expect(kept).toEqual(new Set(plan.lateOrderIds));
  });

  it("finds by number, mould and colour whatever the case", () => {
    expect(ordersKept(plan, { onlyLate: false, text: " 20007 " })).toEqual(new Set(["20007"]));
    const black = ordersKept(plan, { onlyLate: false, text: "BLACK" });
    const expected = document.segments.flatMap((segment) =>
      segment.kind === "run" && segment.colour.name === "black" ? [segment.orderId] : [],
    );
    expect(black).toEqual(new Set(expected));
    expect(expected.length).toBeGreaterThan(0);
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
