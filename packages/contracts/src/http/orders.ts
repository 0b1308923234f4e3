import { z } from "zod";
import { OrderState } from "../plan-document.ts";
import { Id, InstantText, Pieces, Revision } from "../scalars.ts";

/** An order of the book with what the newest plan says about it. */
export const BookedOrder = z
  .object({
    id: Id.describe("Order number"),
    customer: z.string(),
    productId: Id,
    pieces: Pieces,
    dueAt: InstantText.describe("Latest instant at which the goods must be ready for dispatch"),
    earliestStartAt: InstantText.nullable().describe("Nothing runs for it before; null: as soon as wanted"),
    weight: z.number(),
    kind: z.enum(["firm", "forecast"]),
    underTolerance: z.number().describe("Share that may be missing, 0 to 1"),
    overTolerance: z.number().describe("Share that may be too much, 0 to 1"),
    partsAllowed: z.boolean().describe("May be delivered in parts"),
    state: OrderState.or(z.literal("not planned yet")).describe(
      '"not planned yet": the newest plan does not know this order, or there is no plan',
    ),
    finish: InstantText.nullable().describe("Ready for dispatch by the newest plan"),
    slackSeconds: z.int().nullable().describe("Due minus finish; negative when late"),
    fromStockPieces: Pieces.nullable(),
    toMakePieces: Pieces.nullable(),
    reasons: z.array(z.string()).describe("Why it is not planned; empty otherwise"),
  })
  .meta({ id: "BookedOrder" });
export type BookedOrder = z.infer<typeof BookedOrder>;

/** The order book, by due instant then order number. */
export const OrderBookResponse = z.object({ revision: Revision, orders: z.array(BookedOrder) });
export type OrderBookResponse = z.infer<typeof OrderBookResponse>;
