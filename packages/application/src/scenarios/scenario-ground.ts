import type { TimeWindow } from "@formweek/capacity-model";
import type { FrozenPlan } from "../planning/frozen-plan.ts";
import { planWindow } from "../planning/plan-window.ts";
import type { PlanningSnapshot } from "../planning/planning-snapshot.ts";
import { type FrozenRun, frozenRunsOf } from "./frozen-runs.ts";

/** What changes are held against. */
export interface ScenarioGround {
  readonly snapshot: PlanningSnapshot;
  /** In which plans are made: what lies outside it changes nothing that can be seen. */
  readonly horizon: TimeWindow;
  readonly frozenRuns: readonly FrozenRun[];
}

interface Records {
  readonly snapshot: PlanningSnapshot;
  /** Null: nothing is frozen. */
  readonly frozen: FrozenPlan | null;
  /** Instant, seconds. */
  readonly now: number;
}

/** What changes are held against in a plan that is made now. */
export function groundOf({ snapshot, frozen, now }: Records): ScenarioGround {
  const horizon = planWindow(snapshot.plant, now);
  return { snapshot, horizon, frozenRuns: frozenRunsOf(frozen, horizon.start) };
}
