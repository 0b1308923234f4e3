import type { Plant } from "@formweek/capacity-model";
import { appError } from "../errors.ts";
import { planNotFound, plantNotFound } from "../not-found.ts";
import { applyHours } from "../planning/apply-hours.ts";
import { assembleForPlan } from "../planning/assemble-for-plan.ts";
import { frozenPinsIn, withPins } from "../planning/frozen-pins.ts";
import { frozenPlanOf } from "../planning/frozen-plan.ts";
import { hoursFaults } from "../planning/hours-faults.ts";
import { instantOfIso } from "../planning/iso-instant.ts";
import type { PlanDocument } from "../planning/plan-document.ts";
import type { HoursEdit } from "../planning/plan-edit.ts";
import { type PlanningSnapshot, planningSnapshot } from "../planning/planning-snapshot.ts";
import { retimedDocument } from "../planning/retime-document.ts";
import type { StoredPlan } from "../ports/plan-repository.ts";
import type { Ports } from "../ports/ports.ts";
import { type Result, ok, refused } from "../result.ts";
import type { UseCase } from "../use-case.ts";
import { notGivenOut } from "./add-step.ts";
import { planByHand } from "./plan-by-hand.ts";
import { writePlant } from "./put-plant.ts";
import { type StepInput, type StepTaken, standing, takeStep } from "./take-step.ts";

export interface HoursInput extends StepInput {
  readonly edit: HoursEdit;
}

/**
 * Closes a line for a spell, adds a shift on a day, or takes either back, and times the working plan again under the new
 * hours: both in one transaction and one step, so that an undo brings both back.
 */
export const changeHours: UseCase<HoursInput, StepTaken> = {
  role: "planner",
  run: async (ports, input, actor) => {
    const changed = await changedHours(ports, input);
    if (!changed.ok) return changed;
    const { plant, revision, plan } = changed.value;
    return takeStep(ports, input, actor, async (here, repositories) => {
      const written = await writePlant(ports, repositories, plant, revision);
      if (!written.ok) return written;
      const planId = await repositories.plans.insertOnce(plan);
      const step = { kind: "edit", planId, undoTo: here.revision, redoTo: null } as const;
      return ok({ ...step, records: input.edit, ...notGivenOut });
    });
  },
};

interface ChangedHours {
  readonly plant: Plant;
  /** Revision of the plant that the plan was timed for. */
  readonly revision: number;
  readonly plan: StoredPlan;
}

/** Worked out before anything is written: it takes far longer than a transaction should. */
async function changedHours(
  ports: Ports,
  { plantId, expectedRevision, edit }: HoursInput,
): Promise<Result<ChangedHours>> {
  const known = await ports.store.read(async (repositories) => {
    const here = await standing(repositories, plantId, expectedRevision);
    if (!here.ok) return here;
    const parent = await repositories.plans.get(plantId, here.value.planId);
    if (parent === null) return refused(planNotFound(here.value.planId));
    const snapshot = await planningSnapshot(repositories, plantId);
    const stored = await repositories.plants.get(plantId);
    if (snapshot === null || stored === null) return refused(plantNotFound(plantId));
    const frozen = await frozenPlanOf(repositories, plantId);
    return ok({ parent, snapshot, revision: stored.revision, frozen });
  });
  if (!known.ok) return known;
  const { parent, snapshot, revision, frozen } = known.value;
  const plant = plantWith(edit, snapshot, parent.document);
  if (!plant.ok) return plant;
  const assembled = assembleForPlan({ ...snapshot, plant: plant.value }, parent.document);
  if (!assembled.ok) return assembled;
  const pins = frozen === null ? [] : frozenPinsIn(assembled.value.problem, frozen, parent.document);
  const held = { ...assembled.value, problem: withPins(assembled.value.problem, pins) };
  const document = retimedDocument(held, parent.document);
  if (!document.ok) return document;
  return ok({ plant: plant.value, revision, plan: planByHand(ports, { parent, edit }, document.value) });
}

/** The plant with the new hours, or everything against them. */
function plantWith(
  edit: HoursEdit,
  { plant }: PlanningSnapshot,
  { horizon }: Pick<PlanDocument, "horizon">,
): Result<Plant> {
  const [start, end] = [instantOfIso(horizon.start), instantOfIso(horizon.end)];
  if (start === null || end === null) throw new Error(`a stored plan runs from "${horizon.start}"`);
  const faults = hoursFaults(edit, { plant, horizon: { start, end } });
  if (faults.length === 0) return ok(applyHours(plant, edit));
  return refused(
    appError(
      "hours-refused",
      {
        title: TITLES[edit.kind],
        cause: faults.map(({ problem }) => problem).join(" "),
        remedy: [...new Set(faults.map(({ remedy }) => remedy))].join(" "),
      },
      faults,
    ),
  );
}

const TITLES: Readonly<Record<HoursEdit["kind"], string>> = {
  "close line": "The line cannot be closed so.",
  "open line": "The line cannot be opened again so.",
  "add shift": "The shift cannot be added so.",
  "take shift back": "The shift cannot be taken back so.",
};
