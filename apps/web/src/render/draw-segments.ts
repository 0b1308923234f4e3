import { fitLabel } from "../kernels/fit-label.ts";
import type { BoardSegment } from "../kernels/board-plan.ts";
import type { RowPiece } from "../kernels/board-rows.ts";
import { rowTopPx } from "../kernels/row-layout.ts";
import { xOfInstant } from "../kernels/time-scale.ts";
import type { RunSegment } from "@formweek/contracts";
import { drawLock, lockPx } from "./draw-lock.ts";
import { drawTag, tagPx } from "./draw-tag.ts";
import type { Frame } from "./frame.ts";
import { boardFont, fillBox, roundedPath, type Box, type Paint, type Pen } from "./pen.ts";

const rowPadPx = 6;
const bandPx = 9;
/** Width from which corners are seen to be round. */
const roundFromPx = 16;
/** Width from which a gate has room for its minutes, upright. */
const narrowestGateWordsPx = 12;
/** Luminance under which a band needs an outline on dark paper, over which on light paper. */
const darkBand = 0.16;
const lightBand = 0.75;

/** Place of a piece on the canvas; at least one pixel wide so that nothing disappears in a wide view. */
export function pieceBox(frame: Frame, piece: RowPiece): Box {
  const { layout, view } = frame;
  const x = layout.labelWidthPx + xOfInstant(view, piece.start);
  const end = layout.labelWidthPx + xOfInstant(view, piece.end);
  const y = rowTopPx(layout, view.scrollPx, piece.rowIndex) + rowPadPx;
  return { x, y, width: Math.max(1, end - x), height: layout.rowHeightPx - 2 * rowPadPx - 1 };
}

export function drawPiece(pen: Pen, frame: Frame, piece: RowPiece): void {
  const { segment } = piece;
  const box = pieceBox(frame, piece);
  switch (segment.source.kind) {
    case "run":
      drawRun(pen, frame, { segment, run: segment.source, box });
      return;
    case "change":
      drawChange(pen, frame, piece, box);
      return;
    case "stop":
      drawStop(pen, frame, { reason: segment.source.reason, box });
      return;
  }
}

/** A stretch of running, and the box that it is drawn in. */
export interface DrawnRun {
  readonly segment: BoardSegment;
  readonly run: RunSegment;
  readonly box: Box;
}

/** A length of sheet web: the sheet's colour on top, mould and pieces in the body. */
export function drawRun(pen: Pen, frame: Frame, { segment, run, box }: DrawnRun): void {
  const { palette, layout } = frame;
  const isLate = run.lateSeconds > 0;
  const inset = box.width > 6 ? 0.5 : 0;
  const body = {
    x: box.x + inset,
    y: box.y + 0.5,
    width: Math.max(1, box.width - 2 * inset),
    height: box.height,
  };
  const edge = isLate ? palette.late : palette.outline;
  if (box.width < 3) {
    fillBox(pen, { ...box, height: bandPx }, run.colour.clear ? palette.clear : run.colour.hex);
    fillBox(pen, { ...box, y: box.y + bandPx, height: box.height - bandPx }, edge);
    return;
  }
  if (body.width < roundFromPx) {
    drawNarrowRun(pen, frame, { segment, run, body, edge });
    return;
  }
  const radius = Math.min(5, body.width / 4);
  roundedPath(pen, body, radius);
  pen.fillStyle = isLate ? palette.lateWeak : palette.leaf;
  pen.fill();
  roundedPath(pen, { ...body, height: bandPx }, [radius, radius, 0, 0]);
  pen.fillStyle = bandFill(frame, run.colour);
  pen.fill();
  const underBand = needsOutline(run.colour, palette.isDark) ? 1 : 0.5;
  fillBox(pen, { ...body, y: body.y + bandPx, height: underBand }, edge);
  if (body.width >= 26)
    drawRunText(pen, frame, { segment, run, body, dueX: dueInside(frame, segment, body) });
  else drawMarkAlone(pen, frame, run, body);
  roundedPath(pen, body, radius);
  pen.strokeStyle = edge;
  pen.lineWidth = isLate ? 2 : 1;
  pen.stroke();
  if (isSelected(frame, segment)) drawRing(pen, frame, body);
  if (isFirstStretch(frame, segment) && run.lot > 0 && box.width > 60 && layout.rowHeightPx > 54)
    drawLotMark(pen, frame, { run, body });
}

/** As `drawRun` with square corners: in a wide view there are thousands, and boxes are drawn in a fraction of the time of rounded ones. */
function drawNarrowRun(
  pen: Pen,
  frame: Frame,
  { segment, run, body, edge }: Omit<DrawnRun, "box"> & { readonly body: Box; readonly edge: string },
): void {
  const { palette } = frame;
  const isLate = run.lateSeconds > 0;
  const line = isLate ? 2 : 1;
  fillBox(pen, body, edge);
  const inner = { x: body.x + line, width: body.width - 2 * line };
  fillBox(pen, { ...inner, y: body.y + line, height: bandPx - line }, bandFill(frame, run.colour));
  const ground = isLate ? palette.lateWeak : palette.leaf;
  const underBand = needsOutline(run.colour, palette.isDark) ? 1 : 0.5;
  const top = body.y + bandPx + underBand;
  fillBox(pen, { ...inner, y: top, height: body.y + body.height - line - top }, ground);
  drawMarkAlone(pen, frame, run, body);
  if (isSelected(frame, segment)) drawRing(pen, frame, body);
}

