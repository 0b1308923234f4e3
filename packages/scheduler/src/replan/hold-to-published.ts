import { isOpen } from "@formweek/capacity-model";
import type { Plan, PlannedLot } from "../plan/plan.ts";
import type { Job, Pin, ProblemData } from "../problem/problem-data.ts";

/** How much of a published plan is to stay. */
export interface CalmTerms {
  /** Runs that start before this instant keep line and start, s since the epoch. */
  readonly frozenUntil: number;
  readonly movedLinePerOrder: number;
  readonly movedStartPerHour: number;
}

/** The lot of each order that starts first. */
function firstLots(plan: Plan): ReadonlyMap<string, PlannedLot> {
  const first = new Map<string, PlannedLot>();
  for (const lot of plan.lots) {
    const known = first.get(lot.orderId);
    if (known === undefined || lot.start < known.start) first.set(lot.orderId, lot);
  }
  return first;
}

/** The lines that each order has lots on. */
function linesByOrder(plan: Plan): ReadonlyMap<string, readonly string[]> {
  const lines = new Map<string, Set<string>>();
  for (const { orderId, lineId } of plan.lots) {
    const known = lines.get(orderId);
    if (known === undefined) lines.set(orderId, new Set([lineId]));
    else known.add(lineId);
  }
  return new Map([...lines].map(([orderId, each]) => [orderId, [...each]]));
}

/**
 * The problem with a price on every order's distance from a published plan, and with pins on the runs that start before the
 * frozen horizon ends. A run is not frozen where it could not start any more: its line is closed then, gone, or no longer
 * makes the order. Pins of the problem itself stand. Planned from the published plan on (`startFrom`), it gives a plan in which
 * little moves.
 */
export function holdToPublished(problem: ProblemData, published: Plan, terms: CalmTerms): ProblemData {
  const first = firstLots(published);
  const linesOf = linesByOrder(published);
  const pinned = new Set(problem.pins.map((pin) => pin.orderId));
  const lines = new Map(problem.lines.map((line) => [line.id, line]));
  const isFrozen = (job: Job, lot: PlannedLot): boolean => {
    const line = lines.get(lot.lineId);
    if (lot.start >= terms.frozenUntil || lot.start < problem.horizon.start || pinned.has(job.orderId))
      return false;
    const still = job.options.some(
      (option) => option.lineId === lot.lineId && option.setupId === lot.setupId,
    );
    return still && line !== undefined && isOpen(line.workingTime, lot.start);
  };
  const pins = problem.jobs.flatMap((job): Pin[] => {
    const lot = first.get(job.orderId);
    if (lot === undefined || !isFrozen(job, lot)) return [];
    return [{ orderId: job.orderId, lineId: lot.lineId, startAt: lot.start, sequence: null }];
  });
  const jobs = problem.jobs.map((job): Job => {
    const lot = first.get(job.orderId);
    return lot === undefined
      ? job
      : { ...job, published: { lineIds: linesOf.get(job.orderId) ?? [lot.lineId], startAt: lot.start } };
  });
  const { movedLinePerOrder, movedStartPerHour } = terms;
  return {
    ...problem,
    jobs,
    pins: [...problem.pins, ...pins],
    objective: { ...problem.objective, movedLinePerOrder, movedStartPerHour },
  };
}
