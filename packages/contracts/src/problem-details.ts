import { z } from "zod";
import { FaultCause, RecordKind } from "./fault-cause.ts";
import { EditRefusal } from "./plan-edit.ts";
import { Id, InstantText } from "./scalars.ts";

/** Stable codes of failures. */
export const ProblemCode = z.enum([
  "not-found",
  "forbidden",
  "unreadable-file",
  "invalid-input",
  "import-not-acceptable",
  "order-book-changed",
  "pins-changed",
  "plant-changed",
  "solve-in-progress",
  "nothing-to-plan",
  "problem-faulty",
  "plan-rejected",
  "solver-failed",
  "working-plan-changed",
  "edit-refused",
  "hours-refused",
  "frozen-runs",
  "nothing-to-undo",
  "nothing-to-redo",
  "already-working-plan",
  "not-working-plan",
  "order-not-late",
  "findings-outdated",
  "plan-outrun",
  "not-planned-yet",
  "plan-over",
  "plan-does-not-follow",
  "promise-moved",
  "offer-gone",
  "holds-not-planned",
  "hold-ended",
  "hold-key-used",
  "scenario-refused",
  "scenario-changed",
  "scenario-outdated",
  "too-many-scenarios",
  "conflicting-write",
  "invalid-request",
  "malformed-body",
  "body-too-large",
  "unsupported-media-type",
  "too-many-requests",
  "no-such-route",
  "foreign-origin",
  "internal",
]);
export type ProblemCode = z.infer<typeof ProblemCode>;

/** One field or row behind a failure. */
export const FieldFault = z.object({
  path: z.string().describe('Field path ("seconds") or place in a file; empty for the whole input'),
  problem: z.string().describe("What is wrong"),
  remedy: z.string().describe("What to do about it"),
  cause: FaultCause.exactOptional().describe(
    "The same apart from words; absent where only the words are known",
  ),
  record: z
    .object({ kind: RecordKind, name: z.string() })
    .exactOptional()
    .describe("The record of the path, where it leads to one"),
});
export type FieldFault = z.infer<typeof FieldFault>;

/** The one body of every failure: RFC 9457 problem details, served as application/problem+json. */
export const ProblemDetails = z
  .object({
    type: z.string().describe("URI reference of the kind of problem: urn:formweek:problem:<code>"),
    title: z.string().describe("What happened, one sentence"),
    status: z.int().min(400).max(599),
    detail: z.string().describe("Cause and remedy in one text, for readers that know no extra members"),
    instance: z.string().describe("The request's path"),
    code: z.string().describe("Stable code of the failure; of those known, or a newer one"),
    cause: z.string().describe("Why it happened"),
    remedy: z.string().describe("What to do about it"),
    faults: z.array(FieldFault).describe("Fields or rows concerned; empty when none is"),
    edit: EditRefusal.exactOptional().describe("The rule that stands against a change by hand"),
    offer: z
      .object({ kind: z.string(), finish: InstantText, promised: InstantText })
      .exactOptional()
      .describe("What can be promised now, where an offer has moved"),
    nearest: z
      .array(Id)
      .exactOptional()
      .describe("Ids of products that look most like the one that is not known"),
  })
  .meta({ id: "ProblemDetails" });
export type ProblemDetails = z.infer<typeof ProblemDetails>;
