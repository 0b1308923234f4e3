import type { Plan } from "../plan/plan.ts";
import type { ProblemData } from "../problem/problem-data.ts";
import type { ProblemEdit } from "./problem-edit.ts";

/** What a plan comes to in the figures that a remedy is judged by. */
export interface PlanEffect {
  readonly total: number;
  readonly lateOrders: number;
  readonly unplannedOrders: number;
  /** Σ seconds late over all orders. */
  readonly lateSeconds: number;
  /** Finish of the order in question; null when it is not planned. */
  readonly finishAt: number | null;
}

/** One edit, really solved. */
export interface Remedy {
  readonly edit: ProblemEdit;
  readonly before: PlanEffect;
  readonly after: PlanEffect;
  /** Money that the plan's cost falls by; what the edit itself costs is not in it unless it has a price (overtime). */
  readonly saves: number;
  /** The problem with the edit, that the plan is of. */
  readonly problem: ProblemData;
  readonly plan: Plan;
}

/** An edit with the plan that the changed problem got. */
export interface TriedEdit {
  readonly edit: ProblemEdit;
  readonly problem: ProblemData;
  readonly plan: Plan;
}

/** Money below which two plans cost the same. */
const LEAST_SAVING = 1e-6;

function effectOf(problem: ProblemData, plan: Plan, orderId: string): PlanEffect {
  const dueOf = new Map(problem.jobs.map((job) => [job.orderId, job.dueAt]));
  const finishOf = new Map<string, number>();
  for (const lot of plan.lots)
    finishOf.set(lot.orderId, Math.max(lot.finish, finishOf.get(lot.orderId) ?? lot.finish));
  let lateOrders = 0;
  let lateSeconds = 0;
  for (const [id, finish] of finishOf) {
    const late = finish - (dueOf.get(id) ?? finish);
    if (late <= 0) continue;
    lateOrders++;
    lateSeconds += late;
  }
  return {
    total: plan.objective.total,
    lateOrders,
    unplannedOrders: plan.unplanned.length,
    lateSeconds,
    finishAt: finishOf.get(orderId) ?? null,
  };
}

/** The cheapest plan first, then the sooner finish of the order. */
function byEffect(a: Remedy, b: Remedy): number {
  const finish = (remedy: Remedy): number => remedy.after.finishAt ?? Infinity;
  return a.after.total - b.after.total || (finish(a) === finish(b) ? 0 : finish(a) - finish(b));
}

/**
 * The edits that help one order, or the whole plan, ranked by the cost of the plan that came of each. `base` is the plan of
 * the problem as it is, given the same search as the tried ones, so that no edit is praised for what more search alone would
 * have found.
 */
export function rankRemedies(
  problem: ProblemData,
  base: Plan,
  orderId: string,
  tried: readonly TriedEdit[],
): readonly Remedy[] {
  const before = effectOf(problem, base, orderId);
  const remedies = tried.flatMap(({ edit, problem: changed, plan }): Remedy[] => {
    const after = effectOf(changed, plan, orderId);
    const sooner = (after.finishAt ?? Infinity) < (before.finishAt ?? Infinity);
    const helps = after.total < before.total - LEAST_SAVING || sooner;
    return helps ? [{ edit, before, after, saves: before.total - after.total, problem: changed, plan }] : [];
  });
  return remedies.sort(byEffect);
}
