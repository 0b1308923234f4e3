import type { Actor } from "../actor.ts";
import type { AppError } from "../errors.ts";
import { planNotFound, plantNotFound } from "../not-found.ts";
import type { Ports } from "../ports/ports.ts";
import type { ListedStep, PlanStep } from "../ports/step-repository.ts";
import type { Repositories } from "../ports/unit-of-work.ts";
import { publishPending } from "../publish-pending.ts";
import { type Result, ok, refused } from "../result.ts";
import type { PlantInput } from "../use-case.ts";
import { type NextStep, addStep } from "./add-step.ts";
import { workingPlanChanged } from "./step-refusals.ts";

export interface StepInput extends PlantInput {
  /** Revision of the working plan that the caller saw. */
  readonly expectedRevision: number;
}

/** Where the working plan stands after a step. */
export interface StepTaken {
  readonly revision: number;
  readonly planId: string;
}

/** A step as a person chooses it; who and when are added. */
export type ChosenStep = Omit<NextStep, "by" | "at">;

/** Steps by others that a refusal names. */
const MOST_NAMED = 3;

/** Takes the step that `choose` makes of where the working plan stands, if that is still what the caller saw. */
export async function takeStep(
  ports: Ports,
  { plantId, expectedRevision }: StepInput,
  actor: Actor,
  choose: (here: PlanStep, repositories: Repositories) => Promise<Result<ChosenStep>>,
): Promise<Result<StepTaken>> {
  const written = await ports.store.write<StepTaken, AppError>(async (repositories) => {
    const here = await standing(repositories, plantId, expectedRevision);
    if (!here.ok) return here;
    const chosen = await choose(here.value, repositories);
    if (!chosen.ok) return chosen;
    const next = { ...chosen.value, by: actor.id, at: ports.clock.now() };
    const revision = await addStep(repositories, plantId, here.value, next);
    return ok({ revision, planId: next.planId });
  });
  if (written.ok) await publishPending(ports);
  return written;
}

/** The newest step, if it is the expected one. */
export async function standing(
  { plants, steps }: Pick<Repositories, "plants" | "steps">,
  plantId: string,
  expectedRevision: number,
): Promise<Result<PlanStep>> {
  if ((await plants.get(plantId)) === null) return refused(plantNotFound(plantId));
  const here = await steps.newest(plantId);
  if (here === null) return refused(planNotFound(null));
  if (here.revision === expectedRevision) return ok(here);
  const since: readonly ListedStep[] = await steps.after(plantId, expectedRevision, MOST_NAMED);
  return refused(workingPlanChanged(since, { expectedRevision, revision: here.revision }));
}
