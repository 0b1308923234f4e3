import type { PlanDocument } from "../planning/plan-document.ts";

/** A plan without its segments. */
export interface PlanHead {
  readonly id: string;
  readonly plantId: string;
  /** Run that made it. */
  readonly runId: string;
  readonly createdAt: number;
  readonly engineVersion: string;
  readonly seed: number;
  readonly steps: number;
  readonly summary: PlanDocument["summary"];
}

/** Plans are written once and never changed. */
export interface StoredPlan extends PlanHead {
  readonly document: PlanDocument;
}

export interface PlanRepository {
  /** Insert once per run: returns the id of the plan that stands for `plan.runId`, this one or the one saved earlier. */
  readonly insertOnce: (plan: StoredPlan) => Promise<string>;
  readonly get: (plantId: string, planId: string) => Promise<StoredPlan | null>;
  /** The newest by (createdAt, id); null when there is none. */
  readonly latest: (plantId: string) => Promise<StoredPlan | null>;
  /** Newest first, at most `limit`. */
  readonly list: (plantId: string, limit: number) => Promise<readonly PlanHead[]>;
}
