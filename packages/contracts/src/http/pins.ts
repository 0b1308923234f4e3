import { z } from "zod";
import { ExistingInstant, Id, InstantText, Revision } from "../scalars.ts";

/** An order that a planner holds on a line, at a start, or both: every planning run keeps it there. */
export const PinnedOrder = z
  .object({
    orderId: Id,
    lineId: Id.nullable().describe("null: on whichever line"),
    start: InstantText.nullable().describe("Start of its first lot; null: whenever"),
    pinnedBy: z.string(),
    pinnedAt: InstantText,
    idle: z
      .enum(["covered by stock"])
      .nullable()
      .describe("Why the pin holds nothing at present; null where it does hold"),
  })
  .meta({ id: "PinnedOrder" });
export type PinnedOrder = z.infer<typeof PinnedOrder>;

/** The orders that are held, by order number. */
export const PinListResponse = z
  .object({
    revision: Revision.describe("Counts up by one with every pin; send it back with a change"),
    pins: z.array(PinnedOrder),
  })
  .meta({ id: "PinListResponse" });
export type PinListResponse = z.infer<typeof PinListResponse>;

/** Where an order is to be held; at least one of line and start is named. */
export const PinRequest = z
  .object({
    lineId: Id.nullable(),
    start: ExistingInstant.nullable(),
    revision: Revision.describe("Revision of the list of pins that this was decided on"),
  })
  .meta({ id: "PinRequest" });
export type PinRequest = z.infer<typeof PinRequest>;

export const FreeQuery = z.object({
  revision: z.coerce.number().int().min(0).describe("Revision of the list of pins that this was decided on"),
});

export const PinsRevision = z.object({ revision: Revision.describe("Revision of the list after the write") });
export type PinsRevision = z.infer<typeof PinsRevision>;
