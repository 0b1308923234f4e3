import { planNotFound } from "../not-found.ts";
import { ok, refused } from "../result.ts";
import type { UseCase } from "../use-case.ts";
import { notGivenOut } from "./add-step.ts";
import { alreadyWorkedOn, planBeforeHolds } from "./step-refusals.ts";
import { type StepInput, type StepTaken, takeStep } from "./take-step.ts";

export interface RestoreInput extends StepInput {
  readonly planId: string;
}

/** Works on an earlier plan again, as a step that can be taken back. */
export const restorePlan: UseCase<RestoreInput, StepTaken> = {
  role: "planner",
  run: (ports, input, actor) =>
    takeStep(ports, input, actor, async (here, { plans, holds }) => {
      const { plantId, planId } = input;
      if (planId === here.planId) return refused(alreadyWorkedOn);
      const plan = await plans.get(plantId, planId);
      if (plan === null) return refused(planNotFound(planId));
      const known = new Set(plan.document.orders.map(({ orderId }) => orderId));
      const without = (await holds.list(plantId)).holds.filter(({ order }) => !known.has(order.id));
      if (without.length > 0) return refused(planBeforeHolds(without.map(({ order }) => order.id)));
      const step = { kind: "restore", planId, undoTo: here.revision, redoTo: null } as const;
      return ok({ ...step, records: null, ...notGivenOut });
    }),
};
