import { type Pin, type Plan, type PlannedLot, type ProblemData, openEdits } from "@formweek/scheduler";
import type { FrozenPlan } from "./frozen-plan.ts";
import type { PlanDocument } from "./plan-document.ts";
import { planOfDocument } from "./plan-of-document.ts";

/** The problem with further pins. */
export function withPins(problem: ProblemData, pins: readonly Pin[]): ProblemData {
  return pins.length === 0 ? problem : { ...problem, pins: [...problem.pins, ...pins] };
}

/**
 * Pins on the frozen runs of the plan that was given out, as far as they can still stay in a new plan: where an order before
 * them has grown or a line is closed now, a run that cannot begin on time is free. Runs from before the planning start are
 * past, and pins of the problem itself come first. Pure; one decode for each round of runs that are given up.
 */
export function frozenPins(problem: ProblemData, { document, frozenUntil }: FrozenPlan): readonly Pin[] {
  const plan = aheadOf(problem, document);
  return tenable(problem, plan, wantedPins(problem, plan, frozenUntil));
}

/** What a plan that was given out has from the planning start on. */
export function aheadOf(problem: ProblemData, document: PlanDocument): Plan {
  const given = planOfDocument(document, problem);
  return { ...given, lots: given.lots.filter(({ start }) => start >= problem.horizon.start) };
}

/** As `frozenPins`, but only on runs that a plan that is worked on by hand still has where they were given out. */
export function frozenPinsIn(
  problem: ProblemData,
  frozen: FrozenPlan,
  document: PlanDocument,
): readonly Pin[] {
  const plan = planOfDocument(document, problem);
  const wanted = wantedPins(problem, planOfDocument(frozen.document, problem), frozen.frozenUntil);
  return tenable(problem, plan, keptBy(plan, wanted));
}

/** Pins on the runs of a plan that start before an instant, as far as they can stay: they are under way by then. */
export function pinsUntil(problem: ProblemData, plan: Plan, until: number): readonly Pin[] {
  return tenable(problem, plan, wantedPins(problem, plan, until));
}

/** Those pins that a plan can keep under the problem. */
function tenable(problem: ProblemData, plan: Plan, wanted: readonly Pin[]): readonly Pin[] {
  let pins = wanted;
  while (pins.length > 0) {
    const opened = openEdits(withPins(problem, pins), plan);
    // a faulty problem is refused by whoever plans it, with its faults
    if (!opened.ok) return [];
    const kept = keptBy(opened.value.plan, pins);
    if (kept.length === pins.length) break;
    pins = kept;
  }
  return pins;
}

/** A pin's start is that of the order's first lot; the line binds all lots, so orders on several lines keep the start alone. */
function wantedPins(problem: ProblemData, { lots }: Plan, frozenUntil: number): readonly Pin[] {
  const pinned = new Set(problem.pins.map(({ orderId }) => orderId));
  const lotsOf = new Map<string, PlannedLot[]>();
  for (const lot of lots) lotsOf.set(lot.orderId, [...(lotsOf.get(lot.orderId) ?? []), lot]);
  return problem.jobs.flatMap(({ orderId }): Pin[] => {
    const own = lotsOf.get(orderId) ?? [];
    const first = own.find(({ lot }) => lot === 0);
    if (first === undefined || pinned.has(orderId)) return [];
    if (first.start < problem.horizon.start || first.start >= frozenUntil) return [];
    const isOnOneLine = own.every(({ lineId }) => lineId === first.lineId);
    return [{ orderId, lineId: isOnOneLine ? first.lineId : null, startAt: first.start, sequence: null }];
  });
}

/** Those pins that hold in a plan. */
export function keptBy({ lots }: Plan, pins: readonly Pin[]): readonly Pin[] {
  const first = new Map(lots.filter(({ lot }) => lot === 0).map((lot) => [lot.orderId, lot]));
  return pins.filter(({ orderId, lineId, startAt }) => {
    const lot = first.get(orderId);
    return lot !== undefined && lot.start === startAt && (lineId === null || lot.lineId === lineId);
  });
}
