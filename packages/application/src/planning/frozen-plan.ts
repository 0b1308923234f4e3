import type { Repositories } from "../ports/unit-of-work.ts";
import type { PlanDocument } from "./plan-document.ts";

/** The plan that was given out last, where it keeps runs in place. */
export interface FrozenPlan {
  readonly document: PlanDocument;
  /** Instant, seconds: its runs that start before it are frozen. */
  readonly frozenUntil: number;
  /** Id of who gave it out. */
  readonly by: string;
  /** Instant, seconds. */
  readonly at: number;
}

/** What is frozen in a plant; null where nothing is. */
export async function frozenPlanOf(
  { steps, plans }: Pick<Repositories, "steps" | "plans">,
  plantId: string,
): Promise<FrozenPlan | null> {
  const [published] = await steps.published(plantId, 1);
  if (published === undefined || published.frozenUntil === null) return null;
  const stored = await plans.get(plantId, published.planId);
  if (stored === null) throw new Error(`plan ${published.planId} was given out and is not there`);
  const { frozenUntil, by, at } = published;
  return { document: stored.document, frozenUntil, by, at };
}
