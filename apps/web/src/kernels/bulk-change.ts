import type { OrderChange, OrderTerms } from "@formweek/contracts";
import { isSameOrder } from "./order-terms.ts";
import { secondsOf } from "./board-plan.ts";
import { daysLater, wireText } from "./wall-text.ts";
import type { ZoneClock } from "./zone-clock.ts";

/** One change that is made to many orders. Instants as on the wire. */
export type BulkChange =
  | { readonly kind: "due shifted"; readonly days: number }
  | { readonly kind: "due set"; readonly at: string }
  | { readonly kind: "earliest shifted"; readonly days: number }
  | { readonly kind: "earliest set"; readonly at: string | null }
  | { readonly kind: "weight set"; readonly weight: number }
  | { readonly kind: "kind set"; readonly value: "firm" | "forecast" }
  | { readonly kind: "parts set"; readonly isAllowed: boolean }
  | { readonly kind: "removed" };

/** What a change comes to for each of the orders; those that are so already are left out. */
export function bulkChanges(
  orders: readonly OrderTerms[],
  change: BulkChange,
  clock: ZoneClock,
): readonly OrderChange[] {
  return orders
    .map((order) => ({ before: order, after: changed(order, change, clock) }))
    .filter(({ before, after }) => !isSameOrder(before, after));
}

function changed(order: OrderTerms, change: BulkChange, clock: ZoneClock): OrderTerms | null {
  switch (change.kind) {
    case "due shifted":
      return { ...order, dueAt: wireText(daysLater(clock, secondsOf(order.dueAt), change.days)) };
    case "due set":
      return { ...order, dueAt: change.at };
    case "earliest shifted":
      return order.earliestStartAt === null
        ? order
        : {
            ...order,
            earliestStartAt: wireText(daysLater(clock, secondsOf(order.earliestStartAt), change.days)),
          };
    case "earliest set":
      return { ...order, earliestStartAt: change.at };
    case "weight set":
      return { ...order, weight: change.weight };
    case "kind set":
      return { ...order, kind: change.value };
    case "parts set":
      return { ...order, partsAllowed: change.isAllowed };
    case "removed":
      return null;
  }
}
