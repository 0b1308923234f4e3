import type {
  Cell,
  TableFault,
  TableLimits,
  TableNotice,
  TableReadResult,
  UploadedFile,
} from "@formweek/application";
import { CsvError, parse } from "csv-parse/sync";
import { decodeText } from "./decode-text.ts";
import { findDelimiter } from "./find-delimiter.ts";
import type { Delimiter } from "./find-delimiter.ts";
import { limitFault } from "./table-limits.ts";
import { tableFault } from "./table-fault.ts";

/** Reads a CSV file: encoding and delimiter are found, quotes are taken strictly, every cell is text. */
export function readCsv(file: UploadedFile, limits: TableLimits): TableReadResult {
  const name = file.name.replace(/\.[^.]*$/, "").replace(/^.*[\\/]/, "");
  const decoded = decodeText(file.bytes);
  if (decoded === null) {
    return refused(
      tableFault(file.name, "wrong-encoding", [
        "is not text in an encoding that is known here",
        "Save it as CSV in UTF-8.",
      ]),
    );
  }
  const text = withoutEmptyTail(decoded.text.replace(/^\ufeff/, ""));
  if (text === "")
    return refused(
      tableFault(file.name, "empty-file", ["holds nothing", "Choose the file that holds the table."]),
    );
  const delimiter = findDelimiter(text);
  if (holdsMoreThan(text, delimiter, MOST_CELLS))
    return refused(
      tableFault(file.name, "too-large", ["has too many cells to be read", "Load it in parts."]),
    );
  const parsed = parseText(text, { fileName: file.name, delimiter, limits });
  if (!parsed.ok) return refused(parsed.fault);
  const rows = parsed.records.map((record) => record.map((cell): Cell => (cell === "" ? null : cell)));
  const table = { name, rows };
  const fault = limitFault(file.name, [table], limits);
  if (fault !== null) return refused(fault);
  const notices: TableNotice[] =
    decoded.guess === null ? [] : [{ sheet: name, row: null, text: decoded.guess }];
  return { ok: true, tables: [table], notices };
}

const refused = (fault: TableFault): TableReadResult => ({ ok: false, faults: [fault] });

/** Cells are counted before they are made: commas alone would fill the memory. */
const MOST_CELLS = 10_000_000;

function holdsMoreThan(text: string, mark: string, most: number): boolean {
  let count = 0;
  for (let at = text.indexOf(mark); at >= 0 && count <= most; at = text.indexOf(mark, at + 1)) count++;
  return count > most;
}

/** Spreadsheets may save a million empty lines below a table; row numbers above them stay true. */
function withoutEmptyTail(text: string): string {
  let last = text.length - 1;
  while (last >= 0 && " ,;|\t\r\n".includes(text.charAt(last))) last--;
  if (last < 0) return "";
  const end = text.indexOf("\n", last);
  return end < 0 ? text : text.slice(0, end + 1);
}

interface Parsing {
  readonly fileName: string;
  readonly delimiter: Delimiter;
  readonly limits: TableLimits;
}

type Parsed =
  | { readonly ok: true; readonly records: readonly (readonly string[])[] }
  | { readonly ok: false; readonly fault: TableFault };

/** One row beyond the limit is read, so that the limit is seen to be passed. */
function parseText(text: string, { fileName, delimiter, limits }: Parsing): Parsed {
  try {
    const records = parse(text, {
      delimiter,
      relax_column_count: true,
      skip_empty_lines: false,
      to: limits.maxRowsPerTable + 1,
    });
    return { ok: true, records };
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    const noticedAt = typeof error["lines"] === "number" ? error["lines"] : null;
    const row = error.code === "CSV_QUOTE_NOT_CLOSED" ? lineOfOpenQuote(text) : noticedAt;
    const place = row === null ? "" : ` near line ${String(row)}`;
    return {
      ok: false,
      fault: tableFault(
        fileName,
        "broken-quotes",
        [
          `has quotation marks that do not match${place}`,
          "Close the quotation mark, or double one that belongs to the text.",
        ],
        row,
      ),
    };
  }
}

/** The line on which a quotation begins that nothing closes: the parser only notices at the end of the file. */
function lineOfOpenQuote(text: string): number | null {
  let open = text.indexOf('"');
  while (open >= 0) {
    let close = text.indexOf('"', open + 1);
    while (close >= 0 && text.charAt(close + 1) === '"') close = text.indexOf('"', close + 2);
    if (close < 0) return lineAt(text, open);
    open = text.indexOf('"', close + 1);
  }
  return null;
}

/** Counted mark by mark: a list of a million line ends would take memory. */
function lineAt(text: string, place: number): number {
  let line = 1;
  for (let at = 0; at < place; at++) {
    const mark = text.charAt(at);
    if (mark === "\n" || (mark === "\r" && text.charAt(at + 1) !== "\n")) line++;
  }
  return line;
}
