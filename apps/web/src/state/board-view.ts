import { boardRows, type BoardRows, type RowPiece } from "../kernels/board-rows.ts";
import { clampScroll, rowLayout, scrollToRow, timeWidthPx, type RowLayout } from "../kernels/row-layout.ts";
import {
  clampView,
  instantAtX,
  panView,
  revealInView,
  spanView,
  zoomView,
  type TimeBounds,
  type TimeView,
} from "../kernels/time-scale.ts";
import type { BoardState, TimeStretch } from "./board-state.ts";
import type { BoardExtent } from "./carry.ts";

const firstSpanSeconds = 7 * 86_400;

/** Layout of the rows for a state; the one place where it is decided. */
export function layoutOf(state: BoardState): RowLayout {
  const names = state.rowChoice === "lines" ? "short" : "long";
  return rowLayout(state.size, rowsOf(state)?.rows.length ?? 0, { names, density: state.density });
}

/** The plan in the rows that are chosen; null without a plan. */
export function rowsOf({ plan, rowChoice }: BoardState): BoardRows | null {
  return plan === null ? null : boardRows(plan, rowChoice);
}

/** Time bounds of the board for a state. */
export function boundsOf(state: BoardState): TimeBounds {
  const widthPx = timeWidthPx(layoutOf(state));
  return { startAt: state.plan?.startAt ?? 0, endAt: state.plan?.endAt ?? 0, widthPx };
}

/** Where places of a carried run lie. */
export function extentOf(state: BoardState): BoardExtent {
  return { layout: layoutOf(state), bounds: boundsOf(state) };
}

/** Other times in sight; rows stay where they are. */
export function withView(state: BoardState, view: TimeView): BoardState {
  return { ...state, view: { ...view, scrollPx: clampScroll(layoutOf(state), state.view.scrollPx) } };
}

/** The view again within the plan, after either has changed. */
export function keepInBounds(state: BoardState): BoardState {
  return state.plan === null || state.size.widthPx === 0
    ? state
    : withView(state, clampView(state.view, boundsOf(state)));
}

/** Another size of the board; the first shows the first week, or what the view was before. */
export function withSize(state: BoardState, size: BoardState["size"]): BoardState {
  if (size.widthPx === state.size.widthPx && size.heightPx === state.size.heightPx) return state;
  const isFirst = state.size.widthPx === 0;
  const next = { ...state, size };
  if (state.plan === null) return next;
  if (state.heldTime !== null) return withStretch(next, state.heldTime);
  if (isFirst && !isViewKept(state)) return firstWeek(next);
  return keepInBounds(next);
}

export function panBy(state: BoardState, byX: number, byY: number): BoardState {
  if (state.plan === null) return state;
  const scrollPx = clampScroll(layoutOf(state), state.view.scrollPx + byY);
  const view = byX === 0 ? state.view : panView(state.view, boundsOf(state), byX);
  return { ...state, view: { startAt: view.startAt, secondsPerPx: view.secondsPerPx, scrollPx } };
}

export function zoomBy(state: BoardState, atX: number | null, factor: number): BoardState {
  if (state.plan === null || !(factor > 0)) return state;
  const layout = layoutOf(state);
  const at = atX === null ? timeWidthPx(layout) / 2 : Math.max(0, atX - layout.labelWidthPx);
  return withView(state, zoomView(state.view, boundsOf(state), { atX: at, factor }));
}

export function chooseSpan(state: BoardState, span: number | "whole plan"): BoardState {
  if (state.plan === null) return state;
  const bounds = boundsOf(state);
  if (span === "whole plan")
    return withView(state, spanView(bounds, bounds.startAt, bounds.endAt - bounds.startAt));
  const startAt = Math.max(bounds.startAt, instantAtX(state.view, 0.015 * bounds.widthPx));
  return withView(state, spanView(bounds, startAt, span));
}

export function centreOn(state: BoardState, at: number): BoardState {
  if (state.plan === null) return state;
  const bounds = boundsOf(state);
  const { secondsPerPx } = state.view;
  return withView(
    state,
    clampView({ startAt: at - bounds.widthPx * 0.1 * secondsPerPx, secondsPerPx }, bounds),
  );
}

/** That stretch of time over the width of the board. */
export function withStretch(state: BoardState, { startAt, spanSeconds }: TimeStretch): BoardState {
  const bounds = boundsOf(state);
  return withView(state, clampView({ startAt, secondsPerPx: spanSeconds / bounds.widthPx }, bounds));
}

/** The view moved so far that a piece is in sight. */
export function reveal(state: BoardState, piece: RowPiece): BoardState {
  const view = revealInView(state.view, boundsOf(state), { startAt: piece.start, endAt: piece.end });
  const scrollPx = scrollToRow(layoutOf(state), state.view.scrollPx, piece.rowIndex);
  return { ...state, view: { startAt: view.startAt, secondsPerPx: view.secondsPerPx, scrollPx } };
}

/** The first week of the plan in sight. */
export function firstWeek(state: BoardState): BoardState {
  return withView(state, spanView(boundsOf(state), state.plan?.startAt ?? 0, firstSpanSeconds));
}

/** A view at the epoch is one that nobody has chosen yet. */
export function isViewKept(state: BoardState): boolean {
  return state.view.startAt > 0;
}
