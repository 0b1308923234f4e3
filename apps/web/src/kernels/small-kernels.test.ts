import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { madeOrder } from "../fixtures/made-order.ts";
import { curvePath } from "./curve-path.ts";
import { byName } from "./filter-choice.ts";
import { fitLabel } from "./fit-label.ts";
import { rangeOf } from "./order-range.ts";
import { stepSummary } from "./step-summary.ts";
import { weekBars, weekHours } from "./week-bars.ts";

describe("fitLabel", () => {
  const widthOf = (text: string): number => text.length * 7;

  it("never exceeds the width, and keeps the whole text when it fits", () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 30 }), fc.integer({ min: 0, max: 300 }), (text, width) => {
        const label = fitLabel(text, width, widthOf);
        expect(widthOf(label)).toBeLessThanOrEqual(width);
        if (widthOf(text) <= width) expect(label).toBe(text);
      }),
    );
  });

  it("says nothing rather than two letters", () => {
    expect(fitLabel("C200-54", 21, widthOf)).toBe("");
    expect(fitLabel("C200-54", 42, widthOf)).toBe("C200-…");
  });
});

describe("weekBars", () => {
  it("brings a shift over Sunday midnight back on Monday", () => {
    const bars = weekBars([{ name: "night", weekdays: [7], start: "22:00", end: "06:00" }]);
    expect(bars).toEqual([
      { from: 0, to: 6 / 168, label: "night" },
      { from: 166 / 168, to: 1, label: "night" },
    ]);
    expect(weekHours(bars)).toBeCloseTo(8, 9);
  });

  it("counts three shifts on five days as 120 hours, and equal times as a whole day", () => {
    const days = [1, 2, 3, 4, 5];
    const three = weekBars([
      { name: "early", weekdays: days, start: "06:00", end: "14:00" },
      { name: "late", weekdays: days, start: "14:00", end: "22:00" },
      { name: "night", weekdays: days, start: "22:00", end: "06:00" },
    ]);
    expect(weekHours(three)).toBeCloseTo(120, 9);
    expect(weekHours(weekBars([{ name: "all", weekdays: [1], start: "06:00", end: "06:00" }]))).toBeCloseTo(
      24,
      9,
    );
  });

  it("counts hours that overlap once", () => {
    const bars = weekBars([
      { name: "a", weekdays: [2], start: "06:00", end: "14:00" },
      { name: "b", weekdays: [2], start: "10:00", end: "16:00" },
    ]);
    expect(weekHours(bars)).toBeCloseTo(10, 9);
  });
});

describe("curvePath", () => {
  it("steps down from the top to the bottom and holds the last value to the end", () => {
    const path = curvePath(
      [
        [0, 200],
        [500, 100],
      ],
      { width: 100, height: 30, endX: 1000 },
    );
    expect(path).toBe("M0.0 0.0H50.0V30.0H100.0");
  });

  it("draws nothing without points and a middle line for a flat one", () => {
    expect(curvePath([], { width: 100, height: 30, endX: 1 })).toBe("");
    expect(curvePath([[0, 5]], { width: 100, height: 30, endX: 10 })).toBe("M0.0 15.0H100.0");
  });
});

describe("byName", () => {
  it("gives each choice once, by name, and none without an id", () => {
    const choices = [
      ["b", "Birch"],
      ["", "none"],
      ["a", "Alder"],
      ["b", "Birch"],
    ] as const;
    expect(byName(choices)).toEqual([
      ["a", "Alder"],
      ["b", "Birch"],
    ]);
  });
});

describe("rangeOf", () => {
  const rows = ["a", "b", "c", "d"].map((id) => ({ id }));

  it("holds the rows between two, in either direction", () => {
    expect(rangeOf(rows, "b", "d")).toEqual(["b", "c", "d"]);
    expect(rangeOf(rows, "c", "a")).toEqual(["a", "b", "c"]);
  });

  it("is the second alone without a first among the rows", () => {
    expect(rangeOf(rows, null, "c")).toEqual(["c"]);
    expect(rangeOf(rows, "gone", "c")).toEqual(["c"]);
  });
});

describe("stepSummary", () => {
  const order = madeOrder();

  it("tells removing and adding from changing", () => {
    expect(stepSummary([{ before: order, after: null }])).toEqual({ kind: "removed", orderIds: ["O-1"] });
    expect(stepSummary([{ before: null, after: order }])).toEqual({ kind: "added", orderIds: ["O-1"] });
    const mixed = [
      { before: order, after: null },
      { before: null, after: madeOrder({ id: "O-2" }) },
    ];
    expect(stepSummary(mixed)).toEqual({ kind: "changed", orderIds: ["O-1", "O-2"] });
  });
});
