import type { Table } from "./table.ts";

/** A file as it arrived. `name` decides the format by its ending; the bytes are checked against it. */
export interface UploadedFile {
  readonly name: string;
  readonly bytes: Uint8Array;
}

/** Bounds that a reader keeps before it spends memory: hostile files are refused, not read to the end. */
export interface TableLimits {
  readonly maxFileBytes: number;
  /** Whole workbook after decompression (zip bombs end here). */
  readonly maxUnpackedBytes: number;
  readonly maxRowsPerTable: number;
  readonly maxColumns: number;
  readonly maxTables: number;
  readonly maxCellCharacters: number;
}

/** Why a file could not be read at all. */
export interface TableFault {
  readonly code:
    | "unknown-format"
    | "too-large"
    | "unpacks-too-large"
    | "too-many-rows"
    | "too-many-columns"
    | "too-many-tables"
    | "cell-too-long"
    | "wrong-encoding"
    | "broken-quotes"
    | "broken-file"
    | "password-protected"
    | "empty-file";
  readonly fileName: string;
  /** 1-based row where known. */
  readonly row: number | null;
  readonly problem: string;
  readonly remedy: string;
}

/** Something read with a guess worth telling, such as merged cells or an encoding taken to be Windows-1252. */
export interface TableNotice {
  readonly sheet: string;
  readonly row: number | null;
  readonly text: string;
}

export type TableReadResult =
  | { readonly ok: true; readonly tables: readonly Table[]; readonly notices: readonly TableNotice[] }
  | { readonly ok: false; readonly faults: readonly TableFault[] };

/** Bytes to tables. Never throws on bad content. */
export interface TableReader {
  readonly read: (file: UploadedFile, limits: TableLimits) => Promise<TableReadResult>;
}
