import { marksBetween } from "../kernels/time-marks.ts";
import { viewEndAt, xOfInstant } from "../kernels/time-scale.ts";
import type { Frame } from "./frame.ts";
import { boardFont, fillBox, lineDown, type Pen } from "./pen.ts";

const dayLabelFromPx = 34;
const shiftLabelFromPx = 150;
const upperBaselinePx = 21;
const lowerBaselinePx = 42;

/** Axis above the rows: days and shifts, or weeks and days when the view is wide. */
export function drawAxis(pen: Pen, frame: Frame): void {
  const { layout, palette, view } = frame;
  const left = layout.labelWidthPx;
  fillBox(pen, { x: left, y: 0, width: layout.widthPx - left, height: layout.axisHeightPx }, palette.leaf);
  pen.save();
  pen.beginPath();
  pen.rect(left, 0, layout.widthPx - left, layout.axisHeightPx);
  pen.clip();
  const dayPx = 86_400 / view.secondsPerPx;
  if (dayPx >= shiftLabelFromPx) drawDaysAndShifts(pen, frame, dayPx);
  else drawWeeksAndDays(pen, frame, dayPx);
  pen.restore();
  pen.fillStyle = palette.rule;
  pen.fillRect(0, layout.axisHeightPx - 1, layout.widthPx, 1);
}

function drawDaysAndShifts(pen: Pen, frame: Frame, dayPx: number): void {
  const { layout, palette, view } = frame;
  const left = layout.labelWidthPx;
  const endAt = viewEndAt(view, layout.widthPx - left);
  pen.strokeStyle = palette.rule;
  pen.fillStyle = palette.ink;
  pen.font = boardFont.day;
  let limit = Infinity;
  for (const day of marksBetween(frame.days, view.startAt, endAt).toReversed()) {
    const x = left + xOfInstant(view, day.at);
    lineDown(pen, x, 0, layout.axisHeightPx);
    const label = frame.words.day(day, dayPx);
    // The day that began before the left edge keeps its name in sight, pushed out by the next one.
    const at = Math.min(Math.max(x, left) + 8, limit - pen.textWidth(label) - 12);
    pen.fillText(label, at, upperBaselinePx);
    limit = x;
  }
  pen.fillStyle = palette.soft;
  pen.font = boardFont.small;
  let free = left;
  for (const mark of marksBetween(frame.shifts, view.startAt, endAt)) {
    const x = left + xOfInstant(view, mark.at) + 5;
    if (x < free) continue;
    pen.fillText(mark.label, x, lowerBaselinePx);
    free = x + pen.textWidth(mark.label) + 8;
  }
}

function drawWeeksAndDays(pen: Pen, frame: Frame, dayPx: number): void {
  const { layout, palette, view } = frame;
  const left = layout.labelWidthPx;
  const endAt = viewEndAt(view, layout.widthPx - left);
  const days = marksBetween(frame.days, view.startAt - 7 * 86_400, endAt);
  pen.strokeStyle = palette.rule;
  pen.fillStyle = palette.ink;
  pen.font = boardFont.day;
  let limit = Infinity;
  for (const day of days.toReversed()) {
    if (day.weekday !== 1) continue;
    const x = left + xOfInstant(view, day.at);
    lineDown(pen, x, 0, layout.axisHeightPx);
    const label = frame.words.week(day);
    const at = Math.min(Math.max(x, left) + 6, limit - pen.textWidth(label) - 10);
    pen.fillText(label, at, upperBaselinePx);
    limit = x;
  }
  pen.fillStyle = palette.soft;
  pen.font = boardFont.small;
  let free = left;
  for (const day of days) {
    const x = left + xOfInstant(view, day.at);
    if (dayPx >= dayLabelFromPx || day.weekday === 1) {
      const label = frame.words.day(day, dayPx);
      if (x + 5 >= free) {
        pen.fillText(label, x + 5, lowerBaselinePx);
        free = x + 5 + pen.textWidth(label) + 6;
      }
    }
    if (dayPx >= 9) lineDown(pen, x, layout.axisHeightPx - 10, layout.axisHeightPx);
  }
}
