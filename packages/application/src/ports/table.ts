/**
 * One cell of a table. Dates are wall-clock texts ("2026-11-30" or "2026-11-30T05:00:00") because a sheet knows no zone.
 * A formula arrives as its stored value; `formula` with a null value is one that was never computed. `error` is a
 * spreadsheet error such as #REF!. An empty cell is null. From CSV every cell is text or null.
 */
export type Cell =
  | null
  | string
  | number
  | boolean
  | { readonly kind: "date"; readonly wallClock: string }
  | { readonly kind: "formula"; readonly value: null }
  | { readonly kind: "error"; readonly text: string };

/** A sheet of a workbook, or a CSV file; rows as read, the header row included, empty lines kept so that row n is `rows[n - 1]`. */
export interface Table {
  /** Sheet name, or the file's name without its extension. */
  readonly name: string;
  readonly rows: readonly (readonly Cell[])[];
}
