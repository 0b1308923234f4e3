import type { PlanDocument } from "../planning/plan-document.ts";
import type { HandEdit } from "../planning/plan-edit.ts";

/** What made a plan: a planning run, or a change by hand of an earlier plan. */
export type PlanMaking =
  | { readonly runId: string; readonly parentId: null; readonly edit: null }
  | { readonly runId: null; readonly parentId: string; readonly edit: HandEdit };

interface PlanFacts {
  readonly id: string;
  readonly plantId: string;
  readonly createdAt: number;
  readonly engineVersion: string;
  readonly seed: number;
  readonly steps: number;
  readonly summary: PlanDocument["summary"];
}

/** A plan without its segments. */
export type PlanHead = PlanFacts & PlanMaking;

/** Plans are written once and never changed. */
export type StoredPlan = PlanHead & { readonly document: PlanDocument };

export interface PlanRepository {
  /** Insert once per run: returns the id of the plan that stands for `plan.runId`, this one or the one saved earlier. A plan by hand is always inserted. */
  readonly insertOnce: (plan: StoredPlan) => Promise<string>;
  readonly get: (plantId: string, planId: string) => Promise<StoredPlan | null>;
  /** Newest first, at most `limit`. */
  readonly list: (plantId: string, limit: number) => Promise<readonly PlanHead[]>;
}
