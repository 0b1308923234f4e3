import type { OrderEnding } from "../kernels/board-plan.ts";
import { pieceOfSegment, type RowPiece } from "../kernels/board-rows.ts";
import { xOfInstant } from "../kernels/time-scale.ts";
import { pieceBox } from "./draw-segments.ts";
import type { Frame } from "./frame.ts";
import { boardFont, fillBox, type Box, type Pen } from "./pen.ts";

/**
 * Due flag and lateness of the order that ends with this run. A late order shows its tail from the due instant, or from
 * the start of the run when it was due before that (an arrow then points back); one on time shows a small flag at its end.
 */
export function drawEnding(pen: Pen, frame: Frame, piece: RowPiece): void {
  const { ending } = piece.segment;
  if (ending === null) return;
  const box = pieceBox(frame, piece);
  if (ending.lateSeconds > 0) drawLate(pen, frame, ending, box);
  else drawOnTime(pen, frame, ending, box);
}

function drawLate(pen: Pen, frame: Frame, ending: OrderEnding, box: Box): void {
  const { palette, layout, view } = frame;
  const left = layout.labelWidthPx;
  const due = left + xOfInstant(view, ending.due);
  const finish = left + xOfInstant(view, ending.finish);
  const isDueBefore = due < box.x;
  const from = isDueBefore ? box.x : due;
  const bottom = box.y + box.height;
  pen.strokeStyle = palette.late;
  pen.fillStyle = palette.late;
  pen.lineWidth = 4;
  pen.setLineDash([2.5, 2.5]);
  pen.beginPath();
  pen.moveTo(from, bottom);
  pen.lineTo(Math.max(finish, from + 3), bottom);
  pen.stroke();
  pen.setLineDash([]);
  pen.lineWidth = 1.5;
  const runEnd = box.x + box.width;
  if (due > runEnd) {
    // The hold after the run: a thin line leads from its end to where it turns late.
    pen.setLineDash([1.5, 3]);
    pen.beginPath();
    pen.moveTo(runEnd, bottom);
    pen.lineTo(due, bottom);
    pen.stroke();
    pen.setLineDash([]);
  }
  if (!isDueBefore) {
    staff(pen, due, { from: box.y - 4, to: bottom, widthPx: 1.5 });
    flag(pen, due, box.y - 5);
  } else if (box.width > 14) {
    backArrow(pen, box.x + 2, bottom - 9);
  }
  drawLateWords(pen, frame, {
    seconds: ending.lateSeconds,
    from: from + (isDueBefore ? 12 : 6),
    to: Math.max(finish, box.x + box.width),
    bottom,
  });
}

interface LateWords {
  readonly seconds: number;
  readonly from: number;
  readonly to: number;
  readonly bottom: number;
}

function drawLateWords(pen: Pen, frame: Frame, { seconds, from, to, bottom }: LateWords): void {
  const { palette, layout } = frame;
  pen.font = boardFont.small;
  const label = frame.words.late(seconds);
  const width = pen.textWidth(label);
  const at = Math.max(from, layout.labelWidthPx + 6);
  if (to - at < width + 2) return;
  fillBox(pen, { x: at - 2, y: bottom - 18, width: width + 4, height: 15 }, palette.lateWeak);
  pen.fillStyle = palette.late;
  pen.fillText(label, at, bottom - 7);
}

function drawOnTime(pen: Pen, frame: Frame, ending: OrderEnding, box: Box): void {
  const { palette, layout, view } = frame;
  const due = layout.labelWidthPx + xOfInstant(view, ending.due);
  const isInside = due <= box.x + box.width;
  if (!isInside && box.width < 26) return;
  pen.fillStyle = palette.soft;
  const x = isInside ? due : box.x + box.width - 9;
  staff(pen, x, { from: box.y - 4, to: box.y + 5, widthPx: 1.2 });
  flag(pen, x, box.y - 5);
}

/** The staff of a flag in the pen's paint: a box, which is drawn in a fraction of the time of a line. */
function staff(
  pen: Pen,
  x: number,
  { from, to, widthPx }: { readonly from: number; readonly to: number; readonly widthPx: number },
): void {
  pen.fillRect(x - widthPx / 2, from, widthPx, to - from);
}

/** A small flag in the pen's paint, its staff's top at (x, y). */
export function flag(pen: Pen, x: number, y: number): void {
  pen.beginPath();
  pen.moveTo(x, y);
  pen.lineTo(x + 9, y);
  pen.lineTo(x + 6.5, y + 3.5);
  pen.lineTo(x + 9, y + 7);
  pen.lineTo(x, y + 7);
  pen.closePath();
  pen.fill();
}

function backArrow(pen: Pen, x: number, y: number): void {
  pen.beginPath();
  pen.moveTo(x, y);
  pen.lineTo(x + 6, y - 4);
  pen.lineTo(x + 6, y + 4);
  pen.closePath();
  pen.fill();
}

/** The selected order's due instant, over its row, also when it lies outside the run: a dotted line with its flag. */
export function drawSelectedDue(pen: Pen, frame: Frame): void {
  if (frame.selectedOrderId === null) return;
  const last = frame.plan.runsOfOrder.get(frame.selectedOrderId)?.find((run) => run.ending !== null);
  const piece = last === undefined ? null : pieceOfSegment(frame.rows, last.index);
  if (piece === null || last?.ending === undefined || last.ending === null) return;
  const { layout, view, palette } = frame;
  const box = pieceBox(frame, piece);
  const x = layout.labelWidthPx + xOfInstant(view, last.ending.due);
  const colour = last.ending.lateSeconds > 0 ? palette.late : palette.act;
  pen.strokeStyle = colour;
  pen.fillStyle = colour;
  pen.lineWidth = 1.5;
  pen.setLineDash([2, 3]);
  pen.beginPath();
  pen.moveTo(x, box.y - 4);
  pen.lineTo(x, box.y + box.height + 3);
  pen.moveTo(x, box.y + box.height + 3);
  pen.lineTo(layout.labelWidthPx + xOfInstant(view, last.ending.finish), box.y + box.height + 3);
  pen.stroke();
  pen.setLineDash([]);
  flag(pen, x, box.y - 5);
}
