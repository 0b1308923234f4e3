import { auditPlan } from "@formweek/scheduler";
import type { Violation } from "@formweek/scheduler";
import type { Assembled } from "./assembled.ts";
import type { PlanDocument } from "./plan-document.ts";
import { planOfDocument } from "./plan-of-document.ts";

/** Verdict on a plan document against the inputs that it claims to be made from. */
export interface DocumentVerdict {
  /** The document names the same inputs. */
  readonly sameInputs: boolean;
  /** Empty for a valid plan. */
  readonly violations: readonly Violation[];
}

/** Audits a plan document as strictly as a plan fresh from the engine. */
export function auditDocument(document: PlanDocument, assembled: Assembled): DocumentVerdict {
  return {
    sameInputs: document.inputHash === assembled.inputHash,
    violations: auditPlan(assembled.problem, planOfDocument(document, assembled.problem)),
  };
}
