import type { Cell } from "../ports/table.ts";
import {
  readBreaks,
  readCounts,
  readHeads,
  readList,
  readMouldChoices,
  readWeekdays,
  readYesNo,
  weekdaysText,
} from "./cell-list.ts";
import { readDecimal, readShare, readWhole } from "./cell-number.ts";
import { plainText, read, unreadable, usable, withoutFormulaGuard } from "./cell-text.ts";
import type { Reading } from "./cell-text.ts";
import { readLocalDate, readLocalDateTime, readTimeOfDay, readWallClock } from "./cell-time.ts";

/** How a column's cells are read and written. */
export type ColumnKind =
  | "text"
  | "whole"
  | "decimal"
  | "share"
  | "yes-no"
  | "moment"
  | "date-time"
  | "date"
  | "time"
  | "list"
  | "counts"
  | "heads"
  | "weekdays"
  | "breaks"
  | "moulds";

/** One column of an import table; `field` is the record's field, nested by dots. */
export interface ColumnSpec {
  /** Header on export, and the first that is looked for. */
  readonly header: string;
  readonly aliases: readonly string[];
  readonly field: string;
  readonly kind: ColumnKind;
  /** A table without the column is refused; a blank cell in it is a bad row. */
  readonly required: boolean;
  /** Value of a blank or missing optional cell; undefined leaves the field to its schema's default. */
  readonly blank: unknown;
  /** What a planner should write, for the manual. */
  readonly meaning: string;
}

/** One table: a CSV file or a sheet of a workbook. */
export interface TableSpec {
  readonly name: string;
  readonly aliases: readonly string[];
  readonly columns: readonly ColumnSpec[];
}

/** Shorthand for a required column. */
export function column(
  [header, ...aliases]: readonly [string, ...string[]],
  field: string,
  kind: ColumnKind,
  meaning: string,
): ColumnSpec {
  return { header, field, kind, meaning, aliases, required: true, blank: undefined };
}

/** The same column, not required; a blank cell gives `blank`. */
export function optional(spec: ColumnSpec, blank: unknown): ColumnSpec {
  return { ...spec, required: false, blank };
}

/** Reads one filled cell. A `moment` gives a `WallClock`; every other kind the record's own value. */
export function readCell(kind: ColumnKind, cell: Cell): Reading<unknown> {
  const content = usable(cell);
  if (!content.ok) return content;
  switch (kind) {
    case "text":
      return readText(cell);
    case "whole":
      return readWhole(cell);
    case "decimal":
      return readDecimal(cell);
    case "share":
      return readShare(cell);
    case "yes-no":
      return readYesNo(cell);
    case "moment":
      return readWallClock(cell);
    case "date-time":
      return readLocalDateTime(cell);
    case "date":
      return readLocalDate(cell);
    case "time":
      return readTimeOfDay(cell);
    case "list":
      return readList(cell);
    case "counts":
      return readCounts(cell);
    case "heads":
      return readHeads(cell);
    case "weekdays":
      return readWeekdays(cell);
    case "breaks":
      return readBreaks(cell);
    case "moulds":
      return readMouldChoices(cell);
  }
}

/** Control characters never belong to a name; a spreadsheet's number for an id ("20418") is its digits. */
function readText(cell: Cell): Reading<string> {
  const text = withoutFormulaGuard(plainText(cell));

  if (/[\u0000-\u001f\u007f]/.test(text)) return unreadable("control-characters");
  return read(text);
}

interface Named {
  readonly start: string;
  readonly end: string;
}
interface Heads {
  readonly poolId: string;
  readonly heads: number;
}
interface Choice {
  readonly mouldId: string;
  readonly insertId: string | null;
}

/** Writes a field so that reading it gives the same value; null and undefined give a blank cell. */
export function writeCell(kind: ColumnKind, value: unknown): Cell {
  if (value === null || value === undefined) return null;
  switch (kind) {
    case "text":
      return typeof value === "string" ? value : null;
    case "whole":
    case "decimal":
    case "share":
      return typeof value === "number" ? value : null;
    case "yes-no":
      return value === true ? "yes" : "no";
    case "moment":
    case "date-time":
    case "date":
    case "time":
      return typeof value === "string" ? value.replace("T", " ") : null;
    case "list":
    case "counts":
      return (value as readonly (string | number)[]).join("; ");
    case "heads":
      return (value as readonly Heads[]).map(({ poolId, heads }) => `${poolId}/${heads}`).join("; ");
    case "weekdays":
      return weekdaysText(value as readonly number[]);
    case "breaks":
      return (value as readonly Named[]).map(({ start, end }) => `${start}-${end}`).join("; ");
    case "moulds":
      return (value as readonly Choice[])
        .map(({ mouldId, insertId }) => (insertId === null ? mouldId : `${mouldId}/${insertId}`))
        .join("; ");
  }
}
