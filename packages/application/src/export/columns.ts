import { localTextAt, rfc3339At } from "@formweek/capacity-model";
import { instantOfIso } from "../planning/iso-instant.ts";
import type { Cell, Table } from "../ports/table.ts";
import { type TableLanguage, type TableWord, tableWord } from "./table-words.ts";

/** One column of a table that people take away: its header in English, and its cell for a row. */
export type Column<Row> = readonly [header: TableWord, cell: (row: Row) => Cell];

interface TableHead<Row> {
  readonly name: TableWord;
  readonly columns: readonly Column<Row>[];
  readonly language: TableLanguage;
}

/** A table of the rows under a header row in the reader's language. */
export function tableBy<Row>({ name, columns, language }: TableHead<Row>, rows: readonly Row[]): Table {
  const header = columns.map(([title]) => tableWord(title, language));
  return {
    name: tableWord(name, language),
    rows: [header, ...rows.map((row) => columns.map(([, cell]) => cell(row)))],
  };
}

/** The clock in the plant at an instant (ISO 8601 UTC, or seconds since the epoch); null stays empty. */
export function momentCell(timeZone: string, at: string | number | null): Cell {
  const seconds = secondsOf(at);
  if (seconds === null) return null;
  const text = localTextAt(timeZone, seconds);
  return { kind: "date", wallClock: text.length === "YYYY-MM-DDTHH:MM".length ? `${text}:00` : text };
}

/** The same with its offset from UTC, as text: no clock change makes it ambiguous. */
export function offsetCell(timeZone: string, at: string | number | null): Cell {
  const seconds = secondsOf(at);
  return seconds === null ? null : rfc3339At(timeZone, seconds);
}

const secondsOf = (at: string | number | null): number | null =>
  typeof at === "string" ? instantOfIso(at) : at;

/** Hours with four decimals, so that one second still shows; null stays empty. */
export function hoursCell(seconds: number | null): Cell {
  return seconds === null ? null : Math.round((seconds / 3600) * 10_000) / 10_000;
}

/** A text, or an empty cell where there is none. */
export function textCell(text: string): Cell {
  return text === "" ? null : text;
}
