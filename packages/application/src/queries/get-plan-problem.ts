import type { ProblemData } from "@formweek/scheduler";
import { planNotFound, plantNotFound } from "../not-found.ts";
import { assembleForPlan } from "../planning/assemble-for-plan.ts";
import { frozenPinsIn, withPins } from "../planning/frozen-pins.ts";
import { frozenPlanOf } from "../planning/frozen-plan.ts";
import { planningSnapshot } from "../planning/planning-snapshot.ts";
import { ok, refused } from "../result.ts";
import type { PlantInput, UseCase } from "../use-case.ts";

/** The engine's problem behind a plan. */
export interface PlanProblem {
  /** The inputs are what they were when the plan was made. */
  readonly sameInputs: boolean;
  /** What is frozen is pinned in it. */
  readonly problem: ProblemData;
  readonly frozenOrderIds: readonly string[];
}

/** The problem in which a plan is worked on by hand: the inputs as they are now over the plan's horizon. */
export const getPlanProblem: UseCase<PlantInput & { readonly planId: string }, PlanProblem> = {
  role: "viewer",
  run: async (ports, { plantId, planId }) => {
    const { plan, snapshot, frozen } = await ports.store.read(async (repositories) => ({
      plan: await repositories.plans.get(plantId, planId),
      snapshot: await planningSnapshot(repositories, plantId),
      frozen: await frozenPlanOf(repositories, plantId),
    }));
    if (snapshot === null) return refused(plantNotFound(plantId));
    if (plan === null) return refused(planNotFound(planId));
    const assembled = assembleForPlan(snapshot, plan.document);
    if (!assembled.ok) return assembled;
    const { inputHash, problem } = assembled.value;
    const pins = frozen === null ? [] : frozenPinsIn(problem, frozen, plan.document);
    return ok({
      sameInputs: inputHash === plan.document.inputHash,
      problem: withPins(problem, pins),
      frozenOrderIds: pins.map(({ orderId }) => orderId),
    });
  },
};
