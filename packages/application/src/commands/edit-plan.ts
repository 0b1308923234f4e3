import { planNotFound, plantNotFound } from "../not-found.ts";
import { assembleForPlan } from "../planning/assemble-for-plan.ts";
import { editDocument } from "../planning/edit-document.ts";
import { frozenPlanOf } from "../planning/frozen-plan.ts";
import type { PlanEdit } from "../planning/plan-edit.ts";
import { planningSnapshot } from "../planning/planning-snapshot.ts";
import type { StoredPlan } from "../ports/plan-repository.ts";
import type { Ports } from "../ports/ports.ts";
import { type Result, ok, refused } from "../result.ts";
import type { UseCase } from "../use-case.ts";
import { notGivenOut } from "./add-step.ts";
import { planByHand } from "./plan-by-hand.ts";
import { type StepInput, type StepTaken, standing, takeStep } from "./take-step.ts";

export interface EditInput extends StepInput {
  readonly edit: PlanEdit;
  /** It is said that frozen runs may move. */
  readonly overFrozen: boolean;
}

/**
 * Changes the working plan by hand: a new plan, and a step that can be taken back. A change that leaves everything where
 * it is makes neither; one that would move frozen runs is refused unless it is said that it may.
 */
export const editPlan: UseCase<EditInput, StepTaken> = {
  role: "planner",
  run: async (ports, input, actor) => {
    const edited = await editedPlan(ports, input);
    if (!edited.ok) return edited;
    const { parent, plan } = edited.value;
    if (plan === null) return ok({ revision: input.expectedRevision, planId: parent.id });
    return takeStep(ports, input, actor, async (here, { plans }) => {
      const planId = await plans.insertOnce(plan);
      return ok({ kind: "edit", planId, undoTo: here.revision, redoTo: null, records: null, ...notGivenOut });
    });
  },
};

interface Edited {
  /** The working plan before. */
  readonly parent: StoredPlan;
  /** Null when nothing changes. */
  readonly plan: StoredPlan | null;
}

/** Worked out before anything is written: it takes far longer than a transaction should. */
async function editedPlan(
  ports: Ports,
  { plantId, expectedRevision, edit, overFrozen }: EditInput,
): Promise<Result<Edited>> {
  const known = await ports.store.read(async (repositories) => {
    const here = await standing(repositories, plantId, expectedRevision);
    if (!here.ok) return here;
    const parent = await repositories.plans.get(plantId, here.value.planId);
    if (parent === null) return refused(planNotFound(here.value.planId));
    const snapshot = await planningSnapshot(repositories, plantId);
    if (snapshot === null) return refused(plantNotFound(plantId));
    const frozen = await frozenPlanOf(repositories, plantId);
    return ok({ parent, snapshot, frozen });
  });
  if (!known.ok) return known;
  const { parent, snapshot, frozen } = known.value;
  const assembled = assembleForPlan(snapshot, parent.document);
  if (!assembled.ok) return assembled;
  const document = editDocument(assembled.value, parent.document, { edit, frozen, overFrozen });
  if (!document.ok) return document;
  if (document.value === null) return ok({ parent, plan: null });
  return ok({ parent, plan: planByHand(ports, { parent, edit }, document.value) });
}
