import type { PlanBound } from "./bound/bound.ts";
import type { Plan } from "./plan/plan.ts";

/** Outcome of a solve. A plan that the audit refuses is never handed out: `rejected` carries the violations instead. */
export type SolveResult =
  | {
      readonly status: "planned";
      readonly plan: Plan;
      /** What no plan of the problem can go below; all 0 where a cancel came before it was known. */
      readonly bound: PlanBound;
      readonly stopped: StopReason;
      readonly statistics: SolveStatistics;
    }
  /** Cancelled before there was a first plan that the audit has seen, which only happens on large problems. */
  | { readonly status: "cancelled" }
  | { readonly status: "faulty-problem"; readonly faults: readonly ProblemFault[] }
  | {
      readonly status: "rejected";
      readonly violations: readonly Violation[];
      readonly statistics: SolveStatistics;
    };

/** A solve that has a plan. */
export type PlannedResult = Extract<SolveResult, { readonly status: "planned" }>;

/** A solve without a plan, and why. */
export type SolveRefusal = Exclude<SolveResult, PlannedResult>;

export type StopReason = "steps" | "time" | "cancelled" | "optimal";

export interface SolveStatistics {
  readonly steps: number;
  readonly evaluations: number;
  readonly elapsedMs: number;
  readonly firstPlanMs: number;
  readonly firstTotal: number;
  readonly bestTotal: number;
}

/** Something in the input that no plan could respect. */
export interface ProblemFault {
  readonly code: string;
  readonly subject: string;
  readonly text: string;
  readonly remedy: string;
}

/** One broken rule found by the audit; `rule` is the number of the validity rule (1–9, 0 for a malformed plan). */
export interface Violation {
  readonly rule: number;
  readonly code: string;
  readonly lineId: string | null;
  readonly orderId: string | null;
  readonly at: number | null;
  readonly text: string;
}
