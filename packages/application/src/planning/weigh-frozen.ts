import type { Pin, Plan, ProblemData } from "@formweek/scheduler";
import { keptBy } from "./frozen-pins.ts";

/** Least price of leaving weight 1 out, so that a weight can make it dear where the plant has it for nothing. */
const LEAST_PRICE = 1e-6;

/** True where a plan leaves out an order that is frozen. A pin holds or its order is left out. */
export function leavesOutFrozen(plan: Plan, frozen: readonly Pin[]): boolean {
  return keptBy(plan, frozen).length < frozen.length;
}

/**
 * The problem with frozen orders that weigh so much that leaving one out costs more than the whole plan `standing`, which
 * keeps them all: whatever the plant's prices, no search gives one up for cheaper terms. They are due when `standing` has them
 * ready at the latest, so that lateness which nothing can change any more does not speak against them.
 */
export function weighFrozen(problem: ProblemData, standing: Plan, frozen: readonly Pin[]): ProblemData {
  const pinned = new Set(frozen.map(({ orderId }) => orderId));
  const ready = new Map<string, number>();
  for (const { orderId, finish } of standing.lots)
    ready.set(orderId, Math.max(finish, ready.get(orderId) ?? finish));
  const unplannedPerWeight = Math.max(problem.objective.unplannedPerWeight, LEAST_PRICE);
  const weight = (2 * (standing.objective.total + 1)) / unplannedPerWeight;
  const jobs = problem.jobs.map((job) =>
    pinned.has(job.orderId)
      ? {
          ...job,
          weight: Math.max(job.weight, weight),
          dueAt: Math.max(job.dueAt, ready.get(job.orderId) ?? job.dueAt),
        }
      : job,
  );
  return { ...problem, jobs, objective: { ...problem.objective, unplannedPerWeight } };
}
