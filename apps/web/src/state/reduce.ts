import type { BoardPlan } from "../kernels/board-plan.ts";
import { pieceOfSegment, type BoardRows, type RowChoice, type RowPiece } from "../kernels/board-rows.ts";
import { orderServed } from "../kernels/plan-filter.ts";
import { lotOfSegment } from "../kernels/line-lots.ts";
import { walkSegments } from "../kernels/walk-segments.ts";
import {
  centreOn,
  chooseSpan,
  extentOf,
  firstWeek,
  isViewKept,
  keepInBounds,
  panBy,
  reveal,
  rowsOf,
  withSize,
  withStretch,
  withView,
  zoomBy,
} from "./board-view.ts";
import type { BoardAddress, BoardState, Selection } from "./board-state.ts";
import { carryStep, carryTo, letGo, takeUp, withTrial } from "./carry.ts";
import type { Effect, Intent, Reduction } from "./intents.ts";

/** The board after an intent. Total: every intent has an answer in every state, also without a plan. */
export function reduce(state: BoardState, intent: Intent): Reduction<BoardState> {
  const answered = answer(state, intent);
  const reduction = { ...answered, state: withoutHeldTime(state, answered.state, intent) };
  const { carry, view } = reduction.state;
  const isHeldByPointer = carry?.point !== undefined && carry.point !== null;
  if (!isHeldByPointer || view === state.view || intent.kind === "carried to") return reduction;
  // The board moved under the pointer: what it holds is over another place now.
  const held = carryTo(reduction.state, carry.point, extentOf(reduction.state));
  return { state: held.state, effects: [...reduction.effects, ...held.effects] };
}

const keepsHeldTime: ReadonlySet<Intent["kind"]> = new Set([
  "board resized",
  "density chosen",
  "plan arrived",
  "address opened",
]);

/** Selecting opens and closes the details, which changes the board's size: only what an address selects keeps its time. */
function withoutHeldTime(before: BoardState, after: BoardState, { kind }: Intent): BoardState {
  const isUsed = after.view !== before.view || after.selection !== before.selection;
  return after.heldTime === null || !isUsed || keepsHeldTime.has(kind) ? after : { ...after, heldTime: null };
}

function answer(state: BoardState, intent: Intent): Reduction<BoardState> {
  switch (intent.kind) {
    case "plan arrived":
      return still({ ...withPlan(state, intent.plan), isProvisional: intent.isProvisional ?? false });
    case "other plan sought":
      return { state, effects: [{ kind: "show other plan" }] };
    case "board resized":
      return moved(state, withSize(state, intent.size));
    case "density chosen":
      return still({ ...state, density: intent.density }, keepInBounds);
    case "panned":
      return moved(state, panBy(state, intent.byX, intent.byY));
    case "zoomed":
      return moved(state, zoomBy(state, intent.atX, intent.factor));
    case "span chosen":
      return moved(state, chooseSpan(state, intent.spanSeconds));
    case "went to instant":
      return moved(state, centreOn(state, intent.at));
    case "view restored":
      return still({ ...state, view: { ...intent.view, scrollPx: state.view.scrollPx } }, keepInBounds);
    case "pointed at":
      return still({ ...state, hover: intent.hit });
    case "picked":
      return picked(state, intent.hit);
    case "selected":
      return selected(state, intent.selection);
    case "line sought":
      return lineSought(state);
    case "order sought":
      return moved(state, sought(state, intent.orderId));
    case "walked":
      return moved(state, walked(state, intent.step));
    case "rows chosen":
      return still(chooseRows(state, intent.choice));
    case "fit arrived":
      return still({ ...state, refused: intent.refused });
    case "taken up":
      return takeUp(state, intent.index, intent.point);
    case "selected taken up":
      return selectedTakenUp(state);
    case "carried to":
      return carryTo(state, intent.point, extentOf(state));
    case "carried on":
      return carryStep(state, intent.step, extentOf(state));
    case "let go":
      return letGo(state);
    case "given up":
      return still({ ...state, carry: null });
    case "tried":
      return still(withTrial(state, intent.edit, intent.trial));
    case "edit answered":
      return still(edited(state, intent.planId));
    case "filtered":
      return still({ ...state, filter: { ...state.filter, ...intent.by } });
    case "address opened":
      return moved(state, openAddress(state, intent.address));
  }
}

