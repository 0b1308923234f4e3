import { isKnownTimeZone } from "../calendar/time-zone.ts";
import { dateFaults } from "./date-faults.ts";
import { duplicateFaults, repeatsIn } from "./duplicate-faults.ts";
import { mountingFaults } from "./mounting-faults.ts";
import type { Order } from "./order.ts";
import { examined, faultIn } from "./plant-fault.ts";
import type { PlantFault } from "./plant-fault.ts";
import type { Plant } from "./plant.ts";
import { referenceFaults } from "./reference-faults.ts";
import { rulesFaults } from "./rules-faults.ts";

/**
 * Everything wrong between the records of a plant, each of which is well formed by itself; all of it, in a fixed order, never
 * just the first. Empty: the plant can be planned with.
 */
export function plantFaults(plant: Plant): readonly PlantFault[] {
  return [
    ...zoneFaults(plant),
    ...duplicateFaults(plant),
    ...referenceFaults(plant),
    ...dateFaults(plant),
    ...mountingFaults(plant),
    ...rulesFaults(plant),
  ];
}

/** Everything wrong with an order book against its plant: numbers used twice, unknown products, starts after the due date. */
export function orderFaults(orders: readonly Order[], plant: Plant): readonly PlantFault[] {
  const repeats = new Set(repeatsIn(orders.map(({ id }) => id)));
  const products = new Set<string>(plant.products.map(({ id }) => id));
  return orders.flatMap((order, index) => {
    const from = examined([index], "order", order.id);
    const faults: PlantFault[] = [];
    if (repeats.has(index)) {
      faults.push(
        faultIn(from, {
          said: { kind: "duplicate id", of: "order", id: order.id },
          field: ["id"],
          value: order.id,
          cause: `Another order has the number ${order.id} too.`,
          remedy: "Give each order a number of its own, or delete one of the two.",
        }),
      );
    }
    if (!products.has(order.productId)) {
      faults.push(
        faultIn(from, {
          said: { kind: "unknown reference", to: "product", id: order.productId },
          field: ["productId"],
          value: order.productId,
          cause: `There is no product ${order.productId} in this plant.`,
          remedy: "Correct the product, or add it to the plant first.",
        }),
      );
    }
    if (order.earliestStartAt !== null && order.earliestStartAt > order.dueAt) {
      faults.push(
        faultIn(from, {
          said: { kind: "start after due" },
          field: ["earliestStartAt"],
          value: order.earliestStartAt,
          cause: "It may only start after it is due.",
          remedy: "Let it start earlier, or move the due date.",
        }),
      );
    }
    return faults;
  });
}

function zoneFaults(plant: Plant): readonly PlantFault[] {
  if (isKnownTimeZone(plant.timeZone)) return [];
  return [
    faultIn(examined([], "plant", plant.id), {
      said: { kind: "unknown time zone", zone: plant.timeZone },
      field: ["timeZone"],
      value: plant.timeZone,
      cause: `${plant.timeZone} is no time zone of the IANA list.`,
      remedy: "Give the zone by region and city, such as Europe/Berlin.",
    }),
  ];
}
