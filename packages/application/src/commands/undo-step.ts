import { ok, refused } from "../result.ts";
import type { UseCase } from "../use-case.ts";
import { nothingToRedo, nothingToUndo } from "./step-refusals.ts";
import { type StepInput, type StepTaken, takeStep } from "./take-step.ts";

/** Goes back to the plan before the last step that was not taken back yet: byte for byte, plans never change. */
export const undoStep: UseCase<StepInput, StepTaken> = {
  role: "planner",
  run: (ports, input, actor) =>
    takeStep(ports, input, actor, async (here, { steps }) => {
      const before = here.undoTo === null ? null : await steps.get(input.plantId, here.undoTo);
      if (before === null) return refused(nothingToUndo);
      const { planId, undoTo } = before;
      return ok({ kind: "undo", planId, undoTo, redoTo: here.revision, note: null });
    }),
};

/** Goes forward again to the plan that the last undo left. */
export const redoStep: UseCase<StepInput, StepTaken> = {
  role: "planner",
  run: (ports, input, actor) =>
    takeStep(ports, input, actor, async (here, { steps }) => {
      const undone = here.redoTo === null ? null : await steps.get(input.plantId, here.redoTo);
      if (undone === null) return refused(nothingToRedo);
      const { planId, undoTo, redoTo } = undone;
      return ok({ kind: "redo", planId, undoTo, redoTo, note: null });
    }),
};
