import type { Plan } from "../plan/plan.ts";
import type { ProblemData } from "../problem/problem-data.ts";
import type { SolveParams } from "../solve-env.ts";
import { criteriaOf, favouring } from "./criteria.ts";

/** One solve of a trade-off run. */
export interface TradeOffRun {
  readonly problem: ProblemData;
  /** The budget of this solve, without the plan that it goes on from. */
  readonly params: SolveParams;
  /** Index of the run, an earlier one, whose plan it goes on from; null: none. */
  readonly from: number | null;
}

/** What the other criteria still count while one is favoured, step by step. */
const SHARES = [0.4, 0.1] as const;

/**
 * The solves of a trade-off run: the problem as it is, then, for each criterion, the others lowered more and more, each solve
 * from the plan of the one before. The budget is shared out equally.
 */
export function tradeOffRuns(problem: ProblemData, params: SolveParams): readonly TradeOffRun[] {
  const criteria = criteriaOf(problem);
  const count = criteria.length < 2 ? 1 : 1 + criteria.length * SHARES.length;
  const own: SolveParams = {
    ...params,
    maxSteps: params.maxSteps === null ? null : Math.floor(params.maxSteps / count),
    maxMs: params.maxMs === null ? null : params.maxMs / count,
  };
  const runs: TradeOffRun[] = [{ problem, params: own, from: null }];
  if (count === 1) return runs;
  for (const criterion of criteria) {
    SHARES.forEach((share, step) => {
      const objective = favouring(problem.objective, criterion, share);
      runs.push({ problem: { ...problem, objective }, params: own, from: step === 0 ? 0 : runs.length - 1 });
    });
  }
  return runs;
}

/** The budget of a run with the plan that it goes on from; `done` are the plans of the runs before it. */
export function startingParams(run: TradeOffRun, done: readonly { readonly plan: Plan }[]): SolveParams {
  const before = run.from === null ? undefined : done[run.from];
  return before === undefined ? run.params : { ...run.params, startFrom: before.plan };
}
