import type { StoredPlan } from "../ports/plan-repository.ts";
import type { Repositories } from "../ports/unit-of-work.ts";

/** The plan that is worked on in a plant; null for a plant that was never planned. */
export async function workingPlanOf(
  { steps, plans }: Pick<Repositories, "steps" | "plans">,
  plantId: string,
): Promise<StoredPlan | null> {
  const here = await steps.newest(plantId);
  return here === null ? null : plans.get(plantId, here.planId);
}
