import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { edgePan } from "./edge-pan.ts";
import { rowLayout } from "./row-layout.ts";

const layout = rowLayout({ widthPx: 1000, heightPx: 600 }, 20);

describe("edgePan", () => {
  it("stands still away from the edges", () => {
    expect(edgePan(layout, { x: 500, y: 300 })).toEqual({ byX: 0, byY: 0 });
  });

  it("goes the faster the nearer, later at the right and earlier at the left", () => {
    const right = [960, 980, 1000, 1400].map((x) => edgePan(layout, { x, y: 300 }).byX);
    expect(right).toEqual([...right].sort((a, b) => a - b));
    expect(right[0]).toBeGreaterThan(0);
    expect(right[2]).toBe(right[3]);
    expect(edgePan(layout, { x: layout.labelWidthPx, y: 300 }).byX).toBeLessThan(0);
    expect(edgePan(layout, { x: 500, y: layout.axisHeightPx }).byY).toBeLessThan(0);
  });

  it("has a bounded speed at any point of any board", () => {
    const number = fc.integer({ min: -500, max: 3000 });
    fc.assert(
      fc.property(number, number, fc.nat(2000), fc.nat(1500), (x, y, widthPx, heightPx) => {
        const { byX, byY } = edgePan(rowLayout({ widthPx, heightPx }, 5), { x, y });
        expect(Math.max(Math.abs(byX), Math.abs(byY))).toBeLessThanOrEqual(14);
      }),
    );
  });
});
