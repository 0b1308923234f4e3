import { plantNotFound } from "../not-found.ts";
import type { StoredPlant } from "../ports/plant-repository.ts";
import { ok, refused } from "../result.ts";
import type { PlantInput, UseCase } from "../use-case.ts";

/** A plant's records with their revision. */
export const getPlant: UseCase<PlantInput, StoredPlant> = {
  role: "viewer",
  run: async (ports, { plantId }) => {
    const stored = await ports.store.read(({ plants }) => plants.get(plantId));
    return stored === null ? refused(plantNotFound(plantId)) : ok(stored);
  },
};
