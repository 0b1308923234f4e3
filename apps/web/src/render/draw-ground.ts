import type { BoardRow } from "../kernels/board-rows.ts";
import { gapsBetween, spellsInSight } from "../kernels/culling.ts";
import { rowTopPx } from "../kernels/row-layout.ts";
import { marksBetween } from "../kernels/time-marks.ts";
import { viewEndAt, xOfInstant } from "../kernels/time-scale.ts";
import { fitLabel } from "../kernels/fit-label.ts";
import type { Frame } from "./frame.ts";
import { boardFont, fillBox, lineDown, type Hatch, type Pen } from "./pen.ts";

/** Below so many pixels a day, days give way to weeks and shift lines are left out. */
const dayLineFromPx = 9;
const shiftLineFromPx = 120;

/** Hatch of closed time, travelling with the axis. */
function closedFill({ palette, layout, view }: Frame): Hatch {
  const shiftPx = layout.labelWidthPx - view.startAt / view.secondsPerPx;
  return { ground: palette.shut, line: palette.shutLine, stepPx: 9, linePx: 1.2, shiftPx };
}

/** Closed time of one row: every part of the view that is not open, and dated closures with their reason. */
export function drawClosedTime(pen: Pen, frame: Frame, row: BoardRow): void {
  const { view, layout, palette } = frame;
  const left = layout.labelWidthPx;
  const top = rowTopPx(layout, view.scrollPx, row.index);
  const endAt = viewEndAt(view, layout.widthPx - left);
  pen.fillStyle = closedFill(frame);
  const knownFrom = Math.max(view.startAt, frame.plan.startAt);
  const knownUntil = Math.min(endAt, frame.plan.knownEndAt);
  for (const gap of row.open === null ? [] : gapsBetween(row.open, knownFrom, knownUntil)) {
    const x = xOfInstant(view, gap.start);
    const width = xOfInstant(view, gap.end) - x;
    if (width >= 0.4) pen.fillRect(left + x, top, width, layout.rowHeightPx);
  }
  const { from, to } = spellsInSight(row.closures, view.startAt, endAt);
  for (const closure of row.closures.slice(from, to)) {
    const x = left + xOfInstant(view, closure.start);
    const end = left + xOfInstant(view, closure.end);
    pen.fillStyle = closedFill(frame);
    pen.fillRect(x, top, end - x, layout.rowHeightPx);
    pen.font = boardFont.small;
    const from = Math.max(x, left) + 8;
    const label = fitLabel(closure.reason, Math.min(end, layout.widthPx) - from - 6, (text) =>
      pen.textWidth(text),
    );
    if (label === "") continue;
    fillBox(
      pen,
      { x: from - 4, y: top + layout.rowHeightPx / 2 - 10, width: pen.textWidth(label) + 8, height: 20 },
      palette.shut,
    );
    pen.fillStyle = palette.ink;
    pen.fillText(label, from, top + layout.rowHeightPx / 2 + 4);
  }
}

const extraBandPx = 4;

/** Shifts worked once: a band along the row's foot, with their name where nothing runs over it. */
export function drawExtraShifts(pen: Pen, frame: Frame, row: BoardRow): void {
  const { view, layout, palette } = frame;
  const left = layout.labelWidthPx;
  const top = rowTopPx(layout, view.scrollPx, row.index);
  const endAt = viewEndAt(view, layout.widthPx - left);
  for (const shift of row.extraShifts) {
    if (shift.end <= view.startAt || shift.start >= endAt) continue;
    const x = left + xOfInstant(view, shift.start);
    const end = left + xOfInstant(view, shift.end);
    pen.globalAlpha = 0.6;
    fillBox(pen, { x, y: top, width: end - x, height: layout.rowHeightPx - 1 }, palette.actWeak);
    pen.globalAlpha = 1;
    const foot = top + layout.rowHeightPx - 1 - extraBandPx;
    fillBox(pen, { x, y: foot, width: end - x, height: extraBandPx }, palette.act);
    pen.font = boardFont.small;
    const from = Math.max(x, left) + 5;
    const label = fitLabel(
      frame.words.extraShift(shift.name),
      Math.min(end, layout.widthPx) - from - 4,
      (text) => pen.textWidth(text),
    );
    if (label === "") continue;
    pen.fillStyle = palette.ink;
    pen.fillText(label, from, top + 13);
  }
}

/** Vertical lines of days, weeks and shifts over the whole height of the rows. */
export function drawTimeLines(pen: Pen, frame: Frame): void {
  const { view, layout, palette } = frame;
  const left = layout.labelWidthPx;
  const endAt = viewEndAt(view, layout.widthPx - left);
  const dayPx = 86_400 / view.secondsPerPx;
  const bottom = Math.min(layout.heightPx, rowTopPx(layout, view.scrollPx, layout.rows));
  pen.lineWidth = 1;
  if (dayPx >= shiftLineFromPx) {
    pen.strokeStyle = palette.faint;
    for (const mark of marksBetween(frame.shifts, view.startAt, endAt)) {
      lineDown(pen, left + xOfInstant(view, mark.at), layout.axisHeightPx, bottom);
    }
  }
  pen.strokeStyle = palette.rule;
  for (const mark of marksBetween(frame.days, view.startAt, endAt)) {
    if (dayPx < dayLineFromPx && mark.weekday !== 1) continue;
    lineDown(pen, left + xOfInstant(view, mark.at), layout.axisHeightPx, bottom);
  }
}
