import { z } from "zod";
import { Id } from "./scalars.ts";

const Seconds = z.int().min(0);

/** The two sides of a fit check, apart from words. */
export const Compared = z
  .union([
    z.object({ needed: z.number(), has: z.number(), unit: z.string() }),
    z.object({
      needed: z.string().describe("A name; an id for an approval"),
      has: z.array(z.string()).readonly().describe("What there is, the same way"),
    }),
  ])
  .meta({ id: "Compared" });
export type Compared = z.infer<typeof Compared>;

/** What stands against planning an order, apart from words. */
export const UnplannedCause = z
  .discriminatedUnion("kind", [
    z.object({ kind: z.literal("no line") }),
    z.object({ kind: z.literal("does not fit"), mouldId: Id, check: z.string(), compared: Compared }),
    z.object({ kind: z.literal("no mould copy"), mouldId: Id }),
    z.object({ kind: z.literal("line open too short"), runSeconds: Seconds, leftSeconds: Seconds }),
    z.object({ kind: z.literal("operators too short"), runSeconds: Seconds, leftSeconds: Seconds }),
    z.object({ kind: z.literal("setters too short"), workSeconds: Seconds }),
    z.object({ kind: z.literal("longer than horizon"), runSeconds: Seconds, horizonSeconds: Seconds }),
    z.object({ kind: z.literal("ends after horizon"), runSeconds: Seconds }),
    z.object({ kind: z.literal("starts after horizon") }),
    z.object({ kind: z.literal("no time left"), runSeconds: Seconds, leftSeconds: Seconds }),
    z.object({
      kind: z.literal("starts too late"),
      bySeconds: Seconds,
      where: z.enum(["pinned", "alone", "behind others"]),
    }),
    z.object({ kind: z.literal("pinned too early"), bySeconds: Seconds }),
    z.object({ kind: z.literal("pinned to closed time") }),
    z.object({ kind: z.literal("pinned start taken") }),
    z.object({ kind: z.literal("pinned to other line") }),
    z.object({ kind: z.literal("sheet never arrives"), sheetId: z.string(), kg: z.number() }),
    z.object({ kind: z.literal("sheet used up"), sheetId: z.string() }),
    z.object({ kind: z.literal("taken out") }),
  ])
  .meta({ id: "UnplannedCause" });
export type UnplannedCause = z.infer<typeof UnplannedCause>;

/** One reason why an order is left out. */
export const UnplannedReason = z
  .object({
    code: z.string(),
    lineId: Id.nullable().describe("Null: holds for every line"),
    text: z.string(),
    cause: UnplannedCause.exactOptional().describe(
      "The same apart from words; absent where only the words are known, and in older plans",
    ),
  })
  .meta({ id: "UnplannedReason" });
export type UnplannedReason = z.infer<typeof UnplannedReason>;

/** What happened in a link of the chain that holds a late order, apart from words. */
export const LateCause = z
  .discriminatedUnion("kind", [
    z.object({ kind: z.literal("conditioning"), orderId: Id }),
    z.object({
      kind: z.literal("run"),
      lineId: Id,
      orderId: Id,
      lot: z.int().min(0),
      workSeconds: Seconds.describe("In which pieces are formed; the rest is stops"),
      closedSeconds: Seconds,
      operatorSeconds: Seconds,
      warmUpSeconds: Seconds,
    }),
    z.object({
      kind: z.literal("change"),
      lineId: Id,
      mouldId: Id.nullable().describe("Mould that is set up"),
      sheetId: Id.nullable().describe("Sheet that is set up"),
      teamId: Id.nullable(),
      workSeconds: Seconds.describe("Work of the change in the link; the rest is closed time"),
    }),
    z.object({
      kind: z.literal("mould service"),
      mouldId: z.string(),
      lineId: Id,
      orderId: Id,
      lot: z.int().min(0),
    }),
    z.object({ kind: z.literal("carrying"), mouldId: Id, copy: z.int(), lineId: Id }),
    z.object({ kind: z.literal("line closed"), lineId: Id }),
    z.object({ kind: z.literal("no operators"), lineId: Id }),
    z.object({ kind: z.literal("setters off"), lineId: Id, teamId: Id.nullable() }),
    z.object({ kind: z.literal("other work first"), lineId: Id }),
  ])
  .meta({ id: "LateCause" });
export type LateCause = z.infer<typeof LateCause>;

/** What nothing in the plan could have moved, apart from words. */
export const LateRoot = z
  .discriminatedUnion("kind", [
    z.object({ kind: z.literal("line free"), lineId: Id }),
    z.object({ kind: z.literal("earliest start"), orderId: Id }),
    z.object({ kind: z.literal("pinned start"), orderId: Id }),
    z.object({ kind: z.literal("sheet arrival"), sheetId: Id }),
    z.object({ kind: z.literal("mould arrives"), lineId: Id }),
    z.object({ kind: z.literal("mould out of service"), mouldId: Id, copy: z.int() }),
  ])
  .meta({ id: "LateRoot" });
export type LateRoot = z.infer<typeof LateRoot>;

/** What a task of a change does. */
export const ChangeTaskKind = z.enum([
  "mould out",
  "mould in",
  "insert out",
  "insert in",
  "stacker tooling",
  "rim tooling",
  "packing format",
  "trim set",
  "splice",
  "sheet width",
  "sheet thickness",
  "polymer",
  "colour",
  "oven re-soak",
  "mould heat-up",
  "first-piece check",
]);
export type ChangeTaskKind = z.infer<typeof ChangeTaskKind>;
