import type { Plan, ProblemData, SolveParams, SolveResult } from "@formweek/scheduler";

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
  /**
   * Threads that carry the searches. Where `params.members` is absent there are as many searches as threads; where it is given,
   * threads change only the time it takes, and a step budget gives the same plan with any number of them.
   */
  readonly threads: number;
  /** Called at most a few times a second. */
  readonly onProgress: (progress: SolveProgressReport) => void;
  /**
   * Called with the best plan so far, audited, each better than the one before; at most once a second, and seldomer where making
   * a plan takes longer. Absent: no plan is made on the way.
   */
  readonly onBetterPlan?: (plan: Plan) => void;
  /** Abort ends the search early; the promise still resolves, with the best plan so far where there is one. */
  readonly signal: AbortSignal;
}

/** Runs the scheduler off the event loop. Rejects only when a thread dies or the engine throws (a bug). */
export interface SolveRunner {
  readonly solve: (task: SolveTask) => Promise<SolveResult>;
}
