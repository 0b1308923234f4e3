import type { Order } from "@formweek/capacity-model";
import { appError } from "../errors.ts";
import { sameRecord } from "../import/same-record.ts";
import { plantNotFound } from "../not-found.ts";
import { publishPending } from "../publish-pending.ts";
import type { BookStep } from "../ports/book-step-repository.ts";
import { ok, refused } from "../result.ts";
import type { PlantInput, UseCase } from "../use-case.ts";
import { conflictsWith } from "./order-conflicts.ts";
import { type OrderChange, checkedChanges } from "./order-changes.ts";
import { writeOrders } from "./put-orders.ts";
import { refusalOfOrders } from "./record-faults.ts";

export interface ChangeOrdersInput extends PlantInput {
  /** All are made or none is. */
  readonly changes: readonly OrderChange[];
  /** How the change is kept for taking it back; null: it is not. */
  readonly step: Pick<BookStep, "desk" | "kind" | "of"> | null;
}

export interface ChangedOrders {
  /** Revision of the book after the write. */
  readonly revision: number;
  /** Number of the step that was kept; null: none was. */
  readonly step: number | null;
}

/**
 * Changes, adds and removes orders by hand. Each change says what the planner saw: where an order of the book is another
 * by now, nothing is written, and the refusal names both versions. Taking a change back is the same change turned round.
 */
export const changeOrders: UseCase<ChangeOrdersInput, ChangedOrders> = {
  role: "planner",
  run: async (ports, { plantId, changes, step }, actor) => {
    const written = await ports.store.write(async (repositories) => {
      const stored = await repositories.plants.get(plantId);
      if (stored === null) return refused(plantNotFound(plantId));
      const checked = checkedChanges(changes);
      if (!checked.ok) return checked;
      const { put, removeIds } = checked.value;
      const refusal =
        refusalOfOrders(put, stored.plant) ?? heldRefusal(removeIds, await repositories.pins.list(plantId));
      if (refusal !== null) return refused(refusal);
      const { revision, orders } = await repositories.orders.book(plantId);
      const book = new Map<string, Order>(orders.map((order) => [order.id, order]));
      const conflict = conflictsWith(book, changes, stored.plant.timeZone);
      if (conflict !== null) return refused(conflict);
      const change = { put: put.filter((order) => !sameRecord(book.get(order.id), order)), removeIds };
      const written = await writeOrders(ports, repositories, { plantId, change, expectedRevision: revision });
      if (!written.ok) return written;
      const kept = step && { ...step, changes, by: actor.id, at: ports.clock.now() };
      const number = kept && (await repositories.bookSteps.append(plantId, kept));
      return ok({ ...written.value, step: number });
    });
    if (written.ok) await publishPending(ports);
    return written;
  },
};

/** A pin of an order that is gone would stop every planning run. */
export function heldRefusal(
  removeIds: readonly string[],
  { pins }: { readonly pins: readonly { readonly orderId: string }[] },
) {
  const gone = new Set(removeIds);
  const held = pins.filter(({ orderId }) => gone.has(orderId));
  if (held.length === 0) return null;
  const remedy = "Free it on the board first, then remove it.";
  return appError(
    "invalid-input",
    {
      title: "An order that is held cannot be removed.",
      cause: `Held on a line or at a start: ${held.map(({ orderId }) => orderId).join(", ")}.`,
      remedy,
    },
    held.map(({ orderId }) => ({ path: `order ${orderId}`, problem: "is held on the board", remedy })),
  );
}
