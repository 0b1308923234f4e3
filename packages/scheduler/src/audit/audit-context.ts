import type { Plan } from "../plan/plan.ts";
import type { ProblemData } from "../problem/problem-data.ts";
import { lineHistory, type LineStep } from "./line-history.ts";
import { spareHeads, type SpareHeads } from "./operator-profile.ts";
import { planLookUps, type PlanLookUps } from "./plan-look-ups.ts";

/** A sound plan beside its problem, looked up by id and replayed line by line. Every id in the plan is known here. */
export interface AuditContext extends PlanLookUps {
  /** What happens on each line, in order, with what hangs there. Every line has an entry. */
  readonly stepsOfLine: ReadonlyMap<string, readonly LineStep[]>;
  /** Spare heads of each pool over time. */
  readonly spareOfPool: ReadonlyMap<string, readonly SpareHeads[]>;
}

/** Prepares what the rules share. */
export function auditContextOf(problem: ProblemData, plan: Plan): AuditContext {
  const lookUps = planLookUps(problem, plan);
  const steps = problem.lines.map((line) => [line.id, lineHistory(lookUps, line)] as const);
  const spare = problem.pools.map((pool) => [pool.id, spareHeads(lookUps, pool)] as const);
  return { ...lookUps, stepsOfLine: new Map(steps), spareOfPool: new Map(spare) };
}
