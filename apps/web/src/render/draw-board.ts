import type { BoardRow } from "../kernels/board-rows.ts";
import { spellsInSight } from "../kernels/culling.ts";
import { fitLabel } from "../kernels/fit-label.ts";
import { isSegmentKept } from "../kernels/plan-filter.ts";
import { greatestScrollPx, rowTopPx, rowsInSight } from "../kernels/row-layout.ts";
import { viewEndAt, xOfInstant } from "../kernels/time-scale.ts";
import { drawAxis } from "./draw-axis.ts";
import { drawCarry, drawGhost } from "./draw-carry.ts";
import { drawFrozen } from "./draw-frozen.ts";
import { drawClosedTime, drawExtraShifts, drawTimeLines } from "./draw-ground.ts";
import { drawEnding, drawSelectedDue } from "./draw-lateness.ts";
import { drawPiece } from "./draw-segments.ts";
import type { Frame } from "./frame.ts";
import { boardFont, fillBox, lineDown, type Pen } from "./pen.ts";

const passedOver = 0.2;

/** Draws one picture of the board as it is worked on. Only rows and segments in sight are touched. */
export function drawBoard(pen: Pen, frame: Frame): void {
  drawPlan(pen, frame);
  drawScrollMark(pen, frame);
  drawGhost(pen, frame);
}

/** The plan in its rows under their axis: what the board shows in print too. */
export function drawPlan(pen: Pen, frame: Frame): void {
  const { layout, palette, view } = frame;
  fillBox(pen, { x: 0, y: 0, width: layout.widthPx, height: layout.heightPx }, palette.leaf);
  const rows = rowsInSight(layout, view.scrollPx);
  const inSight = frame.rows.rows.slice(rows.from, rows.to);

  pen.save();
  pen.beginPath();
  pen.rect(layout.labelWidthPx, layout.axisHeightPx, layout.widthPx, layout.heightPx);
  pen.clip();
  drawUnknownTime(pen, frame);
  for (const row of inSight) {
    drawExtraShifts(pen, frame, row);
    drawClosedTime(pen, frame, row);
  }
  drawTimeLines(pen, frame);
  drawSelectedGap(pen, frame);
  const endAt = viewEndAt(view, layout.widthPx - layout.labelWidthPx);
  for (const row of inSight) {
    const { from, to } = spellsInSight(row.pieces, view.startAt, endAt);
    const pieces = row.pieces.slice(from, to);
    for (const piece of pieces) {
      pen.globalAlpha = isSegmentKept(frame.plan, piece.segment, frame.kept) ? 1 : passedOver;
      pen.beginPart(() => frame.words.piece(piece.segment));
      drawPiece(pen, frame, piece);
      pen.endPart();
    }
    for (const piece of pieces) {
      if (piece.segment.ending === null || !isSegmentKept(frame.plan, piece.segment, frame.kept)) continue;
      pen.globalAlpha = 1;
      drawEnding(pen, frame, piece);
    }
    pen.globalAlpha = 1;
    pen.fillStyle = palette.rule;
    pen.fillRect(0, rowTopPx(layout, view.scrollPx, row.index + 1) - 1, layout.widthPx, 1);
  }
  drawSelectedDue(pen, frame);
  drawCarry(pen, frame);
  pen.restore();

  drawAxis(pen, frame);
  drawFrozen(pen, frame);
  drawNow(pen, frame);
  drawRowNames(pen, frame, rows);
}

/** Before and after the plan's horizon nothing is known: plain paper. */
function drawUnknownTime(pen: Pen, frame: Frame): void {
  const { layout, view, palette, plan } = frame;
  const left = layout.labelWidthPx;
  const start = left + xOfInstant(view, plan.startAt);
  const end = left + xOfInstant(view, plan.knownEndAt);
  fillBox(pen, { x: left, y: 0, width: Math.max(0, start - left), height: layout.heightPx }, palette.paper);
  fillBox(
    pen,
    { x: end, y: 0, width: Math.max(0, layout.widthPx - end), height: layout.heightPx },
    palette.paper,
  );
}

function drawSelectedGap(pen: Pen, frame: Frame): void {
  const gap = frame.selectedGap;
  if (gap === null) return;
  const { layout, view, palette } = frame;
  const x = layout.labelWidthPx + xOfInstant(view, gap.start);
  const end = layout.labelWidthPx + xOfInstant(view, gap.end);
  const top = rowTopPx(layout, view.scrollPx, gap.rowIndex);
  pen.globalAlpha = 0.55;
  fillBox(pen, { x, y: top + 3, width: end - x, height: layout.rowHeightPx - 7 }, palette.actWeak);
  pen.globalAlpha = 1;
  pen.strokeStyle = palette.act;
  pen.lineWidth = 2;
  pen.strokeRect(x + 1, top + 4, Math.max(1, end - x - 2), layout.rowHeightPx - 9);
}

