import type { BoardPoint } from "./hit-test.ts";
import type { RowLayout } from "./row-layout.ts";

/** Strip along the edges of the time area in which a carried run moves the view, CSS pixels. */
const edgePx = 44;
/** Greatest movement a frame, CSS pixels. */
const fastestPx = 14;

/** How far the view moves in one frame while a run is held at a point near an edge; faster the nearer. */
export function edgePan(
  layout: RowLayout,
  point: BoardPoint,
): { readonly byX: number; readonly byY: number } {
  return {
    byX: along(point.x, layout.labelWidthPx, layout.widthPx),
    byY: along(point.y, layout.axisHeightPx, layout.heightPx),
  };
}

function along(at: number, from: number, to: number): number {
  const strip = Math.min(edgePx, (to - from) / 4);
  if (strip <= 0) return 0;
  const before = Math.min(1, (from + strip - at) / strip);
  const after = Math.min(1, (at - (to - strip)) / strip);
  if (before > 0) return -Math.ceil(before * fastestPx);
  return after > 0 ? Math.ceil(after * fastestPx) : 0;
}
