import type { PlanEdit } from "@formweek/contracts";
import { openEdits, type ProblemData } from "@formweek/scheduler";
import type { BoardPlan } from "../kernels/board-plan.ts";
import type { Trial } from "../kernels/trial.ts";
import { planOfDocument } from "./plan-of-document.ts";
import { trialPlan } from "./trial-plan.ts";

/** Says what edits of the standing plan would come to, without changing it. */
export interface TrialTable {
  readonly planId: string;
  readonly tryOut: (edit: PlanEdit) => Trial;
}

/** Opens the engine's table for a standing plan and the problem that it solves; null where the two do not belong together. */
export function openTable(standing: BoardPlan, problem: ProblemData): TrialTable | null {
  const opened = openEdits(problem, planOfDocument(standing.document));
  if (!opened.ok) return null;
  const table = opened.value;
  return {
    planId: standing.planId,
    tryOut: (edit) => {
      const result = table.apply(edit);
      return result.ok
        ? { kind: "plan", plan: trialPlan(standing, result.value, problem) }
        : { kind: "refused", refusal: result.error };
    },
  };
}
