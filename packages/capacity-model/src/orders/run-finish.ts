import { addWorking } from "../calendar/working-time.ts";
import type { WorkingTime } from "../calendar/working-time.ts";

export interface RunOnLine {
  readonly workingTime: WorkingTime;
  /** The line is free from this instant on. */
  readonly freeAt: number;
  readonly changeSeconds: number;
  readonly pieces: number;
  /** Pieces per hour really reached, > 0. */
  readonly piecesPerHour: number;
  /** Hold after the last piece, by the wall clock. */
  readonly conditioningSeconds: number;
}

/** Instants of one change and run laid end to end on a line. */
export interface RunFinish {
  readonly changeEndAt: number;
  readonly lastPieceAt: number;
  /** Last piece plus conditioning: the earliest moment at which the goods can leave. */
  readonly readyAt: number;
}

/** Working seconds that a run takes, rounded up to a whole second; a billionth of slack, as in the scheduler. */
export function runSeconds(pieces: number, piecesPerHour: number): number {
  return Math.max(0, Math.ceil((pieces * 3600) / piecesPerHour - 1e-9));
}

/**
 * When a quantity is ready if its change starts as soon as the line is free and its run follows at once, all in the
 * line's working time; null when the working time runs out before.
 */
export function finishOfRun(run: RunOnLine): RunFinish | null {
  const changeEndAt = addWorking(run.workingTime, run.freeAt, run.changeSeconds);
  if (changeEndAt === null) return null;
  const lastPieceAt = addWorking(run.workingTime, changeEndAt, runSeconds(run.pieces, run.piecesPerHour));
  return lastPieceAt === null
    ? null
    : { changeEndAt, lastPieceAt, readyAt: lastPieceAt + run.conditioningSeconds };
}