/** Lock or tag in the middle of a run that has no room for words. */
function drawMarkAlone(pen: Pen, frame: Frame, run: RunSegment, body: Box): void {
  const y = body.y + bandPx + 17;
  const middle = body.x + body.width / 2;
  const { ink } = frame.palette;
  if (frame.promised.has(run.orderId)) {
    if (body.width >= tagPx + 3) drawTag(pen, ink, middle - tagPx / 2, y);
  } else if (frame.held.has(run.orderId) && body.width >= lockPx + 3)
    drawLock(pen, ink, middle - lockPx / 2, y);
}

function drawRunText(
  pen: Pen,
  frame: Frame,
  { segment, run, body, dueX }: Omit<DrawnRun, "box"> & { readonly body: Box; readonly dueX: number },
): void {
  const { palette, layout } = frame;
  // A run that began before the left edge keeps its label in sight.
  const from = Math.max(body.x, layout.labelWidthPx) + 8;
  const room = Math.min(body.x + body.width, layout.widthPx) - from - 5;
  if (room < 18) return;
  const lines = textLines(layout.rowHeightPx);
  pen.font = boardFont.mould;
  pen.fillStyle = palette.ink;
  const widthOf = (text: string): number => pen.textWidth(text);
  const indent = drawMarks(pen, frame, run, { x: from, y: body.y + lines.mouldPx });
  // In its own row the mould need not be told again: the line is.
  const title =
    frame.rows.choice === "moulds"
      ? fitLabel(frame.words.line(segment), room - indent, widthOf)
      : mouldLabel(run, room - indent, widthOf);
  pen.fillText(title, from + indent, body.y + lines.mouldPx);
  if (lines.piecesPx === null) return;
  // The due flag's line and the words of lateness keep clear of the second line.
  const lowerRoom = Math.min(room, dueX - from - 4);
  pen.font = boardFont.small;
  pen.fillStyle = palette.soft;
  const amount = frame.words.pieces(run.pieces);
  const long = `${amount} · ${run.colour.name}`;
  const label = pen.textWidth(long) <= lowerRoom ? long : pen.textWidth(amount) <= lowerRoom ? amount : "";
  pen.fillText(label, from, body.y + lines.piecesPx);
}

/** Lock and tag before a run's name; how much room they take. */
function drawMarks(
  pen: Pen,
  { held, promised, palette }: Frame,
  { orderId }: RunSegment,
  { x, y }: { readonly x: number; readonly y: number },
): number {
  let room = 0;
  if (held.has(orderId)) {
    drawLock(pen, palette.ink, x, y);
    room += lockPx + 4;
  }
  if (promised.has(orderId)) {
    drawTag(pen, palette.ink, x + room, y);
    room += tagPx + 4;
  }
  return room;
}

/** Baselines of mould and pieces below a run's top; low rows have no room for the pieces. */
function textLines(rowHeightPx: number): { readonly mouldPx: number; readonly piecesPx: number | null } {
  if (rowHeightPx >= 64) return { mouldPx: bandPx + 18, piecesPx: bandPx + 35 };
  if (rowHeightPx >= 54) return { mouldPx: bandPx + 14, piecesPx: bandPx + 28 };
  if (rowHeightPx >= 46) return { mouldPx: bandPx + 17, piecesPx: null };
  return { mouldPx: bandPx + 12, piecesPx: null };
}

/** The mould's name, or where it has no room as much of its short id as fits: the beginning of an id tells more than a kind. */
function mouldLabel(run: RunSegment, room: number, widthOf: (text: string) => number): string {
  const id = run.mould?.mouldId ?? run.mouldName;
  const isNameBetter = widthOf(run.mouldName) <= room || id.length > run.mouldName.length;
  return fitLabel(isNameBetter ? run.mouldName : id, room, widthOf);
}

/** Where a late order's due flag stands in the run, its left edge when it was due before; infinite when on time or due later. */
function dueInside(frame: Frame, segment: BoardSegment, body: Box): number {
  if (segment.ending === null || segment.ending.lateSeconds === 0) return Infinity;
  const x = frame.layout.labelWidthPx + xOfInstant(frame.view, segment.ending.due);
  return x < body.x + body.width ? Math.max(x, body.x) : Infinity;
}

function drawLotMark(
  pen: Pen,
  frame: Frame,
  { run, body }: { readonly run: RunSegment; readonly body: Box },
): void {
  const label = `${run.lot + 1}`;
  pen.font = boardFont.gate;
  pen.fillStyle = frame.palette.soft;
  pen.fillText(label, body.x + body.width - pen.textWidth(label) - 5, body.y + body.height - 5);
}

