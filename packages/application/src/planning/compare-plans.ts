import type { DocumentLot, OrderState, PlanDocument } from "./plan-document.ts";

/** A lot that two plans run differently; null where a plan does not have it. */
export interface MovedLot {
  readonly orderId: string;
  /** 0-based. */
  readonly lot: number;
  readonly from: DocumentLot | null;
  readonly to: DocumentLot | null;
}

/** An order that two plans finish at different times; ISO 8601 UTC, null where a plan does not finish it. */
export interface ChangedFinish {
  readonly orderId: string;
  readonly from: string | null;
  readonly to: string | null;
}

/** An order that two plans leave in different states; null where a plan does not know it. */
export interface ChangedState {
  readonly orderId: string;
  readonly from: OrderState | null;
  readonly to: OrderState | null;
}

export interface PlanDifference {
  /** Lots on another line, at another time, with other pieces or another set-up, by order, then lot. */
  readonly movedLots: readonly MovedLot[];
  /** By order. */
  readonly changedFinishes: readonly ChangedFinish[];
  /** By order. */
  readonly changedStates: readonly ChangedState[];
}

/** What is different between two plans of a plant. O(lots + orders), apart from sorting. */
export function comparePlans(from: PlanDocument, to: PlanDocument): PlanDifference {
  const orders = pairsOf(from.orders, to.orders, ({ orderId }) => orderId);
  return {
    movedLots: pairsOf(from.lots, to.lots, ({ orderId, lot }) => JSON.stringify([orderId, lot]))
      .filter((pair) => !runsAlike(pair))
      .map(({ either: { orderId, lot }, from, to }) => ({ orderId, lot, from, to }))
      .sort((a, b) => compareText(a.orderId, b.orderId) || a.lot - b.lot),
    changedFinishes: orders
      .map((pair) => ({
        orderId: pair.either.orderId,
        from: pair.from?.finish ?? null,
        to: pair.to?.finish ?? null,
      }))
      .filter((finish) => finish.from !== finish.to)
      .sort(byOrder),
    changedStates: orders
      .map((pair) => ({
        orderId: pair.either.orderId,
        from: pair.from?.state ?? null,
        to: pair.to?.state ?? null,
      }))
      .filter((state) => state.from !== state.to)
      .sort(byOrder),
  };
}

/** What two plans say of one thing; one of them may not have it. */
interface Pair<T> {
  /** The entry of the first plan, or of the second where the first has none. */
  readonly either: T;
  readonly from: T | null;
  readonly to: T | null;
}

function pairsOf<T>(from: readonly T[], to: readonly T[], keyOf: (entry: T) => string): readonly Pair<T>[] {
  const left = new Map(to.map((entry) => [keyOf(entry), entry]));
  const pairs = from.map((entry): Pair<T> => {
    const other = left.get(keyOf(entry)) ?? null;
    left.delete(keyOf(entry));
    return { either: entry, from: entry, to: other };
  });
  return [
    ...pairs,
    ...Array.from(left.values(), (entry): Pair<T> => ({ either: entry, from: null, to: entry })),
  ];
}

function runsAlike({ from, to }: Pair<DocumentLot>): boolean {
  if (from === null || to === null) return false;
  return (["lineId", "setupId", "pieces", "start", "end"] as const).every(
    (field) => from[field] === to[field],
  );
}

const compareText = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);
const byOrder = (a: { readonly orderId: string }, b: { readonly orderId: string }): number =>
  compareText(a.orderId, b.orderId);
