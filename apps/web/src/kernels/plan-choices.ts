import type { Publication, WorkingPlanResponse, WorkingPlanStep } from "@formweek/contracts";

/** A plan that can be looked at beside another, named by what is most telling of it. */
export type PlanChoice =
  | { readonly kind: "working"; readonly planId: string; readonly isPublished: boolean }
  | {
      readonly kind: "published";
      readonly planId: string;
      readonly publication: Publication;
      /** Nothing was given out after it. */
      readonly isNewest: boolean;
    }
  | { readonly kind: "step"; readonly planId: string; readonly step: WorkingPlanStep };

export interface KnownPlans {
  readonly working: WorkingPlanResponse;
  /** Newest first. */
  readonly publications: readonly Publication[];
  /** Newest first. */
  readonly steps: readonly WorkingPlanStep[];
}

/** Every plan once: the one that is worked on, those that were given out, then those that steps led to; newest first. */
export function planChoices({ working, publications, steps }: KnownPlans): readonly PlanChoice[] {
  const choices = new Map<string, PlanChoice>();
  const add = (choice: PlanChoice): void => {
    if (!choices.has(choice.planId)) choices.set(choice.planId, choice);
  };
  const { planId, publishedPlanId } = working;
  if (planId !== null) add({ kind: "working", planId, isPublished: planId === publishedPlanId });
  publications.forEach((publication, index) =>
    add({ kind: "published", planId: publication.planId, publication, isNewest: index === 0 }),
  );
  for (const step of steps) add({ kind: "step", planId: step.planId, step });
  return [...choices.values()];
}

/** What is looked at first: the working plan beside what was given out last, or where that is the same, beside the plan before. */
export function firstPair(
  choices: readonly PlanChoice[],
): readonly [fromId: string | null, toId: string | null] {
  const working = choices.find(({ kind }) => kind === "working")?.planId ?? null;
  const other = choices.find(({ planId }) => planId !== working)?.planId ?? null;
  return [other, working];
}
