import type { Order, Plant } from "@formweek/capacity-model";
import type { Pin } from "@formweek/scheduler";
import type { StoredPin } from "../ports/pin-repository.ts";
import type { Repositories } from "../ports/unit-of-work.ts";

/** What plans are made from, at one instant. */
export interface PlanningSnapshot {
  readonly plant: Plant;
  readonly orders: readonly Order[];
  /** Revision of the book that the orders are of. */
  readonly bookRevision: number;
  readonly pins: readonly Pin[];
}

/** Plant, orders and held orders as they are now; null when the plant is gone. */
export async function planningSnapshot(
  { plants, orders, pins }: Pick<Repositories, "plants" | "orders" | "pins">,
  plantId: string,
): Promise<PlanningSnapshot | null> {
  const stored = await plants.get(plantId);
  if (stored === null) return null;
  const { orders: booked, revision: bookRevision } = await orders.book(plantId);
  const held = (await pins.list(plantId)).pins;
  return { plant: stored.plant, orders: booked, bookRevision, pins: held.map(enginePin) };
}

const enginePin = ({ orderId, lineId, startAt }: StoredPin): Pin => ({
  orderId,
  lineId,
  startAt,
  sequence: null,
});
