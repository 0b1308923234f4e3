import { type Actor, roleIn } from "../actor.ts";
import type { PlantHead } from "../ports/plant-repository.ts";
import type { Ports } from "../ports/ports.ts";
import { type Result, ok } from "../result.ts";

/** Plants that the actor has a role in, by id; none is an empty list, not a refusal. */
export async function listPlants(ports: Ports, actor: Actor): Promise<Result<readonly PlantHead[]>> {
  const all = await ports.store.read(({ plants }) => plants.list());
  return ok(all.filter((plant) => roleIn(actor, plant.id) !== null));
}
