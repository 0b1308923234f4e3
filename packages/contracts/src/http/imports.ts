import { z } from "zod";
import { Id, Revision } from "../scalars.ts";
import { OrderChange } from "./orders.ts";

export const ImportKind = z.enum(["orders", "plant"]);
export type ImportKind = z.infer<typeof ImportKind>;

export const ImportQuery = z.object({ kind: ImportKind.describe("What the file holds") });
export type ImportQuery = z.infer<typeof ImportQuery>;

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
      z.object({ orderId: z.string(), row: z.int().nullable(), reasons: z.array(z.string()) }),
    ),
    changes: z
      .array(OrderChange)
      .describe("What accepting would do order by order, the first 2,000; empty for plant data"),
    truncated: z.boolean().describe("The lists were cut; the summary counts everything"),
    revision: Revision.describe("Revision that the dry run was made against; send it back to accept"),
  })
  .meta({ id: "ImportReport" });
export type ImportReport = z.infer<typeof ImportReport>;

export const AcceptImportRequest = z.object({ revision: Revision });
export type AcceptImportRequest = z.infer<typeof AcceptImportRequest>;

export const AcceptImportResponse = z
  .object({
    applied: z.object({ added: z.int(), changed: z.int(), unchanged: z.int() }),
    revision: Revision.describe("Revision after the write"),
  })
  .meta({ id: "AcceptImportResponse" });
export type AcceptImportResponse = z.infer<typeof AcceptImportResponse>;
