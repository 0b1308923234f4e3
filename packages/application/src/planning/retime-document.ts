import { ENGINE_VERSION, type Plan, auditPlan, openEdits } from "@formweek/scheduler";
import { planRejected, problemFaulty } from "../jobs/solve-refusals.ts";
import { type Result, ok, refused } from "../result.ts";
import type { Assembled } from "./assembled.ts";
import { describePlan } from "./describe-plan.ts";
import { knownBound } from "./known-bound.ts";
import type { PlanDocument } from "./plan-document.ts";
import { planOfDocument } from "./plan-of-document.ts";

/**
 * The document's plan timed again under the inputs as they are now: every lot keeps its line and its turn on it, what finds
 * no room any more is left out with the reason. Pure.
 */
export function retimedDocument(assembled: Assembled, document: PlanDocument): Result<PlanDocument> {
  const { problem } = assembled;
  const opened = openEdits(problem, planOfDocument(document, problem));
  if (!opened.ok) return refused(problemFaulty(opened.error));
  return auditedDocument(assembled, opened.value.plan, document);
}

/** A plan made by hand from a document, audited and described as a planning run's. Pure. */
export function auditedDocument(
  assembled: Assembled,
  plan: Plan,
  { seed }: Pick<PlanDocument, "seed">,
): Result<PlanDocument> {
  const violations = auditPlan(assembled.problem, plan);
  if (violations.length > 0) return refused(planRejected(violations));
  const origin = { engineVersion: ENGINE_VERSION, seed, steps: 0, bound: knownBound(assembled) };
  return ok(describePlan(assembled, plan, origin));
}
