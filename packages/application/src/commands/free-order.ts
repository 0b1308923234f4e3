import { pinNotFound, plantNotFound } from "../not-found.ts";
import { publishPending } from "../publish-pending.ts";
import { ok, refused } from "../result.ts";
import type { PlantInput, UseCase } from "../use-case.ts";
import { pinsChanged } from "./pin-order.ts";

export interface FreeOrderInput extends PlantInput {
  readonly orderId: string;
  /** Revision of the pins that the caller saw. */
  readonly expectedRevision: number;
}

/** Takes an order's pin away: the next planning run may put it anywhere. */
export const freeOrder: UseCase<FreeOrderInput, { readonly revision: number }> = {
  role: "planner",
  run: async (ports, { plantId, orderId, expectedRevision }) => {
    const written = await ports.store.write(async ({ plants, pins, events }) => {
      if ((await plants.get(plantId)) === null) return refused(plantNotFound(plantId));
      const held = await pins.list(plantId);
      if (held.revision !== expectedRevision) return refused(pinsChanged);
      if (!held.pins.some((pin) => pin.orderId === orderId)) return refused(pinNotFound(orderId));
      const revision = await pins.remove(plantId, orderId, expectedRevision);
      if (revision === null) return refused(pinsChanged);
      await events.append(plantId, ports.clock.now(), { type: "pins-changed", revision });
      return ok({ revision });
    });
    if (written.ok) await publishPending(ports);
    return written;
  },
};
