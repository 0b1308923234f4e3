import { auditPlan } from "./audit/audit-plan.ts";
import { validate } from "./problem/validate.ts";
import type { ProblemData } from "./problem/problem-data.ts";
import type { SolveResult } from "./result.ts";
import { search } from "./solve.ts";
import type { SolveEnv, SolveParams } from "./solve-env.ts";

/**
 * Plans a problem: faults are named, else the best plan found within the budget is audited and handed out. A plan that the
 * audit refuses never leaves; its violations do. Same problem, seed and step budget (no time budget): the same plan.
 */
export function solve(problem: ProblemData, params: SolveParams, env: SolveEnv): SolveResult {
  const faults = validate(problem);
  if (faults.length > 0) return { status: "faulty-problem", faults };
  const { plan, bound, stopped, statistics } = search(problem, params, env);
  const violations = auditPlan(problem, plan);
  if (violations.length > 0) return { status: "rejected", violations, statistics };
  return { status: "planned", plan, bound, stopped, statistics };
}
