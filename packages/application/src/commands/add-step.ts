import type { PlanStep } from "../ports/step-repository.ts";
import type { Repositories } from "../ports/unit-of-work.ts";

/** A step apart from where it is added. */
export type NextStep = Omit<PlanStep, "revision" | "fromPlanId">;

/** What only a plan that is given out has. */
export const notGivenOut = { note: null, frozenUntil: null } as const;

/** A plan that comes in or is fetched back: undo leads to where the working plan stands now, and nothing is left to do again. */
export function stepOnto(
  here: PlanStep | null,
  step: Pick<PlanStep, "kind" | "planId" | "by" | "at">,
): NextStep {
  return { ...step, undoTo: here?.revision ?? null, redoTo: null, records: null, ...notGivenOut };
}

/**
 * Adds a step after `here`, the newest of the plant in this transaction, with the event that tells of it. Returns the
 * revision after it.
 */
export async function addStep(
  { steps, events }: Pick<Repositories, "steps" | "events">,
  plantId: string,
  here: PlanStep | null,
  next: NextStep,
): Promise<number> {
  const revision = (here?.revision ?? 0) + 1;
  const { planId, at } = next;
  if (!(await steps.append(plantId, { ...next, revision, fromPlanId: here?.planId ?? null })))
    throw new Error(`step ${revision} of plant ${plantId} was not the next one`);
  await events.append(plantId, at, { type: "working-plan-changed", revision, planId });
  return revision;
}
