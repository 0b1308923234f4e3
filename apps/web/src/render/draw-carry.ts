import type { LotName } from "@formweek/contracts";
import type { BoardSegment } from "../kernels/board-plan.ts";
import { isSameLot, lotOfSegment } from "../kernels/line-lots.ts";
import { fitLabel } from "../kernels/fit-label.ts";
import { rowTopPx } from "../kernels/row-layout.ts";
import { xOfInstant } from "../kernels/time-scale.ts";
import { drawRun, pieceBox } from "./draw-segments.ts";
import type { CarriedLot, Frame } from "./frame.ts";
import { boardFont, fillBox, roundedPath, type Box, type Pen } from "./pen.ts";

const widestGhostPx = 260;
const narrowestGhostPx = 54;

/** What is drawn over the runs while a lot is carried: refused lines, the place it came from, and where it would go. */
export function drawCarry(pen: Pen, frame: Frame): void {
  const { carry } = frame;
  if (carry === null) return;
  drawRefusedLines(pen, frame, carry);
  drawOldPlace(pen, frame, carry);
  drawPlace(pen, frame, carry);
}

/** The run in the pointer's hold, above everything else. */
export function drawGhost(pen: Pen, frame: Frame): void {
  const { carry, layout } = frame;
  const segment = carry?.standing.segments[carry.index];
  if (carry?.point === undefined || carry.point === null || segment?.source.kind !== "run") return;
  const { width, height } = boxOf(frame, segment);
  const ghost = Math.min(widestGhostPx, Math.max(narrowestGhostPx, width));
  const box = {
    x: carry.point.x - Math.min(ghost / 2, 40),
    y: carry.point.y - height / 2,
    width: ghost,
    height,
  };
  pen.save();
  pen.globalAlpha = 0.88;
  pen.shadow(frame.palette.outline);
  roundedPath(pen, { ...box, y: box.y + 0.5 }, 5);
  pen.fillStyle = frame.palette.leaf;
  pen.fill();
  pen.shadow(null);
  drawRun(pen, { ...frame, layout: { ...layout, labelWidthPx: 0 } }, { segment, run: segment.source, box });
  pen.restore();
}

/** Lines that the lot does not fit: hatched all along, with the reason at the left edge. */
function drawRefusedLines(pen: Pen, frame: Frame, carry: CarriedLot): void {
  const { layout, view, palette } = frame;
  const left = layout.labelWidthPx;
  for (const line of frame.plan.lines) {
    const reason = carry.refused.get(line.id);
    const top = rowTopPx(layout, view.scrollPx, line.index);
    if (reason === undefined || top > layout.heightPx || top + layout.rowHeightPx < 0) continue;
    const row = { x: left, y: top, width: layout.widthPx - left, height: layout.rowHeightPx - 1 };
    const isTarget = carry.place.lineIndex === line.index;
    pen.globalAlpha = isTarget ? 0.88 : 0.7;
    pen.fillStyle = { ground: palette.shut, line: palette.late, stepPx: 11, linePx: 1.1, shiftPx: 0 };
    pen.fillRect(row.x, row.y, row.width, row.height);
    pen.globalAlpha = 1;
    drawReason(pen, frame, row, frame.words.refused(reason));
    if (!isTarget) continue;
    pen.strokeStyle = palette.late;
    pen.lineWidth = 2;
    pen.strokeRect(row.x + 1, row.y + 1, row.width - 2, row.height - 2);
  }
}

function drawReason(pen: Pen, frame: Frame, row: Box, reason: string): void {
  const { palette } = frame;
  pen.font = boardFont.small;
  const label = fitLabel(reason, row.width - 40, (text) => pen.textWidth(text));
  if (label === "") return;
  const box = {
    x: row.x + 10,
    y: row.y + row.height / 2 - 12,
    width: pen.textWidth(label) + 16,
    height: 24,
  };
  roundedPath(pen, box, 5);
  pen.fillStyle = palette.leaf;
  pen.fill();
  pen.strokeStyle = palette.late;
  pen.lineWidth = 1;
  pen.stroke();
  pen.fillStyle = palette.late;
  pen.fillText(label, box.x + 8, box.y + 16);
}

/** A dashed outline where the lot lies on the standing plan. */
function drawOldPlace(pen: Pen, frame: Frame, carry: CarriedLot): void {
  const box = spanBox(
    frame,
    runsOf(frame.plan === carry.standing ? frame : standing(frame, carry), carry.lot),
  );
  if (box === null) return;
  roundedPath(pen, box, 5);
  if (frame.plan === carry.standing) {
    pen.globalAlpha = 0.6;
    pen.fillStyle = frame.palette.leaf;
    pen.fill();
    pen.globalAlpha = 1;
  }
  pen.strokeStyle = frame.palette.act;
  pen.lineWidth = 1.5;
  pen.setLineDash([5, 4]);
  pen.stroke();
  pen.setLineDash([]);
}

/** The gate that the lot would go through, and a ring around it where its times are known. */
function drawPlace(pen: Pen, frame: Frame, carry: CarriedLot): void {
  const { layout, view, palette } = frame;
  if (carry.place.isHome || carry.refused.has(frame.plan.lines[carry.place.lineIndex]?.id ?? "")) return;
  const landed = frame.plan === carry.standing ? null : spanBox(frame, runsOf(frame, carry.lot));
  if (landed !== null) {
    roundedPath(
      pen,
      { x: landed.x - 2, y: landed.y - 2, width: landed.width + 4, height: landed.height + 4 },
      7,
    );
    pen.strokeStyle = palette.act;
    pen.lineWidth = 3;
    pen.stroke();
  }
  const x = landed?.x ?? layout.labelWidthPx + xOfInstant(view, carry.place.at);
  const top = rowTopPx(layout, view.scrollPx, carry.place.lineIndex) + 1;
  const bottom = top + layout.rowHeightPx - 3;
  fillBox(pen, { x: x - 2, y: top, width: 4, height: bottom - top }, palette.act);
  pen.beginPath();
  pen.moveTo(x - 8, top);
  pen.lineTo(x + 8, top);
  pen.lineTo(x, top + 8);
  pen.moveTo(x - 8, bottom);
  pen.lineTo(x + 8, bottom);
  pen.lineTo(x, bottom - 8);
  pen.fill();
}

function standing(frame: Frame, carry: CarriedLot): Frame {
  return { ...frame, plan: carry.standing };
}

function runsOf({ plan }: Frame, lot: LotName): readonly BoardSegment[] {
  return (plan.runsOfOrder.get(lot.orderId) ?? []).filter((run) => {
    const name = lotOfSegment(run);
    return name !== null && isSameLot(name, lot);
  });
}

/** From the first to the last of some stretches of one line; null for none. */
function spanBox(frame: Frame, runs: readonly BoardSegment[]): Box | null {
  const [first] = runs;
  const last = runs.at(-1);
  if (first === undefined || last === undefined) return null;
  const from = boxOf(frame, first);
  const to = boxOf(frame, last);
  return { ...from, width: to.x + to.width - from.x };
}

/** Place of a stretch in rows of lines, the only ones in which lots are carried. */
function boxOf(frame: Frame, segment: BoardSegment): Box {
  const { start, end, lineIndex: rowIndex, place } = segment;
  return pieceBox(frame, { segment, start, end, rowIndex, place });
}
