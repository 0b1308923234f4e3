import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  clampScroll,
  greatestScrollPx,
  rowAtY,
  rowLayout,
  rowTopPx,
  rowsInSight,
  scrollToRow,
} from "./row-layout.ts";

const layouts = fc
  .tuple(
    fc.integer({ min: 200, max: 4000 }),
    fc.integer({ min: 200, max: 2000 }),
    fc.integer({ min: 1, max: 60 }),
  )
  .map(([widthPx, heightPx, rows]) => rowLayout({ widthPx, heightPx }, rows));

describe("row layout", () => {
  it("finds every row again at its own middle", () => {
    fc.assert(
      fc.property(layouts, fc.double({ min: 0, max: 1, noNaN: true }), (layout, share) => {
        const scroll = clampScroll(layout, share * greatestScrollPx(layout));
        const { from, to } = rowsInSight(layout, scroll);
        for (let row = from; row < to; row += 1) {
          const middle = rowTopPx(layout, scroll, row) + layout.rowHeightPx / 2;
          if (middle >= layout.axisHeightPx) expect(rowAtY(layout, scroll, middle)).toBe(row);
        }
      }),
    );
  });

  it("scrolls any row wholly into sight", () => {
    fc.assert(
      fc.property(layouts, fc.integer({ min: 0, max: 59 }), (layout, wished) => {
        const row = wished % layout.rows;
        const scroll = scrollToRow(layout, 0, row);
        expect(rowTopPx(layout, scroll, row)).toBeGreaterThanOrEqual(layout.axisHeightPx - 1e-9);
        expect(rowTopPx(layout, scroll, row + 1)).toBeLessThanOrEqual(layout.heightPx + 1e-9);
      }),
    );
  });
});
