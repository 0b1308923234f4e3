import type { AppError } from "../errors.ts";
import type { RunFindings } from "../planning/run-findings.ts";
import type { SolveProgressReport } from "./solve-runner.ts";

export type RunState = "queued" | "running" | "done" | "stopped" | "failed";

/** What a planner may hold to be worth more than the rest, each a price of the plant or several. */
export type Concern = "lateness" | "changes" | "overtime" | "calm";

/** What a run is to find out. */
export type RunTask =
  /** One plan, which becomes the working plan; `favour` counts for more than its price, null: prices as they are. */
  | { readonly kind: "plan"; readonly favour: Concern | null }
  /** What would help a late order of a plan. */
  | { readonly kind: "remedies"; readonly planId: string; readonly orderId: string }
  /** Several plans, no one of which beats another. */
  | { readonly kind: "trade-off" }
  /** What some scenarios come to, beside the plan without their changes. */
  | { readonly kind: "scenarios"; readonly scenarioIds: readonly string[] }
  /** Which single changes of plant or orders would help most. */
  | { readonly kind: "help" };

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
  readonly task: RunTask;
  readonly params: RunParams;
  readonly stopRequested: boolean;
  /** Number of the provisional plan that a stop is to keep; null: the best at the end. */
  readonly keep: number | null;
  readonly requestedAt: number;
  readonly requestedBy: string;
  readonly startedAt: number | null;
  readonly endedAt: number | null;
  readonly progress: SolveProgressReport | null;
  readonly curve: readonly CurvePoint[];
  readonly planId: string | null;
  /** What a run came to that makes no working plan by itself; null before its end, and for a plan. */
  readonly findings: RunFindings | null;
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
