import { localTextAt } from "@formweek/capacity-model";
import type { Table } from "../ports/table.ts";
import type { TableWriter } from "../ports/table-writer.ts";

export type TableFormat = "csv" | "xlsx";

/** A file ready to be saved. */
export interface WrittenFile {
  readonly name: string;
  readonly bytes: Uint8Array;
}

/** One table in the format asked for; `stem` is the file's name without its ending. */
export async function fileOf(
  writer: TableWriter,
  table: Table,
  { stem, format }: { readonly stem: string; readonly format: TableFormat },
): Promise<WrittenFile> {
  const bytes = format === "csv" ? writer.csv(table) : await writer.xlsx([table]);
  return { name: `${stem}.${format}`, bytes };
}

/** An id as part of a file name: what file systems or headers could trip over becomes "-". */
export function fileStem(id: string): string {
  return id.replace(/[^A-Za-z0-9._-]+/g, "-").replace(/^[-.]+/, "") || "plant";
}

/** An instant as part of a file name, by the plant's clock: "2026-11-30" or "2026-11-30-0500". */
export function fileDate(timeZone: string, at: number, upTo: "day" | "minute"): string {
  const [day, time] = localTextAt(timeZone, at).split("T");
  return upTo === "day" ? `${day}` : `${day}-${time?.slice(0, 5).replace(":", "")}`;
}
