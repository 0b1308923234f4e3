import { applyHours, inverseHours } from "../planning/apply-hours.ts";
import type { HoursEdit } from "../planning/plan-edit.ts";
import type { Adopted } from "../ports/scenario-repository.ts";
import { type StepRecords, inverseRecords } from "../scenarios/record-changes.ts";
import { writeAdopted } from "../scenarios/write-adopted.ts";
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
 * Goes back to the plan before the last step that was not taken back yet, byte for byte: plans never change. What
 * the step changed in plant and orders goes back with it.
 */
export const undoStep: UseCase<StepInput, StepTaken> = {
  role: "planner",
  run: (ports, input, actor) =>
    takeStep(ports, input, actor, async (here, repositories) => {
      const { plantId } = input;
      const before = here.undoTo === null ? null : await repositories.steps.get(plantId, here.undoTo);
      if (before === null) return refused(await reasonOf(repositories, plantId, here));
      const change = here.records === null ? null : { records: takenBack(here.records), adopted: null };
      const changed = await writeRecords(ports, repositories, plantId, change);
      if (!changed.ok) return changed;
      const { planId, undoTo, records } = before;
      return ok({ kind: "undo", planId, undoTo, redoTo: here.revision, records, ...notGivenOut });
    }),
};

/** Goes forward again to the plan that the last undo left, with what it had changed in plant and orders. */
export const redoStep: UseCase<StepInput, StepTaken> = {
  role: "planner",
  run: (ports, input, actor) =>
    takeStep(ports, input, actor, async (here, repositories) => {
      const { plantId } = input;
      const undone = here.redoTo === null ? null : await repositories.steps.get(plantId, here.redoTo);
      if (undone === null) return refused(nothingToRedo);
      const adopted = { by: actor.id, at: ports.clock.now() };
      const change = undone.records === null ? null : { records: undone.records, adopted };
      const changed = await writeRecords(ports, repositories, plantId, change);
      if (!changed.ok) return changed;
      const { planId, undoTo, redoTo, records } = undone;
      return ok({ kind: "redo", planId, undoTo, redoTo, records, ...notGivenOut });
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

const takenBack = (records: StepRecords): StepRecords =>
  records.kind === "adopt" ? inverseRecords(records) : inverseHours(records);

interface RecordsToWrite {
  readonly records: StepRecords;
  /** How a scenario stands after it; null: its changes were taken back. */
  readonly adopted: Adopted | null;
}

/** Writes what a step changes besides the plan, in the caller's transaction. */
async function writeRecords(
  ports: Pick<Ports, "clock">,
  repositories: Repositories,
  plantId: string,
  change: RecordsToWrite | null,
): Promise<Result<null>> {
  if (change === null) return ok(null);
  const { records, adopted } = change;
  return records.kind === "adopt"
    ? writeAdopted(ports, repositories, { plantId, records, adopted })
    : writeHours(ports, repositories, plantId, records);
}

/** Writes the plant with the change; nothing where its hours are so already. */
async function writeHours(
  ports: Pick<Ports, "clock">,
  repositories: Repositories,
  plantId: string,
  edit: HoursEdit,
): Promise<Result<null>> {
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
