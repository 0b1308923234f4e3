import type { FitRefusal, PlanEdit } from "@formweek/contracts";
import type { BoardPlan } from "../kernels/board-plan.ts";
import type { BoardPoint } from "../kernels/hit-test.ts";
import { lotOfSegment } from "../kernels/line-lots.ts";
import {
  dropPlaceAt,
  homePlace,
  isSamePlace,
  stepPlace,
  type DropPlace,
  type PlaceStep,
} from "../kernels/drop-place.ts";
import type { Trial } from "../kernels/trial.ts";
import { rowTopPx, scrollToRow, type RowLayout } from "../kernels/row-layout.ts";
import { instantAtX, revealInView, type TimeBounds } from "../kernels/time-scale.ts";
import type { BoardState, Carry } from "./board-state.ts";
import type { Effect, Reduction } from "./intents.ts";

/** Sizes that a state's board has. */
export interface BoardExtent {
  readonly layout: RowLayout;
  readonly bounds: TimeBounds;
}

/** The plan that is drawn: as it would be while a lot is carried or an edit is on its way, else the standing one. */
export function shownPlan({ plan, carry, pending }: BoardState): BoardPlan | null {
  if (carry?.trial?.kind === "plan") return carry.trial.plan;
  return pending?.plan ?? plan;
}

/** The move that letting go would ask for; null at the place where the lot lies. */
export function editOf(plan: BoardPlan, { lot, place }: Carry): PlanEdit | null {
  const line = plan.lines[place.lineIndex];
  if (place.isHome || line === undefined) return null;
  return { kind: "move", ...lot, lineId: line.id, before: place.before };
}

/** Why the lot's product does not fit the line of its place; null where it does. */
export function refusalOf(state: BoardState): FitRefusal | null {
  const { plan, carry } = state;
  const line = carry === null ? undefined : plan?.lines[carry.place.lineIndex];
  return line === undefined ? null : (refusedLinesOf(state).get(line.id) ?? null);
}

const none: ReadonlyMap<string, FitRefusal> = new Map();

/** Lines that the carried lot does not fit, with the reason. */
export function refusedLinesOf({ plan, carry, refused }: BoardState): ReadonlyMap<string, FitRefusal> {
  const order = carry === null ? undefined : plan?.orders.get(carry.lot.orderId);
  return order === undefined ? none : (refused.get(order.productId) ?? none);
}

/** Takes up the lot of a segment in rows of lines; changes and unknown segments stay where they are, and so does all while an edit is on its way or the plan is a run's. */
export function takeUp(state: BoardState, index: number, point: BoardPoint | null): Reduction<BoardState> {
  if (state.isProvisional) return { state, effects: [{ kind: "tell not taken" }] };
  const segment = state.plan?.segments[index];
  const lot = segment === undefined ? null : lotOfSegment(segment);
  const place = state.plan === null || lot === null ? null : homePlace(state.plan, lot);
  if (lot === null || place === null || state.pending !== null || state.rowChoice !== "lines")
    return { state, effects: [] };
  const carry = { lot, index, point, place, trial: null };
  return { state: { ...state, hover: null, carry }, effects: [] };
}

/** Holds the carried lot over a point; away from the rows it keeps its place. */
export function carryTo(
  state: BoardState,
  point: BoardPoint,
  { layout }: BoardExtent,
): Reduction<BoardState> {
  const { plan, carry, view } = state;
  if (plan === null || carry === null) return { state, effects: [] };
  const row = Math.floor((point.y - rowTopPx(layout, view.scrollPx, 0)) / layout.rowHeightPx);
  const lineIndex = Math.min(plan.lines.length - 1, Math.max(0, row));
  const instant = instantAtX(view, Math.max(0, point.x - layout.labelWidthPx));
  const place = dropPlaceAt(plan, carry.lot, { lineIndex, instant }) ?? carry.place;
  return atPlace(state, { ...carry, point }, place);
}

/** Moves the carried lot by one place or line, and brings the place into sight. */
export function carryStep(state: BoardState, step: PlaceStep, extent: BoardExtent): Reduction<BoardState> {
  const { plan, carry } = state;
  if (plan === null || carry === null) return { state, effects: [] };
  const place = stepPlace(plan, carry.lot, carry.place, step);
  const next = atPlace(state, { ...carry, point: null }, place);
  const { startAt, secondsPerPx } = revealInView(state.view, extent.bounds, {
    startAt: place.at,
    endAt: place.at,
  });
  const scrollPx = scrollToRow(extent.layout, state.view.scrollPx, place.lineIndex);
  return { ...next, state: { ...next.state, view: { startAt, secondsPerPx, scrollPx } } };
}

/** Puts the carried lot down: asks for the move, or does nothing where it lies already or may not lie. */
export function letGo(state: BoardState): Reduction<BoardState> {
  const { plan, carry } = state;
  if (plan === null || carry === null) return { state, effects: [] };
  const edit = editOf(plan, carry);
  const freed = { ...state, carry: null };
  const isRefused = carry.trial?.kind === "refused" && !carry.trial.isFrozen;
  if (edit === null || refusalOf(state) !== null || isRefused) return { state: freed, effects: [] };
  const foreseen = carry.trial?.kind === "plan" ? carry.trial.plan : null;
  return {
    state: { ...freed, pending: { edit, plan: foreseen } },
    effects: [{ kind: "ask for edit", edit }],
  };
}

/** Joins what came of a try to the carried lot; an answer to a place that it has left is dropped. */
export function withTrial(state: BoardState, edit: PlanEdit, trial: Trial): BoardState {
  const { plan, carry } = state;
  if (plan === null || carry === null) return state;
  const isAsked = JSON.stringify(editOf(plan, carry)) === JSON.stringify(edit);
  return isAsked ? { ...state, carry: { ...carry, trial } } : state;
}

function atPlace(state: BoardState, carry: Carry, place: DropPlace): Reduction<BoardState> {
  if (state.plan === null) return { state, effects: [] };
  if (isSamePlace(carry.place, place)) return { state: { ...state, carry }, effects: [] };
  const next = { ...state, carry: { ...carry, place, trial: null } };
  const edit = refusalOf(next) === null ? editOf(state.plan, next.carry) : null;
  const effects: readonly Effect[] = edit === null ? [] : [{ kind: "try edit", edit }];
  return { state: next, effects };
}
