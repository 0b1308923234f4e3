import { z } from "zod";
import { UnplannedReason } from "../plan-cause.ts";
import { OrderState } from "../plan-document.ts";
import { ExistingInstant, Id, InstantText, Pieces, ReadableId, ReadableText, Revision } from "../scalars.ts";

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
    reasons: z.array(UnplannedReason).describe("Why it is not planned, most telling first; empty otherwise"),
  })
  .meta({ id: "BookedOrder" });
export type BookedOrder = z.infer<typeof BookedOrder>;

/** The order book, by due instant then order number. */
export const OrderBookResponse = z.object({
  revision: Revision,
  planInputs: z
    .enum(["same", "changed"])
    .nullable()
    .describe(
      "Whether plant, orders and held orders are those that the working plan was made from; null without a plan",
    ),
  orders: z.array(BookedOrder),
});
export type OrderBookResponse = z.infer<typeof OrderBookResponse>;

/** An order's own fields. The ranges are the plant's to check: what is out of them is answered field by field. */
export const OrderTerms = z
  .object({
    id: ReadableId.describe("Order number"),
    customer: ReadableText,
    productId: Id,
    pieces: z.number().describe("Whole pieces, 1 to 1,000,000,000"),
    dueAt: ExistingInstant.describe("Latest instant at which the goods must be ready for dispatch"),
    earliestStartAt: ExistingInstant.nullable().describe(
      "Nothing runs for it before; null: as soon as wanted",
    ),
    weight: z.number().describe("How much an hour late counts, 0 to 1000; 1 is usual"),
    kind: z.string().describe("firm or forecast"),
    underTolerance: z.number().describe("Share that may be missing, 0 to 1"),
    overTolerance: z.number().describe("Share that may be too much, 0 to 1"),
    partsAllowed: z.boolean().describe("May be delivered in parts"),
  })
  .meta({ id: "OrderTerms" });
export type OrderTerms = z.infer<typeof OrderTerms>;

export const OrderChange = z
  .object({
    before: OrderTerms.nullable().describe("The order as it was seen; null: there was none"),
    after: OrderTerms.nullable().describe("The order as it is to be; null: it is removed"),
  })
  .meta({ id: "OrderChange" });
export type OrderChange = z.infer<typeof OrderChange>;

/** Where someone works on an order book, such as a browser: its steps are its own to take back. */
export const Desk = Id.describe("Where the book is worked on; its steps are its own to take back");

const stepKind = z.enum(["change", "undo", "redo"]);
const stepNumber = z.int().min(1);
const stepOf = stepNumber
  .nullable()
  .describe("Number of the step that is taken back or done again; null for a change");

/** How changes are kept, so that they can be taken back after a reload too. */
export const ChangeAsStep = z
  .object({ desk: Desk, kind: stepKind, of: stepOf })
  .refine(({ kind, of }) => (kind === "change") === (of === null), {
    path: ["of"],
    message: "must name a step for undo and redo, and none for a change",
  })
  .meta({ id: "ChangeAsStep" });
export type ChangeAsStep = z.infer<typeof ChangeAsStep>;

/** Changes of orders by hand, all or none. The same changes with before and after exchanged take them back. */
export const ChangeOrdersRequest = z
  .object({
    changes: z.array(OrderChange).max(20_000),
    step: ChangeAsStep.exactOptional().describe("Absent: the change is not kept for taking it back"),
  })
  .refine(({ changes, step }) => changes.length > 0 || (step !== undefined && step.kind !== "change"), {
    path: ["changes"],
    message: "must hold a change; only an undo or redo that is left to others' versions may be empty",
  })
  .meta({ id: "ChangeOrdersRequest" });
export type ChangeOrdersRequest = z.infer<typeof ChangeOrdersRequest>;

export const OrderBookRevision = z.object({
  revision: Revision.describe("Revision of the order book after the write"),
  step: stepNumber.nullable().describe("Number of the step that was kept; null: none was"),
});
export type OrderBookRevision = z.infer<typeof OrderBookRevision>;

/** Something done to an order book at one desk. */
export const BookStep = z
  .object({ number: stepNumber, kind: stepKind, of: stepOf, changes: z.array(OrderChange), at: InstantText })
  .meta({ id: "BookStep" });
export type BookStep = z.infer<typeof BookStep>;

export const BookStepsQuery = z.object({ desk: Desk });

/** What was done at a desk, oldest first; as many of the newest steps as hold 20,000 changes. */
export const BookStepsResponse = z.array(BookStep);
export type BookStepsResponse = z.infer<typeof BookStepsResponse>;
