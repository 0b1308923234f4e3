import { z } from "zod";
import { ExistingInstant, Id, InstantText, Pieces, Revision } from "../scalars.ts";
import { OfferKind, PromiseEnquiry } from "./promises.ts";

const Words = z
  .string()
  .trim()
  .min(1)
  .max(120)
  .refine((text) => !text.includes("\0"), "must be readable text");

/** Where a hold is in its life; it ends once. */
export const HoldState = z
  .enum(["held", "ordered", "released", "expired"])
  .describe(
    "held: takes capacity; ordered: became an order of the book; released: given back; expired: ran out",
  )
  .meta({ id: "HoldState" });
export type HoldState = z.infer<typeof HoldState>;

/** Capacity that was promised to a customer until a stated instant. */
export const Hold = z
  .object({
    holdId: Id,
    orderId: Id.describe("What its run is called in plans; the order's number once it became one"),
    state: HoldState,
    customer: z.string(),
    productId: Id,
    productName: z.string(),
    pieces: Pieces,
    kind: OfferKind.describe("Offer that was chosen"),
    promised: InstantText.describe("What the customer was told: ready for dispatch"),
    until: InstantText.describe("It runs out then, unless it became an order"),
    heldBy: z.string(),
    heldAt: InstantText,
    endedBy: z.string().nullable().describe("null while it is held, and where it ran out"),
    endedAt: InstantText.nullable(),
    finish: InstantText.nullable().describe(
      "By the working plan; null: from stock, or without a place in it",
    ),
    keepsPromise: z
      .boolean()
      .nullable()
      .describe("The working plan finishes it in time; null once it has ended"),
  })
  .meta({ id: "Hold" });
export type Hold = z.infer<typeof Hold>;

/** `GET …/holds`: those that take capacity, by when they run out; then the last 50 that have ended, newest first. */
export const HoldListResponse = z
  .object({
    revision: Revision.describe("Counts up by one with every change of a hold"),
    holds: z.array(Hold),
  })
  .meta({ id: "HoldListResponse" });
export type HoldListResponse = z.infer<typeof HoldListResponse>;

/**
 * `POST …/holds`: takes the capacity of an offer for everyone. It is worked out again: where it cannot be kept any more, the answer is
 * 409 `promise-moved` (its `offer` says what can be promised now) or `offer-gone`, and nothing is held. The same key again
 * answers with the same hold.
 *
 * @example {
 *   "key": "4f0c7c1e-9a1b-4a51-9a55-0d6f0f7f3a11",
 *   "enquiry": { "product": "T95-0500 white", "pieces": 40000, "wanted": "2026-12-04", "partsAllowed": true },
 *   "offer": { "kind": "whole", "promised": "2026-12-03T14:20:00Z" },
 *   "customer": "A customer", "until": "2026-12-01T16:00:00Z"
 * }
 */
export const HoldRequest = z
  .object({
    key: z
      .string()
      .regex(/^[\w-]{8,64}$/, "must be 8 to 64 letters, digits, - or _")
      .describe("Chosen by the client, one for each hold that is wanted: a UUID does well"),
    enquiry: PromiseEnquiry,
    offer: z.object({
      kind: OfferKind,
      promised: ExistingInstant.describe("As it was offered, or later: what the customer was told"),
    }),
    customer: Words,
    until: ExistingInstant.describe("Not past, and at most 30 days ahead"),
  })
  .meta({ id: "HoldRequest" });
export type HoldRequest = z.infer<typeof HoldRequest>;

/** `POST …/holds/{holdId}/release`: gives the capacity back; again answers the same. */
export const HoldChanged = z
  .object({
    revision: Revision.describe("Revision of the list of holds"),
    hold: Hold,
  })
  .meta({ id: "HoldChanged" });
export type HoldChanged = z.infer<typeof HoldChanged>;

/**
 * `POST …/holds/{holdId}/order`: the hold becomes an order of the book, due when it was promised; its run stays where it is.
 *
 * @example { "orderNumber": "A-20418", "customer": "A customer", "revision": 12 }
 */
export const OrderHoldRequest = z
  .object({
    orderNumber: z.string().trim().min(1).max(64).describe("Number of the new order"),
    customer: Words.nullable().default(null).describe("null: as in the hold"),
    revision: Revision.describe("Revision of the order book that this was decided on"),
  })
  .meta({ id: "OrderHoldRequest" });
export type OrderHoldRequest = z.infer<typeof OrderHoldRequest>;

export const OrderHoldResponse = z
  .object({
    revision: Revision.describe("Revision of the order book after the write"),
    hold: Hold,
  })
  .meta({ id: "OrderHoldResponse" });
export type OrderHoldResponse = z.infer<typeof OrderHoldResponse>;
