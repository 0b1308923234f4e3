import type { PlanEdit } from "@formweek/contracts";
import type { BoardPlan } from "../kernels/board-plan.ts";
import type { RowChoice } from "../kernels/board-rows.ts";
import type { PlaceStep } from "../kernels/drop-place.ts";
import type { BoardHit, BoardPoint } from "../kernels/hit-test.ts";
import type { RefusedLines } from "../kernels/refused-lines.ts";
import type { Trial } from "../kernels/trial.ts";
import type { PlanFilter } from "../kernels/plan-filter.ts";
import type { WalkStep } from "../kernels/walk-segments.ts";
import type { BoardSize, Density } from "../kernels/row-layout.ts";
import type { TimeView } from "../kernels/time-scale.ts";
import type { BoardAddress, Selection } from "./board-state.ts";

/** Everything that can happen to the board. Places are CSS pixels within the canvas. */
export type Intent =
  /** `isProvisional`: it is the best so far of a run that goes on. */
  | { readonly kind: "plan arrived"; readonly plan: BoardPlan | null; readonly isProvisional?: boolean }
  /** The best plan so far of a run, or the working plan again. */
  | { readonly kind: "other plan sought" }
  | { readonly kind: "board resized"; readonly size: BoardSize }
  | { readonly kind: "density chosen"; readonly density: Density }
  | { readonly kind: "panned"; readonly byX: number; readonly byY: number }
  | { readonly kind: "zoomed"; readonly atX: number | null; readonly factor: number }
  | { readonly kind: "span chosen"; readonly spanSeconds: number | "whole plan" }
  | { readonly kind: "went to instant"; readonly at: number }
  | { readonly kind: "view restored"; readonly view: TimeView }
  | { readonly kind: "pointed at"; readonly hit: BoardHit | null }
  | { readonly kind: "picked"; readonly hit: BoardHit }
  | { readonly kind: "selected"; readonly selection: Selection | null }
  /** The line of what is selected; the first one where nothing is. */
  | { readonly kind: "line sought" }
  | { readonly kind: "order sought"; readonly orderId: string }
  | { readonly kind: "walked"; readonly step: WalkStep }
  | { readonly kind: "rows chosen"; readonly choice: RowChoice }
  | { readonly kind: "filtered"; readonly by: Partial<PlanFilter> }
  | { readonly kind: "address opened"; readonly address: BoardAddress }
  | { readonly kind: "fit arrived"; readonly refused: RefusedLines }
  | { readonly kind: "taken up"; readonly index: number; readonly point: BoardPoint }
  | { readonly kind: "selected taken up" }
  | { readonly kind: "carried to"; readonly point: BoardPoint }
  | { readonly kind: "carried on"; readonly step: PlaceStep }
  | { readonly kind: "let go" }
  | { readonly kind: "given up" }
  | { readonly kind: "tried"; readonly edit: PlanEdit; readonly trial: Trial }
  /** The plan that stands now by the server's answer; null: the edit was refused. */
  | { readonly kind: "edit answered"; readonly planId: string | null };

/** What is to be done outside the board after an intent. */
export type Effect =
  | { readonly kind: "keep view"; readonly view: TimeView }
  /** Show the best plan so far of a run, or the working plan again. */
  | { readonly kind: "show other plan" }
  /** Say that the plan on the board is not changed by hand. */
  | { readonly kind: "tell not taken" }
  /** Find out what an edit would come to, and tell by the intent "tried". */
  | { readonly kind: "try edit"; readonly edit: PlanEdit }
  /** Have the edit done, and tell by "edit answered". */
  | { readonly kind: "ask for edit"; readonly edit: PlanEdit };

export interface Reduction<State> {
  readonly state: State;
  readonly effects: readonly Effect[];
}