function drawNow(pen: Pen, frame: Frame): void {
  const { layout, view, palette } = frame;
  const x = layout.labelWidthPx + xOfInstant(view, frame.now);
  if (x < layout.labelWidthPx || x > layout.widthPx) return;
  pen.strokeStyle = palette.act;
  pen.lineWidth = 2;
  lineDown(pen, x, layout.axisHeightPx - 4, layout.heightPx);
  pen.fillStyle = palette.act;
  pen.font = boardFont.gate;
  const width = pen.textWidth(frame.words.now) + 10;
  const at = Math.min(Math.max(x - width / 2, layout.labelWidthPx), layout.widthPx - width);
  pen.beginPath();
  pen.roundRect({ x: at, y: layout.axisHeightPx - 17, width, height: 15 }, 4);
  pen.fill();
  pen.fillStyle = palette.leaf;
  pen.fillText(frame.words.now, at + 5, layout.axisHeightPx - 5.5);
}

function drawRowNames(pen: Pen, frame: Frame, rows: { readonly from: number; readonly to: number }): void {
  const { layout, view, palette } = frame;
  const width = layout.labelWidthPx;
  fillBox(pen, { x: 0, y: 0, width, height: layout.heightPx }, palette.leaf);
  pen.save();
  pen.beginPath();
  pen.rect(0, layout.axisHeightPx, width, layout.heightPx);
  pen.clip();
  for (const row of frame.rows.rows.slice(rows.from, rows.to)) {
    const top = rowTopPx(layout, view.scrollPx, row.index);
    const middle = top + layout.rowHeightPx / 2;
    const widthOf = (text: string): number => pen.textWidth(text);
    drawRowChosen(pen, frame, row);
    pen.font = boardFont.line;
    pen.fillStyle = palette.ink;
    const { name, shortName } = frame.words.rowLabel(row);
    const label = widthOf(name) <= width - 16 ? name : shortName;
    pen.fillText(fitLabel(label, width - 16, widthOf), 12, middle - 2);
    pen.font = boardFont.small;
    pen.fillStyle = palette.soft;
    pen.fillText(fitLabel(frame.words.rowUse(row), width - 16, widthOf), 12, middle + 14);
    pen.fillStyle = palette.rule;
    pen.fillRect(0, top + layout.rowHeightPx - 1, width, 1);
  }
  pen.restore();
  pen.fillStyle = palette.rule;
  pen.fillRect(width - 1, 0, 1, layout.heightPx);
  pen.fillRect(0, layout.axisHeightPx - 1, width, 1);
}

/** The name of a line leads to what can be done with it: dots say so, a band where it is chosen. */
function drawRowChosen(pen: Pen, frame: Frame, { resource, index }: BoardRow): void {
  if (resource.kind !== "line" || frame.lineChoice === null) return;
  const { layout, view, palette } = frame;
  const top = rowTopPx(layout, view.scrollPx, index);
  if (resource.line.id === frame.lineChoice.lineId) {
    fillBox(
      pen,
      { x: 0, y: top, width: layout.labelWidthPx, height: layout.rowHeightPx - 1 },
      palette.actWeak,
    );
    fillBox(pen, { x: 0, y: top, width: 4, height: layout.rowHeightPx - 1 }, palette.act);
  }
  for (const dot of [0, 1, 2])
    fillBox(
      pen,
      { x: layout.labelWidthPx - 9, y: top + layout.rowHeightPx / 2 - 7 + dot * 5, width: 2.5, height: 2.5 },
      palette.soft,
    );
}

/** Where the rows stand when they do not all fit. */
function drawScrollMark(pen: Pen, frame: Frame): void {
  const { layout, view, palette } = frame;
  const greatest = greatestScrollPx(layout);
  if (greatest === 0) return;
  const room = layout.heightPx - layout.axisHeightPx;
  const height = Math.max(24, (room * room) / (room + greatest));
  const y = layout.axisHeightPx + ((room - height) * view.scrollPx) / greatest;
  pen.fillStyle = palette.soft;
  pen.globalAlpha = 0.6;
  pen.beginPath();
  pen.roundRect({ x: layout.widthPx - 7, y: y + 2, width: 4, height: height - 4 }, 2);
  pen.fill();
  pen.globalAlpha = 1;
}
