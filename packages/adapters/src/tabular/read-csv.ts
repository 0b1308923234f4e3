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
  const text = decoded.text.replace(/^\ufeff/, "");
  if (text.trim() === "")
    return refused(
      tableFault(file.name, "empty-file", ["holds nothing", "Choose the file that holds the table."]),
    );
  const parsed = parseText(text, file.name);
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

type Parsed =
  | { readonly ok: true; readonly records: readonly (readonly string[])[] }
  | { readonly ok: false; readonly fault: TableFault };

function parseText(text: string, fileName: string): Parsed {
  try {
    const records = parse(text, {
      delimiter: findDelimiter(text),
      relax_column_count: true,
      skip_empty_lines: false,
    });
    return { ok: true, records };
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    const row = typeof error["lines"] === "number" ? error["lines"] : null;
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
