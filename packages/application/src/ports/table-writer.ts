import type { Table } from "./table.ts";

/** Tables to bytes. Text that a spreadsheet would run as a formula (leading = + - @ tab or return) is written so that it stays text. */
export interface TableWriter {
  /** UTF-8 with byte-order mark, comma, CRLF. */
  readonly csv: (table: Table) => Uint8Array;
  /** A workbook with one sheet a table; cells are typed, never formulas. */
  readonly xlsx: (tables: readonly Table[]) => Promise<Uint8Array>;
}
