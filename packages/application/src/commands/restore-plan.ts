import { planNotFound } from "../not-found.ts";
import { ok, refused } from "../result.ts";
import type { UseCase } from "../use-case.ts";
import { notGivenOut } from "./add-step.ts";
import { alreadyWorkedOn } from "./step-refusals.ts";
import { type StepInput, type StepTaken, takeStep } from "./take-step.ts";

export interface RestoreInput extends StepInput {
  readonly planId: string;
}

/** Works on an earlier plan again, as a step that can be taken back. */
export const restorePlan: UseCase<RestoreInput, StepTaken> = {
  role: "planner",
  run: (ports, input, actor) =>
    takeStep(ports, input, actor, async (here, { plans }) => {
      const { plantId, planId } = input;
      if (planId === here.planId) return refused(alreadyWorkedOn);
      if ((await plans.get(plantId, planId)) === null) return refused(planNotFound(planId));
      const step = { kind: "restore", planId, undoTo: here.revision, redoTo: null } as const;
      return ok({ ...step, hours: null, ...notGivenOut });
    }),
};
