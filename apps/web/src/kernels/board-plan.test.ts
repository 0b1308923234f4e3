import { describe, expect, it } from "vitest";
import { madePlan } from "../fixtures/made-plan.ts";
import { boardPlan, secondsOf } from "./board-plan.ts";

const document = madePlan({ lines: 4, runsPerLine: 10, seed: 3 });
const plan = boardPlan("p", document);

describe("boardPlan", () => {
  it("takes every segment over, sorted and apart on its line", () => {
    expect(plan.segments).toHaveLength(document.segments.length);
    for (const line of plan.lines) {
      for (const [place, segment] of line.segments.entries()) {
        expect(segment.place).toBe(place);
        expect(plan.segments[segment.index]).toBe(segment);
        const next = line.segments[place + 1];
        if (next !== undefined) expect(next.start).toBeGreaterThanOrEqual(segment.end);
      }
    }
  });

  it("marks the end of each order once, with the lateness of the document", () => {
    const endings = plan.segments.filter((segment) => segment.ending !== null);
    expect(endings).toHaveLength(document.orders.length);
    const late = endings.filter((segment) => (segment.ending?.lateSeconds ?? 0) > 0);
    expect(late).toHaveLength(document.summary.late);
    expect(late.length).toBeGreaterThan(0);
  });

  it("lists late orders from the latest on", () => {
    const lateness = plan.lateOrderIds.map((orderId) => plan.orders.get(orderId)?.lateSeconds ?? 0);
    expect(lateness).toEqual([...lateness].sort((a, b) => b - a));
  });

  it("ends within the horizon unless work or a due date goes beyond", () => {
    const last = Math.max(
      ...document.orders.map((order) => Math.max(secondsOf(order.due), secondsOf(order.finish ?? order.due))),
    );
    expect(plan.endAt).toBeGreaterThanOrEqual(last);
  });

  it("knows working time no further than the document tells", () => {
    expect(plan.knownEndAt).toBeLessThanOrEqual(secondsOf(document.horizon.end));
    const ends = document.lines.flatMap((line) => line.open.map(([, end]) => secondsOf(end)));
    expect(plan.knownEndAt).toBeGreaterThanOrEqual(
      Math.min(Math.max(...ends), secondsOf(document.horizon.end)),
    );
  });

  it("reads an empty plan", () => {
    const empty = boardPlan("e", { ...document, segments: [], lots: [], orders: [] });
    expect(empty.segments).toEqual([]);
    expect(empty.endAt).toBeGreaterThan(empty.startAt);
  });
});
