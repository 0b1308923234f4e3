import type { BoardPlan } from "../kernels/board-plan.ts";
import type { RowChoice } from "../kernels/board-rows.ts";
import { everything, type PlanFilter } from "../kernels/plan-filter.ts";
import type { BoardHit } from "../kernels/hit-test.ts";
import type { BoardSize } from "../kernels/row-layout.ts";
import type { TimeView } from "../kernels/time-scale.ts";

/**
 * What the details panel tells about. A segment is named by its position in the plan, with the row it was reached in
 * where it lies in several; a gap by its row and bounds.
 */
export type Selection =
  | { readonly kind: "segment"; readonly index: number; readonly rowIndex?: number }
  | { readonly kind: "gap"; readonly rowIndex: number; readonly start: number; readonly end: number }
  | { readonly kind: "order"; readonly orderId: string };

/** Everything that the board shows apart from the clock and the theme. */
export interface BoardState {
  readonly plan: BoardPlan | null;
  readonly size: BoardSize;
  readonly view: TimeView & { readonly scrollPx: number };
  readonly rowChoice: RowChoice;
  readonly filter: PlanFilter;
  readonly selection: Selection | null;
  readonly hover: BoardHit | null;
}

export const emptyBoard: BoardState = {
  plan: null,
  size: { widthPx: 0, heightPx: 0 },
  view: { startAt: 0, secondsPerPx: 240, scrollPx: 0 },
  rowChoice: "lines",
  filter: everything,
  selection: null,
  hover: null,
};
