import { plantNotFound } from "../not-found.ts";
import type { ListedStep } from "../ports/step-repository.ts";
import { ok, refused } from "../result.ts";
import type { PlantInput, UseCase } from "../use-case.ts";

/** Steps of one page. */
const PAGE = 50;

export interface StepsInput extends PlantInput {
  /** Only steps below this revision. */
  readonly before: number;
}

/** Steps of the working plan before a revision, newest first, a page of them. */
export const listSteps: UseCase<StepsInput, readonly ListedStep[]> = {
  role: "viewer",
  run: (ports, { plantId, before }) =>
    ports.store.read(async ({ plants, steps }) =>
      (await plants.get(plantId)) === null
        ? refused(plantNotFound(plantId))
        : ok(await steps.before(plantId, before, PAGE)),
    ),
};
