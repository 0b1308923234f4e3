import { planNotFound } from "../not-found.ts";
import type { StoredPlan } from "../ports/plan-repository.ts";
import { ok, refused } from "../result.ts";
import type { PlantInput, UseCase } from "../use-case.ts";
import { workingPlanOf } from "./working-plan-of.ts";

/** One plan whole; `planId` null asks for the one that is worked on. */
export const getPlan: UseCase<PlantInput & { readonly planId: string | null }, StoredPlan> = {
  role: "viewer",
  run: async (ports, { plantId, planId }) => {
    const plan = await ports.store.read((repositories) =>
      planId === null ? workingPlanOf(repositories, plantId) : repositories.plans.get(plantId, planId),
    );
    return plan === null ? refused(planNotFound(planId)) : ok(plan);
  },
};
