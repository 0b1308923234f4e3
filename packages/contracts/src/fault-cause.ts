import { z } from "zod";
import { Compared } from "./plan-cause.ts";
import { Id, InstantText } from "./scalars.ts";

const Text = z.string();
const Count = z.int();

/** Kinds of records that a fault can name. */
export const RecordKind = z.enum([
  "plant",
  "calendar",
  "line",
  "closure of line",
  "added shift",
  "mould",
  "sheet",
  "product",
  "order",
  "polymer",
  "proven rate",
  "setter team",
  "trolley",
  "operator pool",
  "changeover rules",
]);
export type RecordKind = z.infer<typeof RecordKind>;

/** Why a file could not be read. */
export const FileFaultCode = z.enum([
  "unknown-format",
  "too-large",
  "unpacks-too-large",
  "too-many-rows",
  "too-many-columns",
  "too-many-tables",
  "cell-too-long",
  "wrong-encoding",
  "broken-quotes",
  "broken-file",
  "password-protected",
  "empty-file",
]);
export type FileFaultCode = z.infer<typeof FileFaultCode>;

const pinCauses = [
  z.object({ kind: z.literal("no place named") }),
  z.object({ kind: z.literal("covered by stock") }),
  z.object({ kind: z.literal("no such line"), lineId: Text }),
  z.object({ kind: z.literal("does not fit"), mouldId: Id, check: Text, compared: Compared }),
  z.object({ kind: z.literal("outside window"), from: InstantText, to: InstantText }),
  z.object({ kind: z.literal("before earliest start"), earliest: InstantText }),
  z.object({
    kind: z.literal("closed"),
    next: InstantText.nullable().describe("Next working time in the planning window; null: none is left"),
  }),
] as const;

const recordCauses = [
  z.object({ kind: z.literal("unknown time zone"), zone: Text }),
  z.object({ kind: z.literal("duplicate id"), of: RecordKind, id: Text }),
  z.object({ kind: z.literal("duplicate polymer"), name: Text }),
  z.object({ kind: z.literal("duplicate rate"), lineId: Text, mouldId: Text, productId: Text }),
  z.object({ kind: z.literal("duplicate insert"), insertId: Text }),
  z.object({ kind: z.literal("duplicate mould"), mouldId: Text }),
  z.object({ kind: z.literal("unknown reference"), to: RecordKind, id: Text }),
  z.object({ kind: z.literal("unknown insert"), mouldId: Text, insertId: Text }),
  z.object({ kind: z.literal("no such date"), date: Text }),
  z.object({ kind: z.literal("ends before start"), from: Text, to: Text }),
  z.object({ kind: z.literal("break outside shift"), pause: Text, shift: Text }),
  z.object({ kind: z.literal("mounted in part"), mouldId: Text.nullable().describe("Null: a copy alone") }),
  z.object({
    kind: z.literal("copy beyond copies"),
    place: z.enum(["mounted", "out of service"]),
    copy: Count,
    copies: Count,
  }),
  z.object({ kind: z.literal("cycles beyond copies"), given: Count, copies: Count }),
  z.object({ kind: z.literal("copy mounted twice"), copy: Count, mouldId: Text, otherLineId: Text }),
  z.object({ kind: z.literal("wrong table order"), depthMm: z.number() }),
  z.object({ kind: z.literal("last mould class bounded"), massKg: z.number() }),
  z.object({ kind: z.literal("mould class unbounded") }),
  z.object({ kind: z.literal("wrong mould class order"), massKg: z.number() }),
  z.object({
    kind: z.literal("two changeover sets"),
    lineId: Text.nullable().describe("Null: two sets hold for every line"),
    otherSet: Count,
  }),
  z.object({ kind: z.literal("no changeover rules"), lineId: Text }),
  z.object({ kind: z.literal("start after due") }),
] as const;

const Sized = z.enum(["number", "letters", "entries"]).describe("What is counted");

const valueCauses = [
  z.object({ kind: z.literal("value missing") }),
  z.object({ kind: z.literal("value of wrong kind"), expected: Text }),
  z.object({ kind: z.literal("value too small"), of: Sized, least: z.number(), including: z.boolean() }),
  z.object({ kind: z.literal("value too large"), of: Sized, most: z.number(), including: z.boolean() }),
  z.object({ kind: z.literal("value not listed"), listed: z.array(Text).readonly() }),
  z.object({ kind: z.literal("fields unknown"), fields: z.array(Text).readonly() }),
  z.object({ kind: z.literal("value not allowed") }),
] as const;

/** Times in words are the plant's clock as it is written. */
const hoursCauses = [
  z.object({ kind: z.literal("line closed already"), lineId: Text, from: Text, to: Text, reason: Text }),
  z.object({ kind: z.literal("no such closure") }),
  z.object({ kind: z.literal("shift for nobody") }),
  z.object({ kind: z.literal("named twice"), id: Text }),
  z.object({ kind: z.literal("shift without length"), at: Text }),
  z.object({ kind: z.literal("hour skipped"), at: Text, instead: Text }),
  z.object({ kind: z.literal("line works already"), lineId: Text, from: Text, to: Text }),
  z.object({ kind: z.literal("no such added shift"), name: Text, date: Text }),
  z.object({ kind: z.literal("after plan"), planEnd: Text }),
  z.object({ kind: z.literal("over before plan"), over: Text, planStart: Text }),
] as const;

const stepCauses = [
  z.object({ kind: z.literal("no order named") }),
  z.object({ kind: z.literal("order changed twice") }),
  z.object({ kind: z.literal("order gets another number") }),
  z.object({ kind: z.literal("order gone") }),
  z.object({ kind: z.literal("order there already") }),
  z.object({
    kind: z.literal("order changed meanwhile"),
    field: Text,
    now: Text.nullable(),
    seen: Text.nullable(),
  }),
  z.object({
    kind: z.literal("order frozen"),
    orderId: Text,
    lineId: Text.nullable(),
    at: InstantText,
  }),
  z.object({ kind: z.literal("frozen end outside plan"), from: InstantText, to: InstantText }),
  z.object({ kind: z.literal("order not late"), orderId: Text }),
  z.object({ kind: z.literal("nothing at place"), place: Count }),
  z.object({ kind: z.literal("file unreadable"), code: FileFaultCode }),
] as const;

const scenarioCauses = [
  z.object({ kind: z.literal("changed twice"), first: Count.describe("Place of the other change, from 1") }),
  z.object({ kind: z.literal("too many copies"), mouldId: Text, copies: Count, most: Count }),
  z.object({ kind: z.literal("rate out of range"), least: z.number(), most: z.number() }),
  z.object({ kind: z.literal("mould not on line"), mouldId: Text, lineId: Text }),
  z.object({ kind: z.literal("spell too long"), mostDays: Count }),
  z.object({ kind: z.literal("run frozen"), orderId: Text, lineId: Text, at: InstantText }),
  z.object({ kind: z.literal("order pinned"), orderId: Text }),
  z.object({ kind: z.literal("number taken"), orderId: Text }),
  z.object({ kind: z.literal("order left as it is"), orderId: Text }),
] as const;

/** What is wrong with a value, a record, a file or a change, apart from words. */
export const FaultCause = z
  .discriminatedUnion("kind", [
    ...pinCauses,
    ...recordCauses,
    ...valueCauses,
    ...hoursCauses,
    ...stepCauses,
    ...scenarioCauses,
  ])
  .meta({ id: "FaultCause" });
export type FaultCause = z.infer<typeof FaultCause>;
