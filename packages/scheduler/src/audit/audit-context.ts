import type { Plan } from "../plan/plan.ts";
import type { ProblemData } from "../problem/problem-data.ts";
import { lineHistory, type LineStep } from "./line-history.ts";
import { planLookUps, type PlanLookUps } from "./plan-look-ups.ts";

/** A sound plan beside its problem, looked up by id and replayed line by line. Every id in the plan is known here. */
export interface AuditContext extends PlanLookUps {
  /** What happens on each line, in order, with what hangs there. Every line has an entry. */
  readonly stepsOfLine: ReadonlyMap<string, readonly LineStep[]>;
}

/** Prepares what the rules share. */
export function auditContextOf(problem: ProblemData, plan: Plan): AuditContext {
  const lookUps = planLookUps(problem, plan);
  const steps = problem.lines.map((line) => [line.id, lineHistory(lookUps, line)] as const);
  return { ...lookUps, stepsOfLine: new Map(steps) };
}
