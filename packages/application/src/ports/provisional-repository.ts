import type { PlanDocument } from "../planning/plan-document.ts";

/** A provisional plan apart from what is in it. */
export interface ProvisionalHead {
  /** Counts up by one in its run, from 1. */
  readonly number: number;
  /** Instant, seconds. */
  readonly foundAt: number;
}

/** The best plan that a run has found so far. It is nobody's plan yet: it goes with the end of the run. */
export interface ProvisionalPlan extends ProvisionalHead {
  readonly document: PlanDocument;
}

export interface ProvisionalRepository {
  /** Puts it in the place of the run's earlier one; false, and nothing written, unless the run is running and not told to stop. */
  readonly put: (runId: string, plan: ProvisionalPlan) => Promise<boolean>;
  readonly head: (runId: string) => Promise<ProvisionalHead | null>;
  readonly get: (runId: string) => Promise<ProvisionalPlan | null>;
  readonly forget: (runId: string) => Promise<void>;
}
