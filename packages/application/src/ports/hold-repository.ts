import type { Order } from "@formweek/capacity-model";

/** Where a hold is in its life: it takes capacity while it is held, and ends once. */
export type HoldState = "held" | "ordered" | "released" | "expired";

/** Ways to make what was asked for. */
export type OfferKind = "whole" | "split" | "first part" | "extra shift" | "displacing";

/** Capacity promised to a customer until a stated instant. */
export interface StoredHold {
  readonly id: string;
  /** Chosen by who asked, one for each hold that is wanted. */
  readonly key: string;
  /** What was asked for, as text: the same key with another wish is refused. */
  readonly wish: string;
  /** What its run is planned as; due when it was promised. */
  readonly order: Order;
  /** Pieces of the stock that are kept for it. */
  readonly stockPieces: number;
  readonly kind: OfferKind;
  /** Instant, seconds: it runs out then. */
  readonly until: number;
  /** Id of the actor. */
  readonly heldBy: string;
  readonly heldAt: number;
  readonly ending: HoldEnding | null;
}

/** How a hold ended. `orderNumber`: the order that it became, as long as that is in the book. */
export interface HoldEnding {
  readonly state: Exclude<HoldState, "held">;
  /** Id of the actor; null: it ran out. */
  readonly by: string | null;
  readonly at: number;
  readonly orderNumber: string | null;
}

export interface HoldList {
  /** Counts up by one at each change, from 1; 0 for a plant that never had a hold. */
  readonly revision: number;
  /** Those that have not ended, by when they run out. */
  readonly holds: readonly StoredHold[];
}

/** Pieces of the stock that an order of the book was promised with. */
export interface StockShare {
  readonly orderId: string;
  readonly pieces: number;
}

/** Holds of a plant. One list with one revision: two that write it at once do not both succeed. */
export interface HoldRepository {
  readonly list: (plantId: string) => Promise<HoldList>;
  /** Newest first, at most `limit`. */
  readonly ended: (plantId: string, limit: number) => Promise<readonly StoredHold[]>;
  readonly get: (plantId: string, holdId: string) => Promise<StoredHold | null>;
  readonly withKey: (plantId: string, key: string) => Promise<StoredHold | null>;
  /** Stock that orders of the book still have from the holds that they were. */
  readonly stockShares: (plantId: string) => Promise<readonly StockShare[]>;
  /** Plants with holds that ran out by an instant, each once. */
  readonly plantsWithExpired: (at: number) => Promise<readonly string[]>;
  /** Returns the new revision; null when the list is not at `expectedRevision` any more, and nothing is written. */
  readonly insert: (plantId: string, hold: StoredHold, expectedRevision: number) => Promise<number | null>;
  /** Ends holds, with revisions as in `insert`. */
  readonly end: (
    plantId: string,
    ending: { readonly holdIds: readonly string[]; readonly ending: HoldEnding },
    expectedRevision: number,
  ) => Promise<number | null>;
}