/** What was foreseen stays in sight until the plan itself is here. */
function edited(state: BoardState, planId: string | null): BoardState {
  return planId !== null && state.plan?.planId !== planId ? state : { ...state, pending: null };
}

/** Lots are carried in rows of lines. Of a selected change the run that it serves is taken up. */
function selectedTakenUp(before: BoardState): Reduction<BoardState> {
  const state = chooseRows(before, "lines");
  const rows = rowsOf(state);
  const piece = rows === null ? null : currentPiece(state, rows);
  if (rows === null || piece === null) return still(before);
  const next = rows.rows[piece.rowIndex]?.pieces[piece.place + 1];
  const index = (piece.segment.source.kind === "change" ? next : piece)?.segment.index;
  if (index === undefined) return still(before);
  return takeUp({ ...state, selection: { kind: "segment", index } }, index, null);
}

function still(
  state: BoardState,
  settle: (state: BoardState) => BoardState = (same) => same,
): Reduction<BoardState> {
  return { state: settle(state), effects: [] };
}

function moved(before: BoardState, after: BoardState): Reduction<BoardState> {
  const { startAt, secondsPerPx } = after.view;
  const isMoved = startAt !== before.view.startAt || secondsPerPx !== before.view.secondsPerPx;
  const effects: readonly Effect[] = isMoved ? [{ kind: "keep view", view: { startAt, secondsPerPx } }] : [];
  return { state: after, effects };
}

/** A new plan of the same plant keeps view, filter and the selected order; the first one shows its first week. */
function withPlan(state: BoardState, plan: BoardPlan | null): BoardState {
  if (plan === null) return { ...state, plan, selection: null, hover: null, carry: null, pending: null };
  if (state.plan?.planId === plan.planId) return state;
  const isFirst = state.plan === null || state.plan.document.plant.id !== plan.document.plant.id;
  // What is carried was taken from a plan that no longer stands.
  const next = {
    ...state,
    plan,
    hover: null,
    carry: null,
    pending: null,
    selection: carrySelection(state, plan),
  };
  return isFirst && next.size.widthPx > 0 && !isViewKept(state) ? firstWeek(next) : keepInBounds(next);
}

/** A selected lot stays selected where it runs in the new plan; of other selections their order does. */
function carrySelection(state: BoardState, plan: BoardPlan): Selection | null {
  const { selection } = state;
  if (selection?.kind === "line")
    return plan.lines.some(({ id }) => id === selection.lineId) ? selection : null;
  const segment = selection?.kind === "segment" ? state.plan?.segments[selection.index] : undefined;
  const lot = segment === undefined ? null : lotOfSegment(segment);
  const runs = plan.runsOfOrder.get(lot?.orderId ?? "");
  const again = runs?.find((run) => run.source.kind !== "change" && run.source.lot === lot?.lot);
  if (again !== undefined) return { kind: "segment", index: again.index };
  if (segment?.source.kind === "change") return changeAgain(orderServed(state.plan!, segment), plan);
  const orderId = selectedOrderId(state);
  return orderId !== null && plan.orders.has(orderId) ? { kind: "order", orderId } : null;
}

/** The change for an order in another plan; null where it needs none there. */
function changeAgain(orderId: string | null, plan: BoardPlan): Selection | null {
  const again = plan.segments.find(
    (segment) =>
      segment.source.kind === "change" && orderId !== null && orderServed(plan, segment) === orderId,
  );
  return again === undefined ? null : { kind: "segment", index: again.index };
}

/** The order that the selection is about; null for changes, gaps and nothing. */
export function selectedOrderId(state: BoardState): string | null {
  if (state.selection?.kind === "order") return state.selection.orderId;
  if (state.selection?.kind !== "segment") return null;
  const source = state.plan?.segments[state.selection.index]?.source;
  return source === undefined || source.kind === "change" ? null : source.orderId;
}

function picked(state: BoardState, hit: Extract<Intent, { kind: "picked" }>["hit"]): Reduction<BoardState> {
  if (hit.kind === "segment" || hit.kind === "gap") return selected(state, hit);
  const row = hit.kind === "row" ? rowsOf(state)?.rows[hit.rowIndex] : undefined;
  if (row?.resource.kind === "line") return selected(state, { kind: "line", lineId: row.resource.line.id });
  return selected(state, null);
}

function selected(state: BoardState, selection: Selection | null): Reduction<BoardState> {
  const isKnown = selection?.kind !== "segment" || state.plan?.segments[selection.index] !== undefined;
  return still({ ...state, selection: isKnown ? selection : null });
}

