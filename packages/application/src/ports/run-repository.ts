import type { AppError } from "../errors.ts";
import type { SolveProgressReport } from "./solve-runner.ts";

export type RunState = "queued" | "running" | "done" | "stopped" | "failed";

/** Budget and seed of a solve. At least one of `maxSteps`, `maxMs` is set. */
export interface RunParams {
  readonly seed: number;
  readonly maxSteps: number | null;
  readonly maxMs: number | null;
  readonly threads: number;
}

/** One point of the improvement curve: milliseconds since the start, total cost. */
export type CurvePoint = readonly [elapsedMs: number, total: number];

/** A solve asked for by someone. The row is the truth; the queue only carries its id. */
export interface SolveRun {
  readonly id: string;
  readonly plantId: string;
  /** Counts up by one at each `update`, from 1; progress does not count. */
  readonly revision: number;
  readonly state: RunState;
  readonly params: RunParams;
  readonly stopRequested: boolean;
  readonly requestedAt: number;
  readonly requestedBy: string;
  readonly startedAt: number | null;
  readonly endedAt: number | null;
  readonly progress: SolveProgressReport | null;
  readonly curve: readonly CurvePoint[];
  readonly planId: string | null;
  readonly problem: AppError | null;
  /** Times it was put back after its process went away. */
  readonly recoveries: number;
}

export interface RunRepository {
  /** False, and nothing written, when the plant already has a queued or running run (a unique index guards it). */
  readonly insert: (run: SolveRun) => Promise<boolean>;
  readonly get: (runId: string) => Promise<SolveRun | null>;
  /** Queued and running runs of every plant, oldest first. */
  readonly listActive: () => Promise<readonly SolveRun[]>;
  /** Writes `run` with revision + 1 if the row still has `run.revision`; true if written. */
  readonly update: (run: SolveRun) => Promise<boolean>;
  /** Overwrites progress and curve of a running run; other states are left as they are. */
  readonly saveProgress: (
    runId: string,
    progress: SolveProgressReport,
    curve: readonly CurvePoint[],
  ) => Promise<void>;
}
