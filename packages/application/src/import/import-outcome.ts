import type { Order } from "@formweek/capacity-model";
import type { UnplannedCause } from "@formweek/scheduler";
import type { AppliedCounts, ImportChange } from "../ports/import-repository.ts";
import type { ImportFault } from "./import-fault.ts";
import { MOST_FAULTS } from "./import-fault.ts";

/** Why a line and mould may not make an order, in words, and apart from them where a fit check says it. */
export interface Misfit {
  readonly text: string;
  readonly cause?: Extract<UnplannedCause, { readonly kind: "does not fit" }>;
}

/** An order that can be booked but that no line could make as things stand. */
export interface UnplannableRow {
  readonly orderId: string;
  readonly row: number | null;
  readonly reasons: readonly Misfit[];
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
  /** What acceptance would do order by order; empty for a plant. `before` null: the order is new. */
  readonly changes: readonly { readonly before: Order | null; readonly after: Order }[];
  readonly change: ImportChange | null;
}

/** Errors before warnings, each by sheet and row; the list is cut to `MOST_FAULTS`. */
export function listedFaults(faults: readonly ImportFault[]): {
  readonly listed: readonly ImportFault[];
  readonly cut: boolean;
} {
  const sheets = new Map(
    [...new Set(faults.map(({ sheet }) => sheet))].map((sheet, index) => [sheet, index]),
  );
  const place = ({ sheet }: ImportFault): number => sheets.get(sheet) ?? 0;
  const rank = ({ severity }: ImportFault): number => (severity === "error" ? 0 : 1);
  const ordered = [...faults].sort(
    (a, b) => rank(a) - rank(b) || place(a) - place(b) || (a.row ?? 0) - (b.row ?? 0),
  );
  return { listed: ordered.slice(0, MOST_FAULTS), cut: ordered.length > MOST_FAULTS };
}
