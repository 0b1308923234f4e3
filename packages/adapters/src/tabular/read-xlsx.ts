import type {
  Cell,
  Table,
  TableFault,
  TableLimits,
  TableNotice,
  TableReadResult,
  UploadedFile,
} from "@formweek/application";
import readXlsxFile from "read-excel-file/node";
import { placeOf, scanSheets } from "./scan-sheet.ts";
import type { SheetScan } from "./scan-sheet.ts";
import { sheetExtent, tagsAreShort } from "./sheet-extent.ts";
import { storedZip } from "./stored-zip.ts";
import { limitFault } from "./table-limits.ts";
import { tableFault } from "./table-fault.ts";
import { unzipWithin } from "./unzip-within.ts";
import type { Unzipped, UnzippedEntry } from "./unzip-within.ts";

/** Reads a workbook after its real unpacked size and the extent of its sheets are known to be within bounds. */
export async function readXlsx(file: UploadedFile, limits: TableLimits): Promise<TableReadResult> {
  if (file.bytes.length === 0)
    return refused(
      tableFault(file.name, "empty-file", ["holds nothing", "Choose the file that holds the table."]),
    );
  if (file.bytes[0] === 0xd0 && file.bytes[1] === 0xcf) {
    return refused(
      tableFault(file.name, "password-protected", [
        "is protected by a password, or in the old .xls format",
        "Save it as .xlsx without a password.",
      ]),
    );
  }
  const unzipped = unzipWithin(file.bytes, limits.maxUnpackedBytes);
  if (!unzipped.ok) return refused(faultOf(file.name, unzipped.why));
  const entries = unzipped.entries.filter(({ name }) => /\.(xml|rels)$/.test(name));
  const bounds = boundsFault(file.name, entries);
  if (bounds !== null) return refused(bounds);
  const scans = scanSheets(entries);
  if (scans.length === 0) return refused(brokenFile(file.name));
  // not the file itself: what its directory does not name was never looked at
  const sheets = await readXlsxFile(storedZip(entries)).catch(() => null);
  if (sheets === null) return refused(brokenFile(file.name));
  const tables = sheets.map(({ sheet, data }): Table => {
    const rows = (data as readonly (readonly unknown[])[]).map((row) => row.map(cellOf));
    return {
      name: sheet,
      rows: withMarks(
        rows,
        scans.find((scan) => scan.name === sheet),
      ),
    };
  });
  const fault = limitFault(file.name, tables, limits);
  return fault === null ? { ok: true, tables, notices: scans.flatMap(noticesOf) } : refused(fault);
}

/** What would make the workbook's XML take memory or time out of proportion to its size. */
function boundsFault(fileName: string, entries: readonly UnzippedEntry[]): TableFault | null {
  for (const { bytes } of entries) {
    const xml = new TextDecoder().decode(bytes);
    const extent = /<(?:[\w.-]+:)?sheetData[\s/>]/.test(xml) ? sheetExtent(xml) : "sound";
    if (extent === "broken" || !tagsAreShort(xml)) return brokenFile(fileName);
    if (extent === "too large") {
      return tableFault(fileName, "unpacks-too-large", [
        "has a sheet whose cells reach too far out to the right or down",
        "Delete the empty rows and columns around the table and save it again.",
      ]);
    }
  }
  return null;
}

const refused = (fault: TableFault): TableReadResult => ({ ok: false, faults: [fault] });

const brokenFile = (fileName: string): TableFault =>
  tableFault(fileName, "broken-file", [
    "is damaged or no workbook",
    "Open it in a spreadsheet program and save it again as .xlsx.",
  ]);

function faultOf(fileName: string, why: Exclude<Unzipped, { readonly ok: true }>["why"]): TableFault {
  switch (why) {
    case "not a zip":
      return tableFault(fileName, "unknown-format", [
        "is named .xlsx but is no workbook",
        "Save it as .xlsx or .csv.",
      ]);
    case "encrypted":
      return tableFault(fileName, "password-protected", [
        "is protected by a password",
        "Save it without a password.",
      ]);
    case "too large":
      return tableFault(fileName, "unpacks-too-large", [
        "unpacks to more than can be read safely",
        "Leave out sheets and pictures that are not needed, or load it in parts.",
      ]);
    case "broken":
      return brokenFile(fileName);
  }
}

/** Dates come as UTC and up to a millisecond early: to the whole second, as wall clock. A number too large for a date is an error. */
function cellOf(value: unknown): Cell {
  if (value === null || value === undefined) return null;
  if (value instanceof Date) {
    const date = new Date(Math.round(value.getTime() / 1000) * 1000);
    const year = date.getUTCFullYear();
    return year >= 0 && year <= 9999
      ? { kind: "date", wallClock: date.toISOString().slice(0, 19) }
      : { kind: "error", text: "##### (no date)" };
  }
  return typeof value === "string" || typeof value === "number" || typeof value === "boolean" ? value : null;
}

function withMarks(
  rows: readonly (readonly Cell[])[],
  scan: SheetScan | undefined,
): readonly (readonly Cell[])[] {
  if (scan === undefined || scan.errors.size + scan.uncomputed.size === 0) return rows;
  const marked = rows.map((row) => [...row]);
  const mark = (address: string, cell: Cell): void => {
    const place = placeOf(address);
    const row = place === null ? undefined : marked[place.row];
    if (place === null || row === undefined) return;
    while (row.length <= place.column) row.push(null);
    row[place.column] = cell;
  };
  for (const [address, text] of scan.errors) mark(address, { kind: "error", text });
  for (const address of scan.uncomputed) mark(address, { kind: "formula", value: null });
  return marked;
}

function noticesOf(scan: SheetScan): readonly TableNotice[] {
  return scan.merged.slice(0, 20).map((range) => ({
    sheet: scan.name,
    row: (placeOf(range.split(":")[0] ?? "")?.row ?? -1) + 1 || null,
    text: `The cells ${range} are merged; only the first one holds their value.`,
  }));
}
