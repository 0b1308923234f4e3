import type { Order } from "@formweek/capacity-model";
import { type AppError, appError } from "../errors.ts";
import { plantNotFound } from "../not-found.ts";
import type { OrderBookChange } from "../ports/order-repository.ts";
import type { Ports } from "../ports/ports.ts";
import type { Repositories } from "../ports/unit-of-work.ts";
import { publishPending } from "../publish-pending.ts";
import { type Result, ok, refused } from "../result.ts";
import type { PlantInput, UseCase } from "../use-case.ts";
import { refusalOfOrders } from "./record-faults.ts";

export interface PutOrdersInput extends PlantInput {
  /** Orders to add, or to put in the place of those with the same number. */
  readonly orders: readonly Order[];
  readonly expectedRevision: number;
}

/** Adds or replaces orders of the book. */
export const putOrders: UseCase<PutOrdersInput, { readonly revision: number }> = {
  role: "planner",
  run: async (ports, { plantId, orders, expectedRevision }) => {
    const change = { put: orders, removeIds: [] };
    const written = await ports.store.write(async (repositories) => {
      const stored = await repositories.plants.get(plantId);
      if (stored === null) return refused(plantNotFound(plantId));
      const refusal = refusalOfOrders(orders, stored.plant);
      if (refusal !== null) return refused(refusal);
      return writeOrders(ports, repositories, { plantId, change, expectedRevision });
    });
    if (written.ok) await publishPending(ports);
    return written;
  },
};

interface OrdersToWrite {
  readonly plantId: string;
  readonly change: OrderBookChange;
  readonly expectedRevision: number;
}

/** Writes a change of the book and its event in the caller's transaction; a change of nothing leaves the revision as it is. */
export async function writeOrders(
  ports: Pick<Ports, "clock">,
  { orders, holds, events }: Repositories,
  { plantId, change, expectedRevision }: OrdersToWrite,
): Promise<Result<{ readonly revision: number }>> {
  if (change.put.length === 0 && change.removeIds.length === 0) {
    const { revision } = await orders.book(plantId);
    return revision === expectedRevision ? ok({ revision }) : refused(importOutdated);
  }
  const taken = await numbersOfHolds(holds, plantId, change);
  if (taken !== null) return refused(taken);
  const revision = await orders.apply(plantId, change, expectedRevision);
  if (revision === null) return refused(importOutdated);
  await events.append(plantId, ports.clock.now(), { type: "orders-changed", revision });
  return ok({ revision });
}

/** An order of the book that went by the number of a hold would be taken for it in every plan. */
async function numbersOfHolds(
  holds: Repositories["holds"],
  plantId: string,
  { put }: OrderBookChange,
): Promise<AppError | null> {
  const held = new Set<string>((await holds.list(plantId)).holds.map(({ order }) => order.id));
  const taken = put.filter(({ id }) => held.has(id));
  if (taken.length === 0) return null;
  const remedy = "Give the order another number, or wait until the hold has ended.";
  return appError(
    "invalid-input",
    {
      title: "An order has the number of a hold.",
      cause: `Capacity is held for a customer as ${taken.map(({ id }) => id).join(", ")}.`,
      remedy,
    },
    taken.map(({ id }) => ({ path: `order ${id}, id`, problem: "is the number of a hold", remedy })),
  );
}

/** The book, or what an import was checked against, is not any more what the caller saw. */
export const importOutdated = appError("order-book-changed", {
  title: "The order book changed in the meantime.",
  cause: "Someone else changed orders after this was checked.",
  remedy: "Check the file again: the new check shows what it would do now.",
});
