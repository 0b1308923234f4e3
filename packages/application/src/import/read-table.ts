import type { Cell, Table } from "../ports/table.ts";
import { isBlank, shownText } from "./cell-text.ts";
import { readCell } from "./column-spec.ts";
import type { ColumnSpec, TableSpec } from "./column-spec.ts";
import type { ImportFault } from "./import-fault.ts";
import { faultWords } from "./import-words.ts";

/** One row read by a table's columns; `values` by field, blanks filled in. */
export interface ReadRow {
  readonly row: number;
  readonly values: Readonly<Record<string, unknown>>;
  /** True when a cell of it could not be read; its values are then incomplete. */
  readonly bad: boolean;
}

export interface ReadRows {
  readonly sheet: string;
  readonly rows: readonly ReadRow[];
  readonly faults: readonly ImportFault[];
  /** Header in the file per field, for faults found later. */
  readonly headers: ReadonlyMap<string, string>;
  /** What the cell of a field shows in a row. */
  readonly shown: (row: number, field: string) => string;
}

/** Titles and remarks may stand above the header; it is looked for in so many rows. */
const HEADER_ROWS = 20;

/** Compares names as people write them: case, accents, spaces, punctuation and a unit in brackets do not matter. */
function normalName(text: string): string {
  return text
    .replace(/[([][^()[\]]*[)\]]/g, "")
    .normalize("NFD")
    .toLowerCase()
    .replace(/[^a-z0-9]/g, "");
}

/** True when the table's name is one that the spec goes by. */
export function isNamed(table: Table, spec: TableSpec): boolean {
  return [spec.name, ...spec.aliases].some((name) => normalName(name) === normalName(table.name));
}

/**
 * Reads every row below the header; empty rows are skipped. A table whose header cannot be trusted (a required column is
 * missing, two columns mean the same) has no rows and says why.
 */
export function readTable(table: Table, spec: TableSpec): ReadRows {
  const header = findHeader(table, spec);
  if (header.kind === "missing") {
    return {
      sheet: table.name,
      rows: [],
      faults: [headerFault(table, header)],
      headers: new Map(),
      shown: () => "",
    };
  }
  const { columns, faults, headerRow } = header;
  if (faults.some((fault) => fault.severity === "error")) {
    return { sheet: table.name, rows: [], faults, headers: new Map(), shown: () => "" };
  }
  const rows: ReadRow[] = [];
  const rowFaults: ImportFault[] = [...faults];
  for (let index = headerRow + 1; index < table.rows.length; index++) {
    const cells = table.rows[index] ?? [];
    if (!cells.every(isBlank))
      rows.push(readRow({ sheet: table.name, row: index + 1, cells, columns, spec }, rowFaults));
  }
  const headers = new Map([...columns].map(([field, found]) => [field, found.written]));
  const shown = (row: number, field: string): string => {
    const found = columns.get(field);
    return found === undefined ? "" : shownText(table.rows[row - 1]?.[found.index]);
  };
  return { sheet: table.name, rows, faults: rowFaults, headers, shown };
}

interface FoundColumn {
  readonly index: number;
  readonly written: string;
}

type Header =
  | {
      readonly kind: "found";
      readonly headerRow: number;
      readonly columns: ReadonlyMap<string, FoundColumn>;
      readonly faults: readonly ImportFault[];
    }
  | { readonly kind: "missing"; readonly missing: readonly ColumnSpec[]; readonly row: number | null };

/** The first row that names every required column; else the one that came nearest says what is missing. */
function findHeader(table: Table, spec: TableSpec): Header {
  const required = spec.columns.filter((column) => column.required);
  let nearest: { missing: readonly ColumnSpec[]; row: number | null } = { missing: required, row: null };
  for (let index = 0; index < Math.min(HEADER_ROWS, table.rows.length); index++) {
    const matched = matchHeader(table, index, spec);
    const missing = required.filter((column) => !matched.columns.has(column.field));
    if (missing.length === 0) return { kind: "found", headerRow: index, ...matched };
    if (missing.length < nearest.missing.length) nearest = { missing, row: index + 1 };
  }
  return { kind: "missing", ...nearest };
}

function matchHeader(
  table: Table,
  rowIndex: number,
  spec: TableSpec,
): { readonly columns: ReadonlyMap<string, FoundColumn>; readonly faults: readonly ImportFault[] } {
  const columns = new Map<string, FoundColumn>();
  const faults: ImportFault[] = [];
  (table.rows[rowIndex] ?? []).forEach((cell, index) => {
    if (isBlank(cell)) return;
    const written = shownText(cell);
    const place = { sheet: table.name, row: rowIndex + 1, column: written, value: written };
    const column = columnNamed(spec, written);
    if (column === undefined) {
      faults.push({
        ...place,
        ...faultWords("unknown-column"),
        severity: "warning",
      });
      return;
    }
    const earlier = columns.get(column.field);
    if (earlier !== undefined) {
      faults.push({
        ...place,
        ...faultWords("same-column", { column: earlier.written }),
        severity: "error",
      });
      return;
    }
    columns.set(column.field, { index, written });
  });
  return { columns, faults };
}

/** A header's own name wins over an alias of another column. */
function columnNamed(spec: TableSpec, written: string): ColumnSpec | undefined {
  const name = normalName(written);
  return (
    spec.columns.find((column) => normalName(column.header) === name) ??
    spec.columns.find((column) => column.aliases.some((alias) => normalName(alias) === name))
  );
}

function headerFault(table: Table, header: Extract<Header, { readonly kind: "missing" }>): ImportFault {
  const wanted = header.missing.map((column) => `"${column.header}"`).join(", ");
  return {
    sheet: table.name,
    row: header.row,
    column: null,
    value: "",
    ...faultWords("missing-columns", { columns: wanted }),
    severity: "error",
  };
}

interface RowToRead {
  readonly sheet: string;
  readonly row: number;
  readonly cells: readonly Cell[];
  readonly columns: ReadonlyMap<string, FoundColumn>;
  readonly spec: TableSpec;
}

function readRow({ sheet, row, cells, columns, spec }: RowToRead, faults: ImportFault[]): ReadRow {
  const values: Record<string, unknown> = {};
  let bad = false;
  for (const column of spec.columns) {
    const found = columns.get(column.field);
    const cell = found === undefined ? null : (cells[found.index] ?? null);
    const place = { sheet, row, column: found?.written ?? column.header, value: shownText(cell) };
    if (isBlank(cell)) {
      values[column.field] = column.blank;
      if (!column.required) continue;
      bad = true;
      faults.push({
        ...place,
        ...faultWords("blank", { meaning: column.meaning }),
        severity: "error",
      });
      continue;
    }
    const reading = readCell(column.kind, cell);
    if (!reading.ok) {
      bad = true;
      const { ok: _, ...said } = reading;
      faults.push({ ...place, ...said, severity: "error" });
      continue;
    }
    values[column.field] = reading.value;
    if (reading.warning !== undefined) {
      faults.push({
        ...place,
        ...reading.warning,
        severity: "warning",
      });
    }
  }
  return { row, values, bad };
}
