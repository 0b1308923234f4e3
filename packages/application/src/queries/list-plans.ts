import { plantNotFound } from "../not-found.ts";
import type { PlanHead } from "../ports/plan-repository.ts";
import { ok, refused } from "../result.ts";
import type { PlantInput, UseCase } from "../use-case.ts";

/** Plans shown in a list; older ones stay in the store. */
const LONGEST_LIST = 200;

/** Newest plans of a plant, newest first. */
export const listPlans: UseCase<PlantInput, readonly PlanHead[]> = {
  role: "viewer",
  run: (ports, { plantId }) =>
    ports.store.read(async ({ plants, plans }) =>
      (await plants.get(plantId)) === null
        ? refused(plantNotFound(plantId))
        : ok(await plans.list(plantId, LONGEST_LIST)),
    ),
};
