import type { BoardPlan } from "./board-plan.ts";
import type { BoardRow, BoardRows, RowPiece } from "./board-rows.ts";
import { spellsInSight } from "./culling.ts";
import { rowAtY, type RowLayout } from "./row-layout.ts";
import { instantAtX, type TimeView } from "./time-scale.ts";

/** What lies at a place of the board. A gap is time of a row without a segment, bounded by its neighbours. */
export type BoardHit =
  | { readonly kind: "segment"; readonly index: number; readonly rowIndex: number }
  | { readonly kind: "gap"; readonly rowIndex: number; readonly start: number; readonly end: number }
  | { readonly kind: "row"; readonly rowIndex: number }
  | { readonly kind: "nothing" };

export interface BoardPoint {
  readonly x: number;
  readonly y: number;
}

/** Narrow segments (a gate in a wide view) can be hit up to so many pixels beside them. */
const reachPx = 4;

/** What is under a point of the canvas, in CSS pixels. */
export function hitTest(
  { plan, rows }: BoardRows,
  layout: RowLayout,
  view: TimeView & { readonly scrollPx: number },
  point: BoardPoint,
): BoardHit {
  const rowIndex = rowAtY(layout, view.scrollPx, point.y);
  const row = rowIndex === null ? undefined : rows[rowIndex];
  if (row === undefined) return { kind: "nothing" };
  if (point.x < layout.labelWidthPx) return { kind: "row", rowIndex: row.index };
  const instant = instantAtX(view, point.x - layout.labelWidthPx);
  const piece = pieceAt(row, instant) ?? narrowPieceNear(row, instant, view.secondsPerPx);
  if (piece !== undefined) return { kind: "segment", index: piece.segment.index, rowIndex: row.index };
  const gap = gapAt(plan, row, instant);
  const isWithinPlan = gap.start <= instant && instant < gap.end;
  return isWithinPlan ? { kind: "gap", rowIndex: row.index, ...gap } : { kind: "row", rowIndex: row.index };
}

/** The piece of a row that covers an instant. */
function pieceAt(row: BoardRow, instant: number): RowPiece | undefined {
  const { from, to } = spellsInSight(row.pieces, instant, instant + 1);
  const piece = from < to ? row.pieces[from] : undefined;
  return piece !== undefined && piece.start <= instant && instant < piece.end ? piece : undefined;
}

/** The free time of a row around an instant that no piece covers, cut at the plan's start and end. */
function gapAt(
  plan: BoardPlan,
  row: BoardRow,
  instant: number,
): { readonly start: number; readonly end: number } {
  const { to } = spellsInSight(row.pieces, -Infinity, instant);
  const before = row.pieces[to - 1];
  const after = row.pieces[to];
  return {
    start: before?.end ?? plan.startAt,
    end: after?.start ?? Math.max(plan.knownEndAt, before?.end ?? plan.startAt),
  };
}

function narrowPieceNear(row: BoardRow, instant: number, secondsPerPx: number): RowPiece | undefined {
  const reach = reachPx * secondsPerPx;
  const { from, to } = spellsInSight(row.pieces, instant - reach, instant + reach);
  return row.pieces.slice(from, to).find((piece) => (piece.end - piece.start) / secondsPerPx < 2 * reachPx);
}
