import { appError } from "../errors.ts";
import { plantNotFound } from "../not-found.ts";
import { plannedRecords } from "../planning/planning-snapshot.ts";
import { publishPending } from "../publish-pending.ts";
import { ok, refused } from "../result.ts";
import type { PlantInput, UseCase } from "../use-case.ts";
import { checkedPlace } from "./checked-place.ts";

export interface PinOrderInput extends PlantInput {
  readonly orderId: string;
  /** Null: on whichever line. */
  readonly lineId: string | null;
  /** Instant, seconds; null: at whatever start. */
  readonly startAt: number | null;
  /** Revision of the pins that the caller saw. */
  readonly expectedRevision: number;
}

/** Holds an order on a line, at a start, or both, from the next planning run on; replaces its pin if it has one. */
export const pinOrder: UseCase<PinOrderInput, { readonly revision: number }> = {
  role: "planner",
  run: async (ports, { plantId, orderId, lineId, startAt, expectedRevision }, actor) => {
    const now = ports.clock.now();
    const written = await ports.store.write(async ({ plants, orders, pins, holds, events }) => {
      const stored = await plants.get(plantId);
      if (stored === null) return refused(plantNotFound(plantId));
      const planned = await plannedRecords({ orders, pins, holds }, plantId);
      const place = checkedPlace({ orderId, lineId, startAt }, { plant: stored.plant, ...planned, now });
      if (!place.ok) return place;
      const pin = { orderId, ...place.value, pinnedBy: actor.id, pinnedAt: now };
      const revision = await pins.put(plantId, pin, expectedRevision);
      if (revision === null) return refused(pinsChanged);
      await events.append(plantId, now, { type: "pins-changed", revision });
      return ok({ revision });
    });
    if (written.ok) await publishPending(ports);
    return written;
  },
};

/** The pins are not any more what the caller saw. */
export const pinsChanged = appError("pins-changed", {
  title: "The held orders changed in the meantime.",
  cause: "Someone else held or freed an order after you looked.",
  remedy: "Look at the order again, then repeat your change.",
});
