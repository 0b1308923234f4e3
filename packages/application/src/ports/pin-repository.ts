/** Where an order is held: on a line, at a start (seconds since the epoch), or both; never nowhere. */
export type PinnedPlace =
  | { readonly lineId: string; readonly startAt: number | null }
  | { readonly lineId: null; readonly startAt: number };

/** An order that a planner holds in its place, until it is freed. */
export type StoredPin = PinnedPlace & {
  readonly orderId: string;
  /** Id of the actor. */
  readonly pinnedBy: string;
  /** Instant, seconds. */
  readonly pinnedAt: number;
};

export interface PinList {
  /** Counts up by one at each pin that is put or removed, from 1; 0 for a plant that never had one. */
  readonly revision: number;
  /** By order id. */
  readonly pins: readonly StoredPin[];
}

/**
 * Pins of a plant's orders. A pin goes when its order leaves the book: kept back, it would bind an order that comes again
 * under the same number much later, when nobody remembers it.
 */
export interface PinRepository {
  readonly list: (plantId: string) => Promise<PinList>;
  /**
   * Holds an order of the book, in place of its pin if it has one, if the list still has `expectedRevision`; returns the
   * new revision, null when the list has moved on, and nothing is written.
   */
  readonly put: (plantId: string, pin: StoredPin, expectedRevision: number) => Promise<number | null>;
  /** Takes the order's pin away, with revisions as in `put`. */
  readonly remove: (plantId: string, orderId: string, expectedRevision: number) => Promise<number | null>;
}
