import { z } from "zod";

/** Instant on the wire: ISO 8601, UTC, whole seconds, "2026-11-30T05:00:00Z". */
export const InstantText = z
  .string()
  .regex(/^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}:\d{2}Z$/, {
    message: "must be an instant such as 2026-11-30T05:00:00Z",
    abort: true,
  })
  .describe("Instant, ISO 8601, UTC, whole seconds, such as 2026-11-30T05:00:00Z");
export type InstantText = z.infer<typeof InstantText>;

/** An instant that someone sends: of a day that the calendar has. */
export const ExistingInstant = InstantText.refine((text) => {
  const at = Date.parse(text);
  return Number.isFinite(at) && new Date(at).toISOString() === text.replace("Z", ".000Z");
}, "must be a day and time that exist, such as 2026-11-30T05:00:00Z");

/** Identity of a record: 1 to 64 characters. */
export const Id = z.string().min(1).max(64);

/** Text that a database can keep and people can read. */
export const ReadableText = z.string().refine((text) => !text.includes("\0"), "must be readable text");

/** Identity of a record that is looked up in the store or written to it. */
export const ReadableId = Id.refine((text) => !text.includes("\0"), "must be readable text");

/** Counts up by one with every write of a record. */
export const Revision = z.int().min(0).describe("Counts up by one with every write");

/** Whole pieces. */
export const Pieces = z.int().min(0);
