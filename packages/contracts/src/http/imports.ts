import { z } from "zod";
import { FaultCause } from "../fault-cause.ts";
import { UnplannedReason } from "../plan-cause.ts";
import { Id, Revision } from "../scalars.ts";
import { Desk, OrderChange } from "./orders.ts";

export const ImportKind = z.enum(["orders", "plant"]);
export type ImportKind = z.infer<typeof ImportKind>;

export const ImportQuery = z.object({ kind: ImportKind.describe("What the file holds") });
export type ImportQuery = z.infer<typeof ImportQuery>;

/** What is wrong, apart from words. */
export const ImportFaultCode = z.enum([
  "neither-yes-nor-no",
  "no-whole-number",
  "no-count",
  "no-number",
  "thousand-or-fraction",
  "spreadsheet-error",
  "formula-not-computed",
  "control-characters",
  "no-weekdays",
  "no-break",
  "no-heads",
  "no-mould",
  "no-date",
  "day-or-month-first",
  "no-calendar-day",
  "time-unreadable",
  "number-for-date",
  "time-for-day",
  "no-time-of-day",
  "read-as-date",
  "blank",
  "unknown-column",
  "same-column",
  "missing-columns",
  "no-orders-on-sheet",
  "no-plant-data-on-sheet",
  "repeated-order",
  "repeated-record",
  "parent-missing",
  "other-plant",
  "unknown-product",
  "due-before-planning",
]);
export type ImportFaultCode = z.infer<typeof ImportFaultCode>;

/** One bad or doubtful cell, row or file. */
export const ImportFault = z
  .object({
    sheet: z.string(),
    row: z.int().nullable().describe("1-based row of the sheet; null for the whole sheet"),
    column: z.string().nullable().describe("Header of the column; null for the whole row"),
    value: z.string().describe("What stands there; empty for a blank cell"),
    problem: z.string(),
    remedy: z.string(),
    severity: z.enum(["error", "warning"]),
    code: ImportFaultCode.exactOptional().describe("Absent where only the words are known"),
    values: z
      .record(z.string(), z.string())
      .exactOptional()
      .describe("Names and figures in the sentence, by their name"),
    cause: FaultCause.exactOptional().describe("Where there is no code: the same apart from words, if known"),
  })
  .meta({ id: "ImportFault" });
export type ImportFault = z.infer<typeof ImportFault>;

/** Outcome of a dry run. Nothing has changed yet. */
export const ImportReport = z
  .object({
    importId: Id,
    kind: ImportKind,
    plantId: Id.describe(
      "Plant that would change; accept under this one. A plant file may name another or a new one",
    ),
    files: z.array(z.string()),
    rows: z.int().describe("Data rows read"),
    summary: z.object({
      added: z.int(),
      changed: z.int(),
      unchanged: z.int(),
      bad: z.int().describe("Rows with an error: they are left out"),
      cannotBePlanned: z.int(),
    }),
    acceptable: z.boolean().describe("False when nothing can be taken over; the faults say why"),
    faults: z.array(ImportFault),
    cannotBePlanned: z.array(
      z.object({
        orderId: z.string(),
        row: z.int().nullable(),
        reasons: z.array(UnplannedReason.pick({ text: true, cause: true })),
      }),
    ),
    changes: z
      .array(OrderChange)
      .describe("What accepting would do order by order, the first 2,000; empty for plant data"),
    truncated: z.boolean().describe("The lists were cut; the summary counts everything"),
    revision: Revision.describe("Revision that the dry run was made against; send it back to accept"),
  })
  .meta({ id: "ImportReport" });
export type ImportReport = z.infer<typeof ImportReport>;

export const AcceptImportRequest = z.object({
  revision: Revision,
  desk: Desk.exactOptional().describe("Where accepted orders can be taken back; absent: nowhere"),
});
export type AcceptImportRequest = z.infer<typeof AcceptImportRequest>;

export const AcceptImportResponse = z
  .object({
    applied: z.object({ added: z.int(), changed: z.int(), unchanged: z.int() }),
    revision: Revision.describe("Revision after the write"),
    step: z
      .int()
      .nullable()
      .describe(
        "Step of the order book that was kept; null for plant data, without a desk, and past 20,000 orders",
      ),
  })
  .meta({ id: "AcceptImportResponse" });
export type AcceptImportResponse = z.infer<typeof AcceptImportResponse>;
