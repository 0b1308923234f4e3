import type { FaultWords } from "./import-words.ts";

/** One thing in a file that a planner has to look at. Rows count from 1, the header row included. */
export interface ImportFault extends FaultWords {
  readonly sheet: string;
  /** Null where the fault belongs to the table as a whole. */
  readonly row: number | null;
  /** Header as written in the file, or the one that was looked for. */
  readonly column: string | null;
  /** What the cell shows, clipped; "" for a blank one. */
  readonly value: string;
  /** A warning leaves the row usable. */
  readonly severity: "error" | "warning";
}

/** Reports list no more faults than a person can use; the rest is counted. */
export const MOST_FAULTS = 2000;
