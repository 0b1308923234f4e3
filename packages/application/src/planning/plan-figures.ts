import type { Plan, ProblemData } from "@formweek/scheduler";

/** What a plan comes to in the figures by which plans are compared. Seconds; money of the plant. */
export interface PlanFigures {
  readonly cost: number;
  readonly lateOrders: number;
  readonly unplannedOrders: number;
  /** Σ over all orders. */
  readonly lateSeconds: number;
  /** Lines standing in changes: work, not pauses. */
  readonly changeSeconds: number;
  readonly overtimeSeconds: number;
}

const HOUR_SECONDS = 3600;

/** Finish of each order that the plan makes, seconds since the epoch. */
export function finishesOf(plan: Pick<Plan, "lots">): ReadonlyMap<string, number> {
  const finishes = new Map<string, number>();
  for (const lot of plan.lots)
    finishes.set(lot.orderId, Math.max(finishes.get(lot.orderId) ?? lot.finish, lot.finish));
  return finishes;
}

/** Seconds by which an order is late in a plan; null where the plan does not make it. */
export function latenessOf(problem: ProblemData, plan: Plan, orderId: string): number | null {
  const finish = finishesOf(plan).get(orderId);
  const job = problem.jobs.find((each) => each.orderId === orderId);
  return finish === undefined || job === undefined ? null : Math.max(0, finish - job.dueAt);
}

/** The figures of a plan of a problem. */
export function planFigures(problem: ProblemData, plan: Plan): PlanFigures {
  const finishes = finishesOf(plan);
  const lateness = problem.jobs.map(({ orderId, dueAt }) => (finishes.get(orderId) ?? dueAt) - dueAt);
  const late = lateness.filter((seconds) => seconds > 0);
  const amount = (name: string): number =>
    plan.objective.terms.find((term) => term.name === name)?.amount ?? 0;
  return {
    cost: plan.objective.total,
    lateOrders: late.length,
    unplannedOrders: plan.unplanned.length,
    lateSeconds: late.reduce((sum, seconds) => sum + seconds, 0),
    changeSeconds: Math.round(amount("change time") * HOUR_SECONDS),
    overtimeSeconds: Math.round(amount("overtime") * HOUR_SECONDS),
  };
}
