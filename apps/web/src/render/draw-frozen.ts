import { xOfInstant } from "../kernels/time-scale.ts";
import { drawLock, lockPx } from "./draw-lock.ts";
import type { Frame } from "./frame.ts";
import type { Palette } from "./palette.ts";
import { fillBox, lineDown, type Pen } from "./pen.ts";

const bandPx = 5;

/** Until when the published runs stay: a band along the axis with a lock at its end, and a dashed line down the paper. */
export function drawFrozen(pen: Pen, frame: Frame): void {
  const { frozenUntil, plan, layout, view, palette } = frame;
  if (frozenUntil === null || frozenUntil <= plan.startAt) return;
  const left = layout.labelWidthPx;
  const from = Math.max(left, left + xOfInstant(view, plan.startAt));
  const end = left + xOfInstant(view, frozenUntil);
  const to = Math.min(layout.widthPx, end);
  if (to <= from) return;
  pen.beginPart(() => frame.words.frozen(frozenUntil));
  drawBand(pen, palette, { from, to, bottom: layout.axisHeightPx });
  if (end <= layout.widthPx)
    drawEnd(pen, palette, { x: end, band: layout.axisHeightPx, to: layout.heightPx });
  pen.endPart();
}

function drawBand(
  pen: Pen,
  { ink }: Palette,
  { from, to, bottom }: { readonly from: number; readonly to: number; readonly bottom: number },
): void {
  fillBox(pen, { x: from, y: bottom - bandPx, width: to - from, height: bandPx }, ink);
}

/** `band`: where the band's lower edge lies. */
function drawEnd(
  pen: Pen,
  { ink }: Palette,
  { x, band, to }: { readonly x: number; readonly band: number; readonly to: number },
): void {
  drawLock(pen, ink, x - lockPx - 2, band - bandPx - 2);
  pen.strokeStyle = ink;
  pen.lineWidth = 1.5;
  pen.setLineDash([7, 4]);
  lineDown(pen, x, band - bandPx, to);
  pen.setLineDash([]);
}

/** The mark as a legend shows it, in a box of a size. */
export function drawFrozenMark(
  pen: Pen,
  palette: Palette,
  { width, height }: { readonly width: number; readonly height: number },
): void {
  drawBand(pen, palette, { from: 0, to: width - 8, bottom: 16 });
  drawEnd(pen, palette, { x: width - 8, band: 16, to: height });
}
