import { z } from "zod";

/** Kind of file that a table is written as. */
export const TableQuery = z.object({
  format: z
    .enum(["csv", "xlsx"])
    .describe(
      "csv: UTF-8 with byte-order mark, comma, CRLF, times as 2026-11-30 05:00:00; xlsx: a workbook with typed cells. Times are the plant's clock, its zone stands beside them",
    ),
  language: z
    .enum(["en", "de"])
    .default("en")
    .describe("Language of headings, states and kinds; names and reasons stay as they are"),
});
export type TableQuery = z.infer<typeof TableQuery>;
