import type { Plan } from "../plan/plan.ts";
import type { ProblemData } from "../problem/problem-data.ts";
import type { Violation } from "../result.ts";
import { auditContextOf, type AuditContext } from "./audit-context.ts";
import { changeCrews } from "./change-crews.ts";
import { changes } from "./changes.ts";
import { coverage } from "./coverage.ts";
import { fit } from "./fit.ts";
import { lineExclusivity, segmentOrder } from "./line-exclusivity.ts";
import { lotSummary } from "./lot-summary.ts";
import { mouldCopies } from "./mould-copies.ts";
import { mouldService } from "./mould-service.ts";
import { objectiveTerms } from "./objective-terms.ts";
import { operators } from "./operators.ts";
import { pins } from "./pins.ts";
import { unknownReferences } from "./plan-references.ts";
import { planShapeFaults } from "./plan-shape.ts";
import { releases } from "./releases.ts";
import { runs } from "./runs.ts";
import { stops } from "./stops.ts";

const rules: readonly ((context: AuditContext) => Violation[])[] = [
  segmentOrder,
  lotSummary,
  objectiveTerms,
  lineExclusivity,
  mouldCopies,
  mouldService,
  changes,
  changeCrews,
  runs,
  stops,
  releases,
  fit,
  operators,
  pins,
  coverage,
];

/** The audit rule by rule: pauses before each, so that whoever drives it may give it up. */
export function* auditing(
  problem: ProblemData,
  plan: Plan,
): Generator<undefined, readonly Violation[], undefined> {
  const malformed = planShapeFaults(plan);
  if (malformed.length > 0) return malformed;
  yield;
  const unknown = unknownReferences(problem, plan);
  if (unknown.length > 0) return unknown;
  yield;
  const context = auditContextOf(problem, plan);
  const found: Violation[] = [];
  for (const rule of rules) {
    yield;
    found.push(...rule(context));
  }
  return found;
}

/**
 * Every rule that a plan breaks; empty: the plan is valid. A second opinion: it shares nothing with the engine but the
 * records and the arithmetic of working time. The problem must be sound; the plan may be anything, be it no plan at all.
 * A plan that is malformed or names unknown ids is judged for that alone.
 */
export function auditPlan(problem: ProblemData, plan: Plan): readonly Violation[] {
  const audit = auditing(problem, plan);
  for (;;) {
    const step = audit.next();
    if (step.done === true) return step.value;
  }
}
