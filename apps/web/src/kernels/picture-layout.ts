import { rowsInSight, timeWidthPx, type RowLayout } from "./row-layout.ts";
import type { TimeView } from "./time-scale.ts";

/** What a picture of the board shows. */
export const pictureExtents = ["in sight", "whole plan"] as const;
export type PictureExtent = (typeof pictureExtents)[number];

/** The board as it stands, and the plan's bounds, seconds since the epoch. */
export interface SeenBoard {
  readonly layout: RowLayout;
  readonly view: TimeView & { readonly scrollPx: number };
  readonly startAt: number;
  readonly endAt: number;
}

export interface PictureLayout {
  readonly layout: RowLayout;
  readonly view: TimeView & { readonly scrollPx: number };
}

const narrowestPx = 960;
const narrowestPlanPx = 1600;
const widestPlanPx = 8000;

/**
 * Size and view of a picture, whole rows only: of the time and rows in sight, or of the whole plan at the scale in sight
 * as far as a sheet can be that wide.
 */
export function pictureLayout(seen: SeenBoard, extent: PictureExtent): PictureLayout {
  return extent === "in sight" ? layoutInSight(seen) : layoutOfPlan(seen);
}

function layoutInSight({ layout, view }: SeenBoard): PictureLayout {
  const { from, to } = rowsInSight(layout, view.scrollPx);
  const widthPx = Math.max(narrowestPx, layout.widthPx);
  const secondsPerPx = (view.secondsPerPx * timeWidthPx(layout)) / (widthPx - layout.labelWidthPx);
  return {
    layout: { ...layout, widthPx, heightPx: layout.axisHeightPx + (to - from) * layout.rowHeightPx },
    view: { startAt: view.startAt, secondsPerPx, scrollPx: from * layout.rowHeightPx },
  };
}

function layoutOfPlan({ layout, view, startAt, endAt }: SeenBoard): PictureLayout {
  const wished = layout.labelWidthPx + (endAt - startAt) / view.secondsPerPx;
  const widthPx = Math.round(Math.min(widestPlanPx, Math.max(narrowestPlanPx, wished)));
  const secondsPerPx = (endAt - startAt) / (widthPx - layout.labelWidthPx);
  return {
    layout: { ...layout, widthPx, heightPx: layout.axisHeightPx + layout.rows * layout.rowHeightPx },
    view: { startAt, secondsPerPx, scrollPx: 0 },
  };
}

const wishedDensity = 2;
/** What browsers draw at most, device pixels: a side, and the whole area. */
const longestSidePx = 16_000;
const largestAreaPx = 200_000_000;

/** Device pixels for each CSS pixel of a picture in dots: two, or as many as the largest picture has room for. */
export function pictureDensity(widthPx: number, heightPx: number): number {
  return Math.min(
    wishedDensity,
    longestSidePx / Math.max(widthPx, heightPx),
    Math.sqrt(largestAreaPx / (widthPx * heightPx)),
  );
}
