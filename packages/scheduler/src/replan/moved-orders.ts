import type { Plan, PlannedLot } from "../plan/plan.ts";

/** What became of one order between two plans. Null: it has no run there. */
export interface MovedOrder {
  readonly orderId: string;
  readonly from: { readonly lineId: string; readonly startAt: number } | null;
  readonly to: { readonly lineId: string; readonly startAt: number } | null;
  readonly changesLine: boolean;
  /** s by which its first start comes later; negative: earlier; 0 where one of the plans does not make it */
  readonly laterBySeconds: number;
}

type Place = NonNullable<MovedOrder["from"]>;

function firstPlaces(lots: readonly PlannedLot[]): ReadonlyMap<string, Place> {
  const places = new Map<string, Place>();
  for (const { orderId, lineId, start } of lots) {
    const known = places.get(orderId);
    if (known === undefined || start < known.startAt) places.set(orderId, { lineId, startAt: start });
  }
  return places;
}

/** Orders whose first run changes line, or start by more than a tolerance (s), or which only one of the plans makes; by order id. */
export function movedOrders(before: Plan, after: Plan, tolerance: number): readonly MovedOrder[] {
  const old = firstPlaces(before.lots);
  const now = firstPlaces(after.lots);
  return [...new Set([...old.keys(), ...now.keys()])]
    .sort((a, b) => (a < b ? -1 : 1))
    .flatMap((orderId): MovedOrder[] => {
      const from = old.get(orderId) ?? null;
      const to = now.get(orderId) ?? null;
      const changesLine = from !== null && to !== null && from.lineId !== to.lineId;
      const laterBySeconds = from === null || to === null ? 0 : to.startAt - from.startAt;
      const isMoved = from === null || to === null || changesLine || Math.abs(laterBySeconds) > tolerance;
      return isMoved ? [{ orderId, from, to, changesLine, laterBySeconds }] : [];
    });
}
