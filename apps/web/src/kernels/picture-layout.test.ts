import { expect, it } from "vitest";
import { pictureDensity, pictureLayout } from "./picture-layout.ts";
import { rowLayout } from "./row-layout.ts";

const day = 86_400;
const layout = rowLayout({ widthPx: 1280, heightPx: 500 }, 20);
const seen = {
  layout,
  view: { startAt: 5 * day, secondsPerPx: 300, scrollPx: layout.rowHeightPx * 2.5 },
  startAt: 4 * day,
  endAt: 18 * day,
};

it("shows the time in sight, and of the rows all that show in part, whole", () => {
  const { layout: drawn, view } = pictureLayout(seen, "in sight");
  expect(view).toEqual({ ...seen.view, scrollPx: 2 * layout.rowHeightPx });
  expect(drawn.widthPx).toBe(1280);
  const shown = (drawn.heightPx - layout.axisHeightPx) / layout.rowHeightPx;
  expect(shown).toBe(Math.ceil((500 - 52) / layout.rowHeightPx + 2.5) - 2);
});

it("gives a narrow screen's time the width of a sheet", () => {
  const narrow = rowLayout({ widthPx: 390, heightPx: 700 }, 4);
  const { layout: drawn, view } = pictureLayout({ ...seen, layout: narrow }, "in sight");
  expect(drawn.widthPx).toBe(960);
  expect(view.secondsPerPx * (960 - 72)).toBeCloseTo(300 * (390 - 72));
});

it("shows the whole plan at the scale in sight, as far as a sheet goes", () => {
  const { layout: drawn, view } = pictureLayout(seen, "whole plan");
  expect(view).toMatchObject({ startAt: seen.startAt, scrollPx: 0 });
  expect(view.secondsPerPx).toBeCloseTo(300, 0);
  expect(drawn.heightPx).toBe(layout.axisHeightPx + 20 * layout.rowHeightPx);
  const close = pictureLayout({ ...seen, view: { ...seen.view, secondsPerPx: 5 } }, "whole plan");
  expect(close.layout.widthPx).toBe(8000);
  expect(close.view.secondsPerPx * (8000 - layout.labelWidthPx)).toBeCloseTo(14 * day);
});

it("draws two dots a pixel, fewer where browsers have no room for them", () => {
  expect(pictureDensity(1280, 800)).toBe(2);
  expect(pictureDensity(800, 14_000) * 14_000).toBeLessThanOrEqual(16_000);
  expect((pictureDensity(8000, 8000) * 8000) ** 2).toBeLessThanOrEqual(200_000_001);
});
