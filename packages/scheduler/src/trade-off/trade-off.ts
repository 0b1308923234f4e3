import { auditPlan } from "../audit/audit-plan.ts";
import { repriced } from "../plan/breakdown.ts";
import type { Plan } from "../plan/plan.ts";
import type { ProblemData } from "../problem/problem-data.ts";
import type { PlannedResult, SolveRefusal } from "../result.ts";
import { solve } from "../solve.ts";
import type { SolveEnv, SolveParams, SolveProgress } from "../solve-env.ts";
import { criteriaOf, valueOf, type Criterion } from "./criteria.ts";
import { startingParams, tradeOffRuns } from "./trade-off-runs.ts";
import { undominated } from "./undominated.ts";

export type CriterionName = Criterion["name"];

/** One of several plans no one of which beats another. */
export interface TradeOffPlan {
  /** Its breakdown is at the problem's own prices. */
  readonly plan: Plan;
  /** Money by criterion, in the order of `TradeOff.criteria`. */
  readonly values: readonly number[];
  /** Criteria in which no plan of the run is better. */
  readonly leastIn: readonly CriterionName[];
}

export interface TradeOff {
  readonly status: "traded";
  readonly criteria: readonly CriterionName[];
  /** At least one; the cheapest at the problem's own prices first. */
  readonly plans: readonly TradeOffPlan[];
  /** The solve at the problem's own prices: its bound holds for every plan. */
  readonly base: PlannedResult;
  /** Steps of all solves together. */
  readonly steps: number;
}

export type TradeOffResult = TradeOff | SolveRefusal;

/** Judges the results of a trade-off's solves, the one at the problem's own prices first, and keeps the plans that no other beats. */
export function tradeOffOf(
  problem: ProblemData,
  results: readonly [PlannedResult, ...PlannedResult[]],
): TradeOffResult {
  const criteria = criteriaOf(problem);
  const [base] = results;
  const judged = results.map(({ plan: solved }) => {
    const plan: Plan = { ...solved, objective: repriced(solved.objective, problem.objective) };
    return { plan, values: criteria.map((criterion) => valueOf(criterion, plan.objective)) };
  });
  const kept = undominated(judged, ({ values }) => values);
  const violations = kept.flatMap(({ plan }) => auditPlan(problem, plan));
  if (violations.length > 0) return { status: "rejected", violations, statistics: base.statistics };
  const least = criteria.map((_, i) => Math.min(...kept.map(({ values }) => values[i]!)));
  const plans = kept.map(({ plan, values }): TradeOffPlan => {
    const leastIn = criteria.filter((_, i) => values[i] === least[i]).map(({ name }) => name);
    return { plan, values, leastIn };
  });
  plans.sort((a, b) => a.plan.objective.total - b.plan.objective.total);
  const steps = results.reduce((sum, { statistics }) => sum + statistics.steps, 0);
  return { status: "traded", criteria: criteria.map(({ name }) => name), plans, base, steps };
}

/**
 * Several audited plans of a problem, no one of which beats another in all criteria that have a price: lateness, changes,
 * labour, earliness, load balance, stability against the published plan, last end. Really solved under prices that favour one criterion after the other, within the budget as a whole. A cancel
 * ends it with the plans so far. Same problem, seed and step budget: the same plans.
 */
export function tradeOff(problem: ProblemData, params: SolveParams, env: SolveEnv): TradeOffResult {
  const runs = tradeOffRuns(problem, params);
  const results: PlannedResult[] = [];
  for (const [index, run] of runs.entries()) {
    if (index > 0 && env.isCancelled()) break;
    const onProgress = (progress: SolveProgress): void =>
      env.onProgress({ ...progress, share: (index + progress.share) / runs.length });
    const result = solve(run.problem, startingParams(run, results), { ...env, onProgress });
    if (result.status === "cancelled" && results.length > 0) break;
    if (result.status !== "planned") return result;
    results.push(result);
  }
  const [base, ...others] = results;
  return tradeOffOf(problem, [base!, ...others]);
}
