import { applyHours, inverseHours } from "../planning/apply-hours.ts";
import type { HoursEdit } from "../planning/plan-edit.ts";
import type { Ports } from "../ports/ports.ts";
import type { Repositories } from "../ports/unit-of-work.ts";
import type { AppError } from "../errors.ts";
import type { PlanStep } from "../ports/step-repository.ts";
import { plantNotFound } from "../not-found.ts";
import { type Result, ok, refused } from "../result.ts";
import type { UseCase } from "../use-case.ts";
import { notGivenOut } from "./add-step.ts";
import { writePlant } from "./put-plant.ts";
import { refusalOfPlant } from "./record-faults.ts";
import { nothingToRedo, nothingToUndo, nothingToUndoPastHold } from "./step-refusals.ts";
import { type StepInput, type StepTaken, takeStep } from "./take-step.ts";

/**
 * Goes back to the plan before the last step that was not taken back yet, byte for byte: plans never change. Hours of the
 * plant that the step changed go back with it.
 */
export const undoStep: UseCase<StepInput, StepTaken> = {
  role: "planner",
  run: (ports, input, actor) =>
    takeStep(ports, input, actor, async (here, repositories) => {
      const { plantId } = input;
      const before = here.undoTo === null ? null : await repositories.steps.get(plantId, here.undoTo);
      if (before === null) return refused(await reasonOf(repositories, plantId, here));
      const back = here.hours === null ? null : inverseHours(here.hours);
      const changed = await writeHours(ports, repositories, plantId, back);
      if (!changed.ok) return changed;
      const { planId, undoTo, hours } = before;
      return ok({ kind: "undo", planId, undoTo, redoTo: here.revision, hours, ...notGivenOut });
    }),
};

/** Goes forward again to the plan that the last undo left, with the hours that it had changed. */
export const redoStep: UseCase<StepInput, StepTaken> = {
  role: "planner",
  run: (ports, input, actor) =>
    takeStep(ports, input, actor, async (here, repositories) => {
      const { plantId } = input;
      const undone = here.redoTo === null ? null : await repositories.steps.get(plantId, here.redoTo);
      if (undone === null) return refused(nothingToRedo);
      const changed = await writeHours(ports, repositories, plantId, undone.hours);
      if (!changed.ok) return changed;
      const { planId, undoTo, redoTo, hours } = undone;
      return ok({ kind: "redo", planId, undoTo, redoTo, hours, ...notGivenOut });
    }),
};

/** The way back ends at the first step of all, or at the last that changed what is held for customers. */
async function reasonOf(
  { steps }: Pick<Repositories, "steps">,
  plantId: string,
  here: PlanStep,
): Promise<AppError> {
  const held = await steps.newestOf(plantId, "hold");
  const isBehindHold = held !== null && held.planId === here.planId;
  return isBehindHold ? nothingToUndoPastHold : nothingToUndo;
}

/** Writes the plant with the change, in the caller's transaction; nothing where its hours are so already. */
async function writeHours(
  ports: Pick<Ports, "clock">,
  repositories: Repositories,
  plantId: string,
  edit: HoursEdit | null,
): Promise<Result<null>> {
  if (edit === null) return ok(null);
  const stored = await repositories.plants.get(plantId);
  if (stored === null) return refused(plantNotFound(plantId));
  const plant = applyHours(stored.plant, edit);
  if (plant === stored.plant) return ok(null);
  // a line, a team or a pool that the change names may be gone since
  const refusal = refusalOfPlant(plant);
  if (refusal !== null) return refused(refusal);
  const written = await writePlant(ports, repositories, plant, stored.revision);
  return written.ok ? ok(null) : written;
}