function lineSought(state: BoardState): Reduction<BoardState> {
  const { plan, selection } = state;
  const rows = rowsOf(state);
  if (plan === null || rows === null) return still(state);
  if (selection?.kind === "line") return still(state);
  const row = selection?.kind === "gap" ? rows.rows[selection.rowIndex]?.resource : undefined;
  const piece = currentPiece(state, rows);
  const line = row?.kind === "line" ? row.line : (plan.lines[piece?.segment.lineIndex ?? 0] ?? plan.lines[0]);
  return line === undefined ? still(state) : selected(state, { kind: "line", lineId: line.id });
}

function sought(state: BoardState, orderId: string): BoardState {
  if (state.plan?.orders.has(orderId) !== true) return state;
  const first = firstPieceOfOrder(state, orderId);
  const shown = first === null ? state : reveal(state, first);
  return { ...shown, selection: { kind: "order", orderId } };
}

function walked(state: BoardState, step: Extract<Intent, { kind: "walked" }>["step"]): BoardState {
  const rows = rowsOf(state);
  if (rows === null) return state;
  const next = walkSegments(rows, currentPiece(state, rows), step);
  if (next === null) return state;
  const { rowIndex, segment } = next;
  return { ...reveal(state, next), selection: { kind: "segment", index: segment.index, rowIndex } };
}

function currentPiece(state: BoardState, rows: BoardRows): RowPiece | null {
  const { selection } = state;
  if (selection === null) return null;
  if (selection.kind === "segment") return pieceOfSegment(rows, selection.index, selection.rowIndex);
  if (selection.kind === "order") return firstPieceOfOrder(state, selection.orderId);
  if (selection.kind === "line") return firstPieceOfLine(rows, selection.lineId);
  return rows.rows[selection.rowIndex]?.pieces.findLast((piece) => piece.end <= selection.start) ?? null;
}

function firstPieceOfLine({ rows }: BoardRows, lineId: string): RowPiece | null {
  return (
    rows.find(({ resource }) => resource.kind === "line" && resource.line.id === lineId)?.pieces[0] ?? null
  );
}

/** Where an order begins in the rows: its first run, or in rows without runs the first change for it. */
function firstPieceOfOrder(state: BoardState, orderId: string): RowPiece | null {
  const { plan } = state;
  const rows = rowsOf(state);
  if (plan === null || rows === null) return null;
  const first = plan.runsOfOrder.get(orderId)?.[0];
  const run = first === undefined ? null : pieceOfSegment(rows, first.index);
  if (run !== null) return run;
  const pieces = rows.rows.flatMap((row) =>
    row.pieces.filter(({ segment }) => orderServed(plan, segment) === orderId),
  );
  return pieces.sort((a, b) => a.start - b.start)[0] ?? null;
}

/** Other rows of the same plan: time and selection stay, what is selected comes into sight. A gap was one of the old rows. */
function chooseRows(state: BoardState, choice: RowChoice): BoardState {
  if (choice === state.rowChoice) return state;
  const { selection } = state;
  const next: BoardState = {
    ...state,
    rowChoice: choice,
    hover: null,
    carry: null,
    selection:
      selection?.kind === "gap"
        ? null
        : selection?.kind === "segment"
          ? { kind: "segment", index: selection.index }
          : selection,
    view: { ...state.view, scrollPx: 0 },
  };
  const rows = rowsOf(next);
  const piece = rows === null ? null : currentPiece(next, rows);
  return piece === null ? next : reveal(next, piece);
}

/** An address says what to show; a time that it names comes before that of the order it selects. */
function openAddress(state: BoardState, { filter, rowChoice, orderId, time }: BoardAddress): BoardState {
  const laidOut = chooseRows({ ...state, filter }, rowChoice);
  // a board without a size has no place to show an order at: the address is opened again once it has one
  if (laidOut.plan === null || laidOut.size.widthPx === 0) return laidOut;
  const chosen = orderId === selectedOrderId(laidOut) ? laidOut : selectOrder(laidOut, orderId);
  if (time === null) return { ...chosen, heldTime: null };
  return time === "as shown"
    ? { ...withView(chosen, laidOut.view), heldTime: null }
    : withStretch({ ...chosen, heldTime: time }, time);
}

function selectOrder(state: BoardState, orderId: string | null): BoardState {
  return orderId === null ? { ...state, selection: null } : sought(state, orderId);
}
