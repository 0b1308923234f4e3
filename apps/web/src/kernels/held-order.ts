import type { Hold, HoldListResponse, PinListResponse, PinnedOrder } from "@formweek/contracts";
import type { BoardPlan } from "./board-plan.ts";

/** Pins by order number. */
export type HeldOrders = ReadonlyMap<string, PinnedOrder>;

export function heldOrders(list: PinListResponse | undefined): HeldOrders {
  return new Map(list?.pins.map((pin) => [pin.orderId, pin]));
}

/** Holds for customers by what their runs are called in the plan. */
export type PromisedOrders = ReadonlyMap<string, Hold>;

/** Those that take hours now; what became an order is the planner's like any other. */
export function promisedOrders(list: HoldListResponse | undefined): PromisedOrders {
  return new Map(list?.holds.flatMap((hold) => (hold.state === "held" ? [[hold.orderId, hold]] : [])));
}

/** Where a lot of an order runs in the plan. */
export interface PlannedPlace {
  readonly lineId: string;
  /** ISO 8601; null for a later lot of the order: a pin's start is that of the first. */
  readonly start: string | null;
}

/** Place of one lot of an order, of its first lot when none is named; null when the plan does not have it. */
export function plannedPlace(plan: BoardPlan, orderId: string, lot: number | null): PlannedPlace | null {
  const wanted = lot ?? 0;
  const found = plan.document.lots.find((each) => each.orderId === orderId && each.lot === wanted);
  return found === undefined ? null : { lineId: found.lineId, start: wanted === 0 ? found.start : null };
}

/** True when the plan has the order where the pin holds it: every lot on its line, the first at its start. */
export function isKept(plan: BoardPlan, { orderId, lineId, start }: PinnedOrder): boolean {
  const lots = plan.document.lots.filter((lot) => lot.orderId === orderId);
  return (
    lots.length > 0 &&
    lots.every(
      (lot) =>
        (lineId === null || lot.lineId === lineId) && (start === null || lot.lot > 0 || lot.start === start),
    )
  );
}
