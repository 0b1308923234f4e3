import { ok, refused } from "../result.ts";
import type { UseCase } from "../use-case.ts";
import { notWorkedOn } from "./step-refusals.ts";
import { type StepInput, type StepTaken, takeStep } from "./take-step.ts";

export interface PublishInput extends StepInput {
  /** The working plan, named so that nobody gives out what they did not look at. */
  readonly planId: string;
  /** What is said to it; may be empty. */
  readonly note: string;
}

/** Gives the working plan out to the plant. A step, but none that undo goes back over: what was given out stays given out. */
export const publishPlan: UseCase<PublishInput, StepTaken> = {
  role: "planner",
  run: (ports, input, actor) =>
    takeStep(ports, input, actor, ({ planId, undoTo, redoTo, hours }) =>
      Promise.resolve(
        planId === input.planId
          ? ok({ kind: "publish", planId, undoTo, redoTo, hours, note: input.note })
          : refused(notWorkedOn),
      ),
    ),
};
