import { plantNotFound } from "../not-found.ts";
import type { ListedStep } from "../ports/step-repository.ts";
import { ok, refused } from "../result.ts";
import type { PlantInput, UseCase } from "../use-case.ts";

/** The plan that is worked on, and how it came about. */
export interface WorkingPlan {
  /** Of the newest step; 0 before the first. */
  readonly revision: number;
  readonly planId: string | null;
  readonly canUndo: boolean;
  readonly canRedo: boolean;
  readonly publishedPlanId: string | null;
  /** Newest first, at most 50. */
  readonly steps: readonly ListedStep[];
}

const LONGEST_LIST = 50;

/** The plan that is worked on in a plant, with its last steps. */
export const getWorkingPlan: UseCase<PlantInput, WorkingPlan> = {
  role: "viewer",
  run: (ports, { plantId }) =>
    ports.store.read(async ({ plants, steps }) => {
      if ((await plants.get(plantId)) === null) return refused(plantNotFound(plantId));
      const listed = await steps.after(plantId, 0, LONGEST_LIST);
      const [published] = await steps.published(plantId, 1);
      const here = listed[0] ?? null;
      return ok({
        revision: here?.revision ?? 0,
        planId: here?.planId ?? null,
        canUndo: (here?.undoTo ?? null) !== null,
        canRedo: (here?.redoTo ?? null) !== null,
        publishedPlanId: published?.planId ?? null,
        steps: listed,
      });
    }),
};
