import { describe, expect, it } from "vitest";
import { madePlan } from "../fixtures/made-plan.ts";
import { boardPlan } from "./board-plan.ts";
import { boardRows } from "./board-rows.ts";
import { hitTest } from "./hit-test.ts";
import { rowLayout, rowTopPx } from "./row-layout.ts";
import { xOfInstant } from "./time-scale.ts";

const plan = boardPlan("p", madePlan({ lines: 40, runsPerLine: 12, seed: 5 }));
const rows = boardRows(plan, "lines");
const layout = rowLayout({ widthPx: 1200, heightPx: 700 }, plan.lines.length);
const view = { startAt: plan.startAt, secondsPerPx: 300, scrollPx: 90 };

describe("hitTest", () => {
  it("finds each segment at its own middle", () => {
    let tried = 0;
    for (const segment of plan.segments) {
      const x = layout.labelWidthPx + xOfInstant(view, (segment.start + segment.end) / 2);
      const y = rowTopPx(layout, view.scrollPx, segment.lineIndex) + layout.rowHeightPx / 2;
      if (x < layout.labelWidthPx || x > 1200 || y < layout.axisHeightPx || y > 700) continue;
      tried += 1;
      expect(hitTest(rows, layout, view, { x, y })).toEqual({
        kind: "segment",
        index: segment.index,
        rowIndex: segment.lineIndex,
      });
    }
    expect(tried).toBeGreaterThan(50);
  });

  it("tells row names, free time and the axis apart", () => {
    expect(hitTest(rows, layout, view, { x: 10, y: 200 })).toMatchObject({ kind: "row" });
    expect(hitTest(rows, layout, view, { x: 500, y: 10 })).toEqual({ kind: "nothing" });
    const early = { ...view, startAt: plan.startAt - 86_400 };
    expect(hitTest(rows, layout, early, { x: 200, y: 300 })).toMatchObject({ kind: "row" });
    const last = plan.lines[4]?.segments.at(-1);
    const x = layout.labelWidthPx + xOfInstant(view, (last?.end ?? 0) + 40 * 300);
    const y = rowTopPx(layout, view.scrollPx, 4) + 10;
    expect(hitTest(rows, layout, view, { x, y })).toEqual({
      kind: "gap",
      rowIndex: 4,
      start: last?.end,
      end: plan.knownEndAt,
    });
  });
});
