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
  if (cell === null || typeof cell === "object") {
    const text = csvText(cell);
    return text === "" ? null : { value: text, type: String };
  }
  // typed as text it is never run here, but a copy saved as CSV would be
  if (typeof cell === "string") return cell === "" ? null : { value: guarded(cell), type: String };
  return typeof cell === "number" ? { value: cell, type: Number } : { value: cell, type: Boolean };
}

/** Sheet names keep to what spreadsheets allow: 31 characters, none of []:*?/\ */
const sheetName = (name: string): string => name.replace(/[[\]:*?/\\]/g, " ").slice(0, 31);

async function xlsx(tables: readonly Table[]): Promise<Uint8Array> {
  const sheets = tables.map((table) => ({
    sheet: sheetName(table.name),
    data: table.rows.map((row) => row.map(xlsxCell)),
    stickyRowsCount: 1,
  }));
  return writeXlsxFile(sheets).toBuffer();
}

/** Writes CSV and XLSX that open clean in a spreadsheet program. */
export const tableWriter: TableWriter = { csv, xlsx };
