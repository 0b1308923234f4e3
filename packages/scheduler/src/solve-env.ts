import type { Plan } from "./plan/plan.ts";

/** All that is ambient, as arguments: the engine has no clock, no global random and no I/O. */
export interface SolveEnv {
  /** Milliseconds from any fixed origin; used for time budgets only, never for choices of the search. */
  readonly monotonicMs: () => number;
  readonly isCancelled: () => boolean;
  readonly onProgress: (progress: SolveProgress) => void;
}

export interface SolveProgress {
  readonly steps: number;
  readonly elapsedMs: number;
  /** 0…1 of the budget. */
  readonly share: number;
  readonly bestTotal: number;
  readonly lateOrders: number;
  /** Best plan so far, made and audited on demand; null where a cancel comes first, or the audit refuses it. */
  readonly bestPlan: () => Plan | null;
}

/** At least one budget is set; the first one reached ends the search. A step budget alone makes the result reproducible. */
export interface SolveParams {
  readonly seed: number;
  /** Steps of each member. */
  readonly maxSteps: number | null;
  readonly maxMs: number | null;
  /**
   * Searches side by side that exchange their best plans, each with a seed of its own (the given one and those after it) and
   * a strategy; absent: one. The plan of a step budget depends on it, not on the threads that carry the members.
   */
  readonly members?: number;
  /**
   * Plan to go on from, of the same problem or of one that has changed a little; absent: the search constructs its own.
   * The result is never dearer than what the given plan comes to under the problem.
   */
  readonly startFrom?: Plan;
}
