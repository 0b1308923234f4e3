import { plantNotFound } from "../not-found.ts";
import type { PlanStep } from "../ports/step-repository.ts";
import { ok, refused } from "../result.ts";
import type { PlantInput, UseCase } from "../use-case.ts";

/** Publications shown in a list; older ones stay in the store. */
const LONGEST_LIST = 200;

/** Plans that were given out to the plant, newest first. */
export const listPublications: UseCase<PlantInput, readonly PlanStep[]> = {
  role: "viewer",
  run: (ports, { plantId }) =>
    ports.store.read(async ({ plants, steps }) =>
      (await plants.get(plantId)) === null
        ? refused(plantNotFound(plantId))
        : ok(await steps.published(plantId, LONGEST_LIST)),
    ),
};
