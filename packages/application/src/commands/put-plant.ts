import type { Plant } from "@formweek/capacity-model";
import { appError } from "../errors.ts";
import type { Ports } from "../ports/ports.ts";
import type { Repositories } from "../ports/unit-of-work.ts";
import { publishPending } from "../publish-pending.ts";
import { type Result, ok, refused } from "../result.ts";
import type { PlantInput, UseCase } from "../use-case.ts";
import { refusalOfPlant } from "./record-faults.ts";

export interface PutPlantInput extends PlantInput {
  readonly plant: Plant;
  /** Revision that is replaced; null: the plant is new. */
  readonly expectedRevision: number | null;
}

/** Creates a plant, or replaces all its records at once. */
export const putPlant: UseCase<PutPlantInput, { readonly revision: number }> = {
  role: "manager",
  run: async (ports, { plant, expectedRevision }) => {
    const refusal = refusalOfPlant(plant);
    if (refusal !== null) return refused(refusal);
    const written = await ports.store.write((repositories) =>
      writePlant(ports, repositories, plant, expectedRevision),
    );
    if (written.ok) await publishPending(ports);
    return written;
  },
};

/** Writes the plant and its event in the caller's transaction. */
export async function writePlant(
  ports: Pick<Ports, "clock">,
  repositories: Repositories,
  plant: Plant,
  expectedRevision: number | null,
): Promise<Result<{ readonly revision: number }>> {
  const revision = await repositories.plants.put(plant, expectedRevision);
  if (revision === null) return refused(plantChanged);
  await repositories.events.append(plant.id, ports.clock.now(), { type: "plant-changed", revision });
  return ok({ revision });
}

const plantChanged = appError("plant-changed", {
  title: "The plant's data changed in the meantime.",
  cause: "Someone else saved this plant after you looked at it.",
  remedy: "Look at the plant again, then repeat your change.",
});
