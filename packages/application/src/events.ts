import type { HoldState } from "./ports/hold-repository.ts";
import type { SolveProgressReport } from "./ports/solve-runner.ts";

/** What happened in a plant, apart from when and in which order. */
export type PlantEventBody =
  | { readonly type: "plan-saved"; readonly planId: string; readonly runId: string }
  | {
      readonly type: "solve-ended";
      readonly runId: string;
      readonly state: "done" | "stopped" | "failed";
      readonly planId: string | null;
    }
  | { readonly type: "orders-changed"; readonly revision: number }
  | { readonly type: "pins-changed"; readonly revision: number }
  | {
      readonly type: "holds-changed";
      readonly revision: number;
      readonly holdId: string;
      readonly state: HoldState;
    }
  /** The list of scenarios, or what one of them came to, is another. */
  | { readonly type: "scenarios-changed" }
  | { readonly type: "working-plan-changed"; readonly revision: number; readonly planId: string }
  | { readonly type: "plant-changed"; readonly revision: number };

/** A stored event. `sequence` counts up by one from 1 in each plant. */
export interface PlantEvent {
  readonly plantId: string;
  readonly sequence: number;
  /** Instant, seconds. */
  readonly at: number;
  readonly body: PlantEventBody;
}

/** A run has found a better plan than it had; passes by, is not stored, has no sequence. */
export interface BetterPlanEvent {
  readonly plantId: string;
  readonly sequence: null;
  readonly at: number;
  readonly body: {
    readonly type: "better-plan";
    readonly runId: string;
    /** Of the provisional plan. */
    readonly number: number;
  };
}

/** Progress of a solve; passes by, is not stored, has no sequence. */
export interface SolveProgressEvent {
  readonly plantId: string;
  readonly sequence: null;
  readonly at: number;
  readonly body: {
    readonly type: "solve-progress";
    readonly runId: string;
    readonly state: "queued" | "running";
    readonly progress: SolveProgressReport | null;
  };
}
