import type { Cell, Table, TableWriter } from "@formweek/application";
import writeXlsxFile from "write-excel-file/node";

/** Text that a spreadsheet would run as a formula gets an apostrophe, which the import takes off again (OWASP, CSV injection; from memory). */
function guarded(text: string): string {
  return /^'*[=+\-@\t\r]/.test(text) ? `'${text}` : text;
}

function csvText(cell: Cell): string {
  if (cell === null) return "";
  if (typeof cell === "string") return quoted(guarded(cell));
  if (typeof cell === "number") return String(cell);
  if (typeof cell === "boolean") return cell ? "yes" : "no";
  return cell.kind === "date"
    ? cell.wallClock.replace("T", " ")
    : cell.kind === "error"
      ? quoted(guarded(cell.text))
      : "";
}

function quoted(text: string): string {
  return /[",;\t|\r\n]|^\s|\s$/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

function csv(table: Table): Uint8Array {
  const lines = table.rows.map((row) => row.map(csvText).join(","));
  return new TextEncoder().encode(`\ufeff${lines.join("\r\n")}\r\n`);
}

function xlsxCell(cell: Cell) {
  if (cell === null) return null;
  if (typeof cell === "number") return { value: cell, type: Number };
  if (typeof cell === "boolean") return { value: cell, type: Boolean };
  // typed as text it is never run here, but a copy saved as CSV would be
  if (typeof cell === "string") return xlsxText(guarded(cell));
  return cell.kind === "date" ? xlsxDate(cell.wallClock) : xlsxText(csvText(cell));
}

/** Most characters of a cell; spreadsheet programs call a workbook with more damaged (from memory). */
const MOST_CHARACTERS = 32_767;

function xlsxText(text: string) {
  if (text === "") return null;
  const value = text.length <= MOST_CHARACTERS ? text : `${text.slice(0, MOST_CHARACTERS - 1)}…`;
  return { value, type: String };
}

/** A sheet knows no zone: the wall clock goes in as if it were UTC, and comes out as it went in. */
function xlsxDate(wallClock: string) {
  return wallClock.includes("T")
    ? { value: new Date(`${wallClock}Z`), type: Date, format: "yyyy-mm-dd hh:mm:ss" }
    : { value: new Date(wallClock), type: Date, format: "yyyy-mm-dd" };
}

/** Widths that show short cells whole: a date that does not fit its column is shown as ####. */
function widthsOf({ rows }: Table) {
  return (rows[0] ?? []).map((_, at) => {
    const longest = rows.reduce((most, row) => Math.max(most, csvText(row[at] ?? null).length), 0);
    return { width: Math.min(60, Math.max(8, longest + 2)) };
  });
}

/** Sheet names keep to what spreadsheets allow: 31 characters, none of []:*?/\ */
const sheetName = (name: string): string => name.replace(/[[\]:*?/\\]/g, " ").slice(0, 31);

async function xlsx(tables: readonly Table[]): Promise<Uint8Array> {
  const sheets = tables.map((table) => ({
    sheet: sheetName(table.name),
    data: table.rows.map((row) => row.map(xlsxCell)),
    columns: widthsOf(table),
    stickyRowsCount: 1,
  }));
  return writeXlsxFile(sheets).toBuffer();
}

/** Writes CSV and XLSX that open clean in a spreadsheet program. */
export const tableWriter: TableWriter = { csv, xlsx };
