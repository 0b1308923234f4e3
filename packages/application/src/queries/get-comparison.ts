import { planNotFound } from "../not-found.ts";
import { comparePlans, type PlanDifference } from "../planning/compare-plans.ts";
import type { StoredPlan } from "../ports/plan-repository.ts";
import { ok, refused } from "../result.ts";
import type { PlantInput, UseCase } from "../use-case.ts";

export interface CompareInput extends PlantInput {
  readonly planId: string;
  readonly otherPlanId: string;
}

export interface ComparedPlans {
  readonly from: StoredPlan;
  readonly to: StoredPlan;
  readonly difference: PlanDifference;
}

/** What is different in another plan of the same plant. */
export const getComparison: UseCase<CompareInput, ComparedPlans> = {
  role: "viewer",
  run: async (ports, { plantId, planId, otherPlanId }) => {
    const { from, to } = await ports.store.read(async ({ plans }) => ({
      from: await plans.get(plantId, planId),
      to: await plans.get(plantId, otherPlanId),
    }));
    if (from === null) return refused(planNotFound(planId));
    if (to === null) return refused(planNotFound(otherPlanId));
    return ok({ from, to, difference: comparePlans(from.document, to.document) });
  },
};
