import type { PlanEdit } from "@formweek/contracts";
import { openEdits, type EditRefusal } from "@formweek/scheduler";
import type { Trial } from "../kernels/trial.ts";
import { planOfDocument } from "./plan-of-document.ts";
import { trialWriter, type TrialGround } from "./trial-plan.ts";

/** Says what edits of the standing plan would come to, without changing it. */
export interface TrialTable {
  readonly planId: string;
  readonly tryOut: (edit: PlanEdit) => Trial;
}

/** Opens the engine's table for a standing plan; null where plan and problem do not belong together. */
export function openTable(ground: TrialGround): TrialTable | null {
  const { standing, problem, frozenOrderIds } = ground;
  const opened = openEdits(problem, planOfDocument(standing.document));
  if (!opened.ok) return null;
  const table = opened.value;
  const write = trialWriter(ground, table.plan);
  const frozen = new Set(frozenOrderIds);
  return {
    planId: standing.planId,
    tryOut: (edit) => {
      const result = table.apply(edit);
      return result.ok ? { kind: "plan", plan: write(result.value) } : refusedTrial(result.error, frozen);
    },
  };
}

function refusedTrial(refusal: EditRefusal, frozen: ReadonlySet<string>): Trial {
  const { orderId, otherOrderId } = refusal;
  const isFrozen = frozen.has(orderId) || (otherOrderId !== null && frozen.has(otherOrderId));
  return { kind: "refused", refusal, isFrozen };
}
