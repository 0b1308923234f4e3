import type { AppliedCounts, ImportChange } from "../ports/import-repository.ts";
import type { ImportFault } from "./import-fault.ts";
import { MOST_FAULTS } from "./import-fault.ts";

/** An order that can be booked but that no line could make as things stand. */
export interface UnplannableRow {
  readonly orderId: string;
  readonly row: number | null;
  readonly reasons: readonly string[];
}

/** What a dry run found. Nothing has changed; `change` is what acceptance would write, null when nothing may be. */
export interface ImportOutcome {
  /** Data rows read. */
  readonly rows: number;
  readonly counts: AppliedCounts;
  /** Rows with an error; they are left out. */
  readonly bad: number;
  /** Errors first, then warnings, each in file order; cut to what a person can use. */
  readonly faults: readonly ImportFault[];
  readonly cannotBePlanned: readonly UnplannableRow[];
  /** How many there are before the list was cut. */
  readonly cannotBePlannedCount: number;
  readonly truncated: boolean;
  readonly change: ImportChange | null;
}

/** Errors before warnings; the list is cut to `MOST_FAULTS`. */
export function listedFaults(faults: readonly ImportFault[]): {
  readonly listed: readonly ImportFault[];
  readonly cut: boolean;
} {
  const ordered = [
    ...faults.filter((fault) => fault.severity === "error"),
    ...faults.filter((fault) => fault.severity === "warning"),
  ];
  return { listed: ordered.slice(0, MOST_FAULTS), cut: ordered.length > MOST_FAULTS };
}
