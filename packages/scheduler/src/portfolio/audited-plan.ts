import { auditing } from "../audit/audit-plan.ts";
import { whyUnplanned } from "../explain/why-unplanned.ts";
import { buildPlan } from "../plan/build-plan.ts";
import type { Plan } from "../plan/plan.ts";
import type { CompiledProblem } from "../problem/compiled-problem.ts";
import type { Violation } from "../result.ts";
import { Decoder } from "../timing/decoder.ts";
import type { Sequences } from "../timing/sequences.ts";
import type { Work } from "../work/work.ts";

/** A plan and what the audit says of it. */
export interface AuditedPlan {
  readonly plan: Plan;
  readonly violations: readonly Violation[];
}

/** The plan of sequences, with stretches, reasons and breakdown. */
export function* planning(problem: CompiledProblem, sequences: Sequences): Work<Plan> {
  const decoder = new Decoder(problem, true);
  decoder.decode(sequences);
  yield;
  const unplanned = whyUnplanned(decoder);
  yield;
  return buildPlan(problem, decoder, unplanned);
}

/** The plan of sequences, audited. */
export function* auditedPlanning(problem: CompiledProblem, sequences: Sequences): Work<AuditedPlan> {
  const plan = yield* planning(problem, sequences);
  yield;
  return { plan, violations: yield* auditing(problem.data, plan) };
}
