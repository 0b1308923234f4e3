import type { Order } from "@formweek/capacity-model";

export interface OrderBook {
  /** Revision of the whole book; 0 for a book that was never written. */
  readonly revision: number;
  /** By due instant, then id. */
  readonly orders: readonly Order[];
}

/** Changes to a book; an id in both lists is a bug. */
export interface OrderBookChange {
  readonly put: readonly Order[];
  readonly removeIds: readonly string[];
}

export interface OrderRepository {
  /** The plant's book; empty with revision 0 when there is none. */
  readonly book: (plantId: string) => Promise<OrderBook>;
  /**
   * Applies the change if the book still has `expectedRevision` and returns the new revision; null when it has not, and
   * nothing is written. Locks the book until the transaction ends, so two changes never interleave. 50,000 orders at once are fine.
   */
  readonly apply: (
    plantId: string,
    change: OrderBookChange,
    expectedRevision: number,
  ) => Promise<number | null>;
}
