import { z } from "zod";
import { TableQuery } from "./exports.ts";
import {
  PromiseBase,
  PromiseEnquiry,
  PromiseOutcome,
  PromiseQuantity,
  UnderstoodEnquiry,
} from "./promises.ts";

export const BatchMode = z
  .enum(["each alone", "in turn", "together"])
  .describe(
    "each alone: as if there were no other; in turn: each takes its place before the next; together: in the sequence that serves them best",
  )
  .meta({ id: "BatchMode" });
export type BatchMode = z.infer<typeof BatchMode>;

/** `POST …/promises/batch`: many enquiries at once. Nothing is held. */
export const BatchRequest = z
  .object({ mode: BatchMode, enquiries: z.array(PromiseEnquiry).min(1).max(200) })
  .meta({ id: "BatchRequest" });
export type BatchRequest = z.infer<typeof BatchRequest>;

export const BatchAnswer = z
  .object({
    row: z.int().min(1).describe("Row of the file, or place in the list, from 1"),
    reference: z.string().describe("What the file calls the enquiry; empty where it says nothing"),
    enquiry: UnderstoodEnquiry,
    quantity: PromiseQuantity,
    outcome: PromiseOutcome,
  })
  .meta({ id: "BatchAnswer" });
export type BatchAnswer = z.infer<typeof BatchAnswer>;

export const BatchResponse = z
  .object({ base: PromiseBase, currency: z.string(), mode: BatchMode, answers: z.array(BatchAnswer) })
  .meta({ id: "BatchResponse" });
export type BatchResponse = z.infer<typeof BatchResponse>;

/** `POST …/promises/file` (multipart, one .csv or .xlsx) answers as JSON, or as a table to take away. */
export const BatchFileQuery = z.object({
  mode: BatchMode.default("in turn"),
  format: z.enum(["json", "csv", "xlsx"]).default("json"),
  language: TableQuery.shape.language,
});
export type BatchFileQuery = z.infer<typeof BatchFileQuery>;
