import type { BoardRow, BoardRows, RowPiece } from "./board-rows.ts";
import { spellsInSight } from "./culling.ts";
import { orderServed } from "./plan-filter.ts";

export type WalkStep =
  | "earlier"
  | "later"
  | "line above"
  | "line below"
  | "first on line"
  | "last on line"
  | "next late"
  | "previous late";

/**
 * The piece that the keyboard reaches from `from` by one step; null when there is none that way. A "line" here is a row.
 * Without a start the first piece of the first row that has one is taken. Pauses inside a lot are passed over.
 */
export function walkSegments(rows: BoardRows, from: RowPiece | null, step: WalkStep): RowPiece | null {
  if (step === "next late") return lateNeighbour(rows, from, 1);
  if (step === "previous late") return lateNeighbour(rows, from, -1);
  if (from === null) return firstOf(rows);
  switch (step) {
    case "earlier":
      return alongRow(rows, from, -1);
    case "later":
      return alongRow(rows, from, 1);
    case "first on line":
      return rows.rows[from.rowIndex]?.pieces.find(isWorth) ?? null;
    case "last on line":
      return rows.rows[from.rowIndex]?.pieces.findLast(isWorth) ?? null;
    case "line above":
      return acrossRows(rows, from, -1);
    case "line below":
      return acrossRows(rows, from, 1);
  }
}

function isWorth({ segment }: RowPiece): boolean {
  return segment.source.kind !== "stop";
}

function firstOf({ rows }: BoardRows): RowPiece | null {
  for (const row of rows) {
    const piece = row.pieces.find(isWorth);
    if (piece !== undefined) return piece;
  }
  return null;
}

function alongRow({ rows }: BoardRows, from: RowPiece, direction: 1 | -1): RowPiece | null {
  const pieces = rows[from.rowIndex]?.pieces ?? [];
  for (let place = from.place + direction; place >= 0 && place < pieces.length; place += direction) {
    const piece = pieces[place];
    if (piece !== undefined && isWorth(piece)) return piece;
  }
  return null;
}

function acrossRows({ rows }: BoardRows, from: RowPiece, direction: 1 | -1): RowPiece | null {
  for (let index = from.rowIndex + direction; index >= 0 && index < rows.length; index += direction) {
    const row = rows[index];
    const piece = row === undefined ? null : nearestInTime(row, (from.start + from.end) / 2);
    if (piece !== null) return piece;
  }
  return null;
}

function nearestInTime(row: BoardRow, instant: number): RowPiece | null {
  const { from } = spellsInSight(row.pieces, instant, instant + 1);
  const candidates = [
    row.pieces.slice(0, from).findLast(isWorth),
    row.pieces.slice(from).find(isWorth),
  ].filter((piece) => piece !== undefined);
  return (
    candidates.sort((a, b) => distance(a, instant) - distance(b, instant) || a.place - b.place)[0] ?? null
  );
}

function distance(piece: RowPiece, instant: number): number {
  return Math.max(0, piece.start - instant, instant - piece.end);
}

/** Late orders in order of where they end on the board, in time and then row by row; wraps around. */
function lateNeighbour(rows: BoardRows, from: RowPiece | null, direction: 1 | -1): RowPiece | null {
  const late = rows.rows
    .flatMap((row) => row.pieces.filter((piece) => isLate(rows, piece)))
    .sort((a, b) => inTime(a, b));
  if (late.length === 0) return null;
  if (from === null) return (direction === 1 ? late[0] : late.at(-1)) ?? null;
  const next =
    direction === 1
      ? late.find((piece) => inTime(piece, from) > 0)
      : late.findLast((piece) => inTime(piece, from) < 0);
  return next ?? (direction === 1 ? late[0] : late.at(-1)) ?? null;
}

/** Teams have no runs in their rows: there the changes for late orders are walked. */
function isLate({ choice, plan }: BoardRows, { segment }: RowPiece): boolean {
  if (choice !== "setter teams") return (segment.ending?.lateSeconds ?? 0) > 0;
  const orderId = orderServed(plan, segment);
  return orderId !== null && (plan.orders.get(orderId)?.lateSeconds ?? 0) > 0;
}

function inTime(a: RowPiece, b: RowPiece): number {
  return a.start - b.start || a.segment.index - b.segment.index;
}