/** A gate between runs: minutes upright in it when it is wide enough, else beside the pointer. */
function drawChange(pen: Pen, frame: Frame, { segment, start, end }: RowPiece, box: Box): void {
  const { palette } = frame;
  const gap = box.width > 5 ? 1 : 0;
  const gate = {
    x: box.x + gap,
    y: box.y + 6,
    width: Math.max(1.5, box.width - 2 * gap),
    height: box.height - 12,
  };
  if (gate.width < 6) fillBox(pen, gate, palette.gate);
  else {
    roundedPath(pen, gate, 3);
    pen.fillStyle = palette.gate;
    pen.fill();
  }
  if (isSelected(frame, segment)) drawRing(pen, frame, gate);
  if (gate.width < narrowestGateWordsPx) return;
  const minutes = frame.words.hours(end - start);
  pen.font = boardFont.gate;
  const label = gateLabel(pen, frame, { segment, minutes, room: gate.width - 8 });
  const length = pen.textWidth(label);
  pen.fillStyle = palette.gateInk;
  if (gate.width >= length + 8) {
    pen.fillText(label, gate.x + (gate.width - length) / 2, gate.y + gate.height / 2 + 4);
  } else if (gate.height >= length + 2) {
    pen.save();
    pen.translate(gate.x + gate.width / 2 + 4, gate.y + gate.height / 2 + length / 2);
    pen.rotate(-Math.PI / 2);
    pen.fillText(label, 0, 0);
    pen.restore();
  }
}

/** Minutes of a gate, with its line where the row is not the line's and there is room. */
function gateLabel(
  pen: Pen,
  frame: Frame,
  gate: { readonly segment: BoardSegment; readonly minutes: string; readonly room: number },
): string {
  if (frame.rows.choice === "lines") return gate.minutes;
  const long = `${frame.words.line(gate.segment)} · ${gate.minutes}`;
  return pen.textWidth(long) <= gate.room ? long : gate.minutes;
}

/** A pause inside a lot: the web goes on as a dashed line; its reason is written where there is room. */
function drawStop(
  pen: Pen,
  frame: Frame,
  { reason, box }: { readonly reason: "closed" | "operators" | "warm-up" | "service"; readonly box: Box },
): void {
  const { palette, layout } = frame;
  const y = box.y + bandPx / 2 + 0.5;
  pen.strokeStyle = palette.outline;
  pen.lineWidth = 1.5;
  pen.setLineDash([4, 4]);
  pen.beginPath();
  pen.moveTo(box.x, y);
  pen.lineTo(box.x + box.width, y);
  pen.stroke();
  pen.setLineDash([]);
  if (reason === "closed") return;
  pen.font = boardFont.small;
  const from = Math.max(box.x, layout.labelWidthPx) + 5;
  const room = Math.min(box.x + box.width, layout.widthPx) - from - 4;
  const label = fitLabel(frame.words.stop(reason), room, (text) => pen.textWidth(text));
  pen.fillStyle = palette.soft;
  pen.fillText(label, from, box.y + box.height / 2 + 8);
}

function drawRing(pen: Pen, frame: Frame, box: Box): void {
  roundedPath(pen, { x: box.x - 2, y: box.y - 2, width: box.width + 4, height: box.height + 4 }, 6);
  pen.strokeStyle = frame.palette.act;
  pen.lineWidth = frame.isFocused ? 3 : 2;
  pen.stroke();
}

/** Selected itself, or part of the order that is selected. */
function isSelected(frame: Frame, segment: BoardSegment): boolean {
  if (frame.selectedIndex === segment.index) return true;
  return (
    segment.source.kind === "run" &&
    frame.selectedIndex === null &&
    segment.source.orderId === frame.selectedOrderId
  );
}

function isFirstStretch(frame: Frame, segment: BoardSegment): boolean {
  const before = frame.plan.lines[segment.lineIndex]?.segments[segment.place - 1];
  if (before === undefined || before.source.kind === "change") return true;
  return before.source.kind === "stop" && before.source.reason === "service";
}

function bandFill(frame: Frame, colour: RunSegment["colour"]): Paint {
  if (!colour.clear) return colour.hex;
  const { palette, view, layout } = frame;
  const shiftPx = layout.labelWidthPx - view.startAt / view.secondsPerPx;
  return { ground: palette.leaf, line: palette.clear, stepPx: 6, linePx: 1.3, shiftPx };
}

function needsOutline(colour: RunSegment["colour"], isDark: boolean): boolean {
  const light = luminance(colour.hex);
  return colour.clear || (isDark ? light < darkBand : light > lightBand);
}

/** Relative luminance 0 … 1 of "#rrggbb", gamma taken as 2 (good enough to tell light from dark). */
function luminance(hex: string): number {
  const channel = (from: number): number => (Number.parseInt(hex.slice(from, from + 2), 16) / 255) ** 2;
  return 0.2126 * channel(1) + 0.7152 * channel(3) + 0.0722 * channel(5);
}
