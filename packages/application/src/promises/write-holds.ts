import { addStep, notGivenOut } from "../commands/add-step.ts";
import { planByHand } from "../commands/plan-by-hand.ts";
import { type AppError } from "../errors.ts";
import type { PlanDocument } from "../planning/plan-document.ts";
import type { HoldChange } from "../planning/plan-edit.ts";
import type { Ports } from "../ports/ports.ts";
import type { PlantRevisions } from "../ports/revision-repository.ts";
import type { Repositories } from "../ports/unit-of-work.ts";
import { publishPending } from "../publish-pending.ts";
import { type Result, refused } from "../result.ts";
import { holdsBusy } from "./promise-refusals.ts";

/** Somebody else wrote in between; the work is to be done again on what is there now. */
export const RACED = "raced";

/** Tries before a write is given up: each is lost only if another one got through. */
const MOST_TRIES = 25;

/** One try: what it comes to, or that it was too late. */
export type Attempt<T> = Result<T, AppError | typeof RACED>;

/** Tries until nobody was faster, a bounded number of times; then tells whoever listens. */
export async function untilFirst<T>(ports: Ports, attempt: () => Promise<Attempt<T>>): Promise<Result<T>> {
  for (let tries = 1; tries <= MOST_TRIES; tries++) {
    const done = await attempt();
    if (done.ok) {
      await publishPending(ports);
      return done;
    }
    if (done.error !== RACED) return refused(done.error);
  }
  return refused(holdsBusy);
}

/** True when a plant's records are at the versions that something was worked out for. */
export async function areStill(
  { revisions }: Pick<Repositories, "revisions">,
  plantId: string,
  seen: PlantRevisions,
): Promise<boolean> {
  const now = await revisions.of(plantId);
  return (
    now !== null &&
    now.plant === seen.plant &&
    now.book === seen.book &&
    now.pins === seen.pins &&
    now.holds === seen.holds &&
    now.step === seen.step
  );
}

/** What makes a new plan of a hold that came or went. */
export interface HoldStep {
  readonly plantId: string;
  /** Plan that was worked on. */
  readonly parentId: string;
  readonly change: HoldChange;
  readonly document: PlanDocument;
  readonly by: string;
}

/** Works on the new plan, as a step that nothing goes back over. In the caller's transaction. */
export async function addHoldStep(
  ports: Pick<Ports, "ids" | "clock">,
  repositories: Repositories,
  { plantId, parentId, change, document, by }: HoldStep,
): Promise<void> {
  const here = await repositories.steps.newest(plantId);
  const parent = { id: parentId, plantId };
  const planId = await repositories.plans.insertOnce(planByHand(ports, { parent, edit: change }, document));
  const step = { kind: "hold", planId, undoTo: null, redoTo: null, records: null, ...notGivenOut } as const;
  await addStep(repositories, plantId, here, { ...step, by, at: ports.clock.now() });
}
