import type { Stretch } from "./run-timing.ts";

/** One run as it is booked; s after the horizon's start. */
export interface BookedRun {
  readonly line: number;
  readonly job: number;
  readonly from: number;
  readonly to: number;
  /** s of running */
  readonly work: number;
  /** null where the line never stops for want of operators */
  readonly parts: readonly Stretch[] | null;
}
