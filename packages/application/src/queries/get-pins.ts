import { ordersToMake } from "@formweek/capacity-model";
import { plantNotFound } from "../not-found.ts";
import { plannedRecords, sharesOf } from "../planning/planning-snapshot.ts";
import type { StoredPin } from "../ports/pin-repository.ts";
import { ok, refused } from "../result.ts";
import type { PlantInput, UseCase } from "../use-case.ts";

/** A pin, and why it holds nothing at present; null where it does hold. */
export type ListedPin = StoredPin & { readonly idle: "covered by stock" | null };

export interface ListedPins {
  readonly revision: number;
  readonly pins: readonly ListedPin[];
}

/** The orders that are held, by order number. */
export const getPins: UseCase<PlantInput, ListedPins> = {
  role: "viewer",
  run: (ports, { plantId }) =>
    ports.store.read(async ({ plants, orders, pins, holds }) => {
      const stored = await plants.get(plantId);
      if (stored === null) return refused(plantNotFound(plantId));
      const held = await pins.list(plantId);
      if (held.pins.length === 0) return ok({ revision: held.revision, pins: [] });
      const planned = await plannedRecords({ orders, pins, holds }, plantId);
      const toMake = ordersToMake(planned.orders, stored.plant.products, sharesOf(planned));
      const idle = new Set<string>(
        toMake.filter(({ grossPieces }) => grossPieces === 0).map(({ orderId }) => orderId),
      );
      return ok({
        revision: held.revision,
        pins: held.pins.map((pin) => ({ ...pin, idle: idle.has(pin.orderId) ? "covered by stock" : null })),
      });
    }),
};
