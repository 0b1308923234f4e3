import type { Plan } from "../plan/plan.ts";
import type { ProblemData } from "../problem/problem-data.ts";
import type { IdleGap } from "./gap-cause.ts";
import { gapHolds, lastHold } from "./gap-holds.ts";
import { restOfGap } from "./gap-rest.ts";
import { planSteps, type LotStep, type PlanSteps, type Step } from "./plan-steps.ts";

interface Gap {
  readonly from: number;
  readonly to: number;
  /** Own steps of the line that come after it, in order. */
  readonly after: readonly Step[];
}

function stepsOfLine(steps: PlanSteps, lineId: string): readonly Step[] {
  return steps.all.filter((step) => step.lineId === lineId);
}

/** Spells between steps, from the horizon's start on; the last one is open to the horizon's end. */
function gapsOf({ problem: { horizon } }: PlanSteps, own: readonly Step[]): readonly Gap[] {
  const ends = [horizon.start, ...own.map((step) => step.end)];
  return ends
    .map((from, place) => ({ from, to: own[place]?.start ?? horizon.end, after: own.slice(place) }))
    .filter(({ from, to }) => from < to);
}

/** A mould that is taken out for another line is nothing that the line waits for. */
const isStripping = (step: Step): boolean => step.kind === "change" && step.segment.stripping;

function lotOf(steps: PlanSteps, step: Step): LotStep | null {
  return step.kind === "lot" ? step : steps.lotAfter(step);
}

/** Orders that could fill the end of a line. */
function couldRunHere({ problem, lots }: PlanSteps, plan: Plan, lineId: string, from: number): string[] {
  const finishOf = new Map<string, number>();
  for (const lot of plan.lots)
    finishOf.set(lot.orderId, Math.max(lot.finish, finishOf.get(lot.orderId) ?? lot.finish));
  const later = new Set(
    lots.filter((lot) => lot.lineId !== lineId && lot.start >= from).map((lot) => lot.orderId),
  );
  const lateness = (orderId: string, dueAt: number): number => (finishOf.get(orderId) ?? Infinity) - dueAt;
  return problem.jobs
    .filter((job) => job.options.some((option) => option.lineId === lineId))
    .filter(({ orderId }) => later.has(orderId) || !finishOf.has(orderId))
    .map(({ orderId, dueAt }) => ({ orderId, late: lateness(orderId, dueAt) }))
    .sort((a, b) => (a.late === b.late ? 0 : b.late - a.late) || (a.orderId < b.orderId ? -1 : 1))
    .map(({ orderId }) => orderId);
}

function explained(steps: PlanSteps, plan: Plan, lineId: string, { from, to, after }: Gap): IdleGap {
  const gap = { lineId, from, to };
  const target = after.find((step) => !isStripping(step));
  const lot = target === undefined ? null : lotOf(steps, target);
  if (target === undefined || lot === null)
    return {
      ...gap,
      next: null,
      stretches: [],
      besides: [],
      couldRunHere: couldRunHere(steps, plan, lineId, from),
    };
  const holds = gapHolds(steps, target).filter(({ until }) => until > from);
  const binding = lastHold(holds);
  const heldUntil = Math.min(to, binding?.until ?? from);
  const held = (binding?.stretches ?? []).flatMap((stretch) => {
    const cut = { ...stretch, from: Math.max(from, stretch.from), to: Math.min(heldUntil, stretch.to) };
    return cut.from < cut.to ? [cut] : [];
  });
  return {
    ...gap,
    next: { orderId: lot.orderId, lot: lot.lot },
    stretches: [...held, ...restOfGap(steps, target, { from: heldUntil, to })],
    besides: holds
      .filter((hold) => hold !== binding)
      .map(({ cause, until }) => ({ cause, until }))
      .sort((a, b) => b.until - a.until),
    couldRunHere: [],
  };
}

/**
 * The spells in which a line does nothing, and what it waits for in each: its mould on another line, setters at another change,
 * sheet, release, closed time. Pauses inside a lot are no gaps. O(segments) a gap. Empty for a line that the problem does not have.
 */
export function whyIdle(problem: ProblemData, plan: Plan, lineId: string): readonly IdleGap[] {
  if (!problem.lines.some((line) => line.id === lineId)) return [];
  const steps = planSteps(problem, plan);
  return gapsOf(steps, stepsOfLine(steps, lineId)).map((gap) => explained(steps, plan, lineId, gap));
}
