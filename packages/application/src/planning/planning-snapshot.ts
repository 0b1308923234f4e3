import type { Order, Plant } from "@formweek/capacity-model";
import type { Pin } from "@formweek/scheduler";
import type { StockShare } from "../ports/hold-repository.ts";
import type { StoredPin } from "../ports/pin-repository.ts";
import type { Repositories } from "../ports/unit-of-work.ts";

/** What plans are made from, at one instant. */
export interface PlanningSnapshot {
  readonly plant: Plant;
  /** Those of the book, then those that are held for customers. */
  readonly orders: readonly Order[];
  /** Revision of the book that the orders are of. */
  readonly bookRevision: number;
  /** Orders that are held: none of the book's. */
  readonly heldOrderIds: ReadonlySet<string>;
  readonly stockShares: readonly StockShare[];
  readonly pins: readonly Pin[];
}

/** What is planned besides the plant's own records. */
export type PlannedRecords = Omit<PlanningSnapshot, "plant">;

/** Plant, orders, holds and pins as they are now; null when the plant is gone. */
export async function planningSnapshot(
  repositories: Pick<Repositories, "plants" | "orders" | "pins" | "holds">,
  plantId: string,
): Promise<PlanningSnapshot | null> {
  const stored = await repositories.plants.get(plantId);
  return stored === null ? null : { plant: stored.plant, ...(await plannedRecords(repositories, plantId)) };
}

/** The same without the plant, for one that is at hand. */
export async function plannedRecords(
  { orders, pins, holds }: Pick<Repositories, "orders" | "pins" | "holds">,
  plantId: string,
): Promise<PlannedRecords> {
  const { orders: booked, revision: bookRevision } = await orders.book(plantId);
  const held = (await holds.list(plantId)).holds;
  const ordered = await holds.stockShares(plantId);
  const pinned = (await pins.list(plantId)).pins;
  return {
    orders: [...booked, ...heldByNumber(held.map(({ order }) => order))],
    bookRevision,
    heldOrderIds: new Set(held.map(({ order }) => order.id)),
    stockShares: sharesByOrder([
      ...ordered,
      ...held.map(({ order, stockPieces }) => ({ orderId: order.id, pieces: stockPieces })),
    ]),
    pins: pinned.map(enginePin),
  };
}

/** Stock shares by order, as netting asks for them. */
export function sharesOf({ stockShares }: Pick<PlannedRecords, "stockShares">): ReadonlyMap<string, number> {
  return new Map(stockShares.map(({ orderId, pieces }) => [orderId, pieces]));
}

/** Orders that are held, in an order that does not depend on when they were or how long they last. */
export function heldByNumber(held: readonly Order[]): readonly Order[] {
  return [...held].sort((a, b) => (a.id < b.id ? -1 : 1));
}

/** In an order that does not depend on how they came about. */
export function sharesByOrder(shares: readonly StockShare[]): readonly StockShare[] {
  return [...shares].sort((a, b) => (a.orderId < b.orderId ? -1 : 1));
}

const enginePin = ({ orderId, lineId, startAt }: StoredPin): Pin => ({
  orderId,
  lineId,
  startAt,
  sequence: null,
});
