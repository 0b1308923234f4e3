import type { OpenTimeModel } from "../plant/forming-line.ts";
import type { CycleFault } from "./cycle-fault.ts";
import { trapezoidSeconds } from "./drive-motion.ts";

type HandlingTable = Extract<OpenTimeModel, { kind: "table" }>;
type HandlingRow = HandlingTable["rows"][number];
type Drives = Extract<OpenTimeModel, { kind: "drives" }>;

/** Open time (start of opening to end of closing, seconds) with what it is made of. */
export type OpenTime =
  | {
      readonly kind: "table";
      readonly openSeconds: number;
      /** The depth lies outside the table's rows; see `openTimeOf` for the rule. */
      readonly beyondTable: boolean;
    }
  | {
      readonly kind: "drives";
      readonly openSeconds: number;
      readonly openingSeconds: number;
      readonly indexSeconds: number;
      readonly ejectSeconds: number;
      readonly closingSeconds: number;
      readonly overlapSeconds: number;
    };

/** The product's side of the open time. */
export interface OpenMove {
  readonly depthMm: number;
  readonly indexLengthMm: number;
}

/**
 * Open time of a line for a product depth.
 *
 * Table: linear between rows. Shallower than the first row: the first row's time, since the least depth still has to be
 * indexed and taken away. Deeper than the last row: the slope of the last two rows goes on; with one row, its time.
 * Drives: opening + the longer of index and ejection + closing − overlap.
 */
export function openTimeOf(model: OpenTimeModel, move: OpenMove): OpenTime {
  return model.kind === "table" ? tableTime(model, move.depthMm) : driveTime(model, move);
}

/** Contradictions in a line's open-time model; empty when there are none. */
export function openTimeFaults(model: OpenTimeModel, move: OpenMove): readonly CycleFault[] {
  return model.kind === "table" ? tableFaults(model) : driveFaults(model, move);
}

/** Rows by depth, then by time. */
function sortedRows(table: HandlingTable): readonly HandlingRow[] {
  return [...table.rows].sort((a, b) => a.depthMm - b.depthMm || a.openSeconds - b.openSeconds);
}

function tableTime(table: HandlingTable, depthMm: number): OpenTime {
  const rows = sortedRows(table);
  const first = rows[0] as HandlingRow;
  const last = rows.at(-1) as HandlingRow;
  const beyondTable = depthMm < first.depthMm || depthMm > last.depthMm;
  if (depthMm <= first.depthMm) return { kind: "table", openSeconds: first.openSeconds, beyondTable };
  const next = rows.findIndex((row) => row.depthMm >= depthMm);
  const upper = next < 0 ? last : (rows[next] as HandlingRow);
  const lower = rows[(next < 0 ? rows.length - 1 : next) - 1] ?? upper;
  const span = upper.depthMm - lower.depthMm;
  const slope = span === 0 ? 0 : (upper.openSeconds - lower.openSeconds) / span;
  return { kind: "table", openSeconds: lower.openSeconds + slope * (depthMm - lower.depthMm), beyondTable };
}

function driveTime(drives: Drives, move: OpenMove): OpenTime {
  const strokeM = (drives.strokeDepthFactor * move.depthMm + drives.strokeClearanceMm) / 1000;
  const platenSeconds = trapezoidSeconds(strokeM, {
    speedMPerS: drives.platenSpeedMPerS,
    accelerationMPerS2: drives.platenAccelerationMPerS2,
  });
  const indexSeconds = trapezoidSeconds(move.indexLengthMm / 1000, {
    speedMPerS: drives.indexSpeedMPerS,
    accelerationMPerS2: drives.indexAccelerationMPerS2,
  });
  return {
    kind: "drives",
    openSeconds: 2 * platenSeconds + Math.max(indexSeconds, drives.ejectSeconds) - drives.overlapSeconds,
    openingSeconds: platenSeconds,
    indexSeconds,
    ejectSeconds: drives.ejectSeconds,
    closingSeconds: platenSeconds,
    overlapSeconds: drives.overlapSeconds,
  };
}

function tableFaults(table: HandlingTable): readonly CycleFault[] {
  const rows = sortedRows(table);
  const fall = rows.findIndex(
    (row, index) => index > 0 && row.openSeconds < (rows[index - 1] as HandlingRow).openSeconds,
  );
  if (fall < 0) return [];
  const lower = rows[fall - 1] as HandlingRow;
  const upper = rows[fall] as HandlingRow;
  return [
    {
      code: "handling-table-falls",
      cause: `The handling table gives ${upper.openSeconds} s at ${upper.depthMm} mm, less than ${lower.openSeconds} s at ${lower.depthMm} mm; a deeper product is never handled faster.`,
      remedy: "Correct the rows of the line's handling table.",
      numbers: {
        depthMm: upper.depthMm,
        openSeconds: upper.openSeconds,
        shallowerDepthMm: lower.depthMm,
        shallowerOpenSeconds: lower.openSeconds,
      },
    },
  ];
}

function driveFaults(drives: Drives, move: OpenMove): readonly CycleFault[] {
  const time = driveTime(drives, move);
  if (time.kind !== "drives") return [];
  const between = Math.max(time.indexSeconds, time.ejectSeconds);
  const most = Math.min(between, time.openingSeconds + time.closingSeconds);
  if (time.overlapSeconds <= most) return [];
  return [
    {
      code: "overlap-longer-than-move",
      cause: `The index is said to overlap opening and closing by ${time.overlapSeconds} s, but the shorter of the two lasts ${most.toFixed(3)} s.`,
      remedy: "Lower the overlap in the line's drive data.",
      numbers: { overlapSeconds: time.overlapSeconds, longestOverlapSeconds: most },
    },
  ];
}
