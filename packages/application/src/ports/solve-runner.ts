import type { ProblemData, SolveParams, SolveResult } from "@formweek/scheduler";

/** Progress of a solve as it crosses the thread: numbers only. */
export interface SolveProgressReport {
  /** 0…1 of the budget. */
  readonly share: number;
  readonly steps: number;
  readonly elapsedMs: number;
  readonly bestTotal: number;
  readonly lateOrders: number;
}

export interface SolveTask {
  readonly problem: ProblemData;
  readonly params: SolveParams;
  /** Searches side by side, each with its own seed derived from `params.seed`; the best plan wins, ties to the lowest seed. 1 is reproducible by step budget. */
  readonly threads: number;
  /** Called at most a few times a second. */
  readonly onProgress: (progress: SolveProgressReport) => void;
  /** Abort ends the search early; the promise still resolves with the best plan so far. */
  readonly signal: AbortSignal;
}

/** Runs the scheduler off the event loop. Rejects only when a thread dies or the engine throws (a bug). */
export interface SolveRunner {
  readonly solve: (task: SolveTask) => Promise<SolveResult>;
}
