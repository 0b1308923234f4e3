import type { BoardPlan } from "../kernels/board-plan.ts";
import type { RowChoice } from "../kernels/board-rows.ts";
import type { BoardHit } from "../kernels/hit-test.ts";
import type { WalkStep } from "../kernels/walk-segments.ts";
import type { BoardSize } from "../kernels/row-layout.ts";
import type { TimeView } from "../kernels/time-scale.ts";
import type { Selection } from "./board-state.ts";

/** Everything that can happen to the board. Places are CSS pixels within the canvas. */
export type Intent =
  | { readonly kind: "plan arrived"; readonly plan: BoardPlan | null }
  | { readonly kind: "board resized"; readonly size: BoardSize }
  | { readonly kind: "panned"; readonly byX: number; readonly byY: number }
  | { readonly kind: "zoomed"; readonly atX: number | null; readonly factor: number }
  | { readonly kind: "span chosen"; readonly spanSeconds: number | "whole plan" }
  | { readonly kind: "went to instant"; readonly at: number }
  | { readonly kind: "view restored"; readonly view: TimeView }
  | { readonly kind: "pointed at"; readonly hit: BoardHit | null }
  | { readonly kind: "picked"; readonly hit: BoardHit }
  | { readonly kind: "selected"; readonly selection: Selection | null }
  | { readonly kind: "order sought"; readonly orderId: string }
  | { readonly kind: "walked"; readonly step: WalkStep }
  | { readonly kind: "rows chosen"; readonly choice: RowChoice }
  | { readonly kind: "late filter set"; readonly onlyLate: boolean }
  | { readonly kind: "find text set"; readonly text: string };

/** What is to be done outside the board after an intent. */
export interface Effect {
  readonly kind: "keep view";
  readonly view: TimeView;
}

export interface Reduction<State> {
  readonly state: State;
  readonly effects: readonly Effect[];
}
