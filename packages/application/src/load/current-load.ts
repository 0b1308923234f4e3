import { plantNotFound } from "../not-found.ts";
import { planWindow } from "../planning/plan-window.ts";
import type { Ports } from "../ports/ports.ts";
import type { UnitOfWork } from "../ports/unit-of-work.ts";
import { type Result, ok, refused } from "../result.ts";
import { workingPlanOf } from "../queries/working-plan-of.ts";
import { plantLoad, type PlantLoad } from "./plant-load.ts";
import { plantWays, type PlantWays } from "./product-ways.ts";

/** A plant's load with the plan that it rests on; null: the plant was never planned. */
export interface CurrentLoad {
  readonly load: PlantLoad;
  readonly planId: string | null;
}

/** The newest load that was worked out; a screen asks for several views of it at once. */
interface Kept {
  readonly plantKey: string;
  readonly ways: PlantWays;
  readonly loadKey: string;
  readonly load: PlantLoad;
}
const kept = new WeakMap<UnitOfWork, Kept>();

/** Load of a plant by its records, book and working plan as they are now. */
export async function currentLoad(
  { store, clock }: Pick<Ports, "store" | "clock">,
  plantId: string,
): Promise<Result<CurrentLoad>> {
  const read = await store.read(async (repositories) => {
    const stored = await repositories.plants.get(plantId);
    if (stored === null) return null;
    const book = await repositories.orders.book(plantId);
    return { stored, book, plan: await workingPlanOf(repositories, plantId) };
  });
  if (read === null) return refused(plantNotFound(plantId));
  const { stored, book, plan } = read;
  const now = clock.now();
  const plantKey = JSON.stringify([plantId, stored.revision]);
  const start = planWindow(stored.plant, now).start;
  const loadKey = JSON.stringify([plantKey, book.revision, plan?.id ?? null, start]);
  const known = kept.get(store);
  const planId = plan?.id ?? null;
  if (known?.loadKey === loadKey) return ok({ load: known.load, planId });
  const ways = known?.plantKey === plantKey ? known.ways : plantWays(stored.plant);
  const document = plan?.document ?? null;
  const load = plantLoad({ plant: stored.plant, orders: book.orders, document, now, ways });
  kept.set(store, { plantKey, ways, loadKey, load });
  return ok({ load, planId });
}
