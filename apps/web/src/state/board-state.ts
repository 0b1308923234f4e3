import type { LotName, PlanEdit } from "@formweek/contracts";
import type { BoardPlan } from "../kernels/board-plan.ts";
import type { RowChoice } from "../kernels/board-rows.ts";
import type { DropPlace } from "../kernels/drop-place.ts";
import { everything, type PlanFilter } from "../kernels/plan-filter.ts";
import type { BoardHit, BoardPoint } from "../kernels/hit-test.ts";
import type { BoardSize, Density } from "../kernels/row-layout.ts";
import type { RefusedLines } from "../kernels/refused-lines.ts";
import type { TimeView } from "../kernels/time-scale.ts";
import type { Trial } from "../kernels/trial.ts";

/**
 * What the details panel tells about. A segment is named by its position in the plan, with the row it was reached in
 * where it lies in several; a gap by its row and bounds; a line by its id, with which it outlives the plan.
 */
export type Selection =
  | { readonly kind: "segment"; readonly index: number; readonly rowIndex?: number }
  | { readonly kind: "gap"; readonly rowIndex: number; readonly start: number; readonly end: number }
  | { readonly kind: "order"; readonly orderId: string }
  | { readonly kind: "line"; readonly lineId: string };

/** A lot on its way to another place. */
export interface Carry {
  readonly lot: LotName;
  /** Position in the standing plan of the stretch that it was taken up by. */
  readonly index: number;
  /** Where the pointer holds it, CSS pixels of the canvas; null: the keyboard moves it. */
  readonly point: BoardPoint | null;
  readonly place: DropPlace;
  /** What the place would come to; null: not known yet, or it is the place where the lot lies. */
  readonly trial: Trial | null;
}

/** An edit that the server has been asked for, with the plan as it will be where that is known. */
export interface PendingEdit {
  readonly edit: PlanEdit;
  readonly plan: BoardPlan | null;
}

/** Everything that the board shows apart from the clock and the theme. */
export interface BoardState {
  readonly plan: BoardPlan | null;
  /** The plan is the best so far of a run that goes on: it is looked at, not changed. */
  readonly isProvisional: boolean;
  readonly size: BoardSize;
  readonly density: Density;
  readonly view: TimeView & { readonly scrollPx: number };
  /** Stretch that an address asked for: kept over changes of size until someone moves the view or selects. */
  readonly heldTime: TimeStretch | null;
  readonly rowChoice: RowChoice;
  readonly filter: PlanFilter;
  readonly selection: Selection | null;
  readonly hover: BoardHit | null;
  /** Which lines refuse which product; empty until it is known. */
  readonly refused: RefusedLines;
  /** The lot that is being carried to another place. */
  readonly carry: Carry | null;
  /** The edit that the server has been asked for. */
  readonly pending: PendingEdit | null;
}

/** A stretch of time, seconds. */
export interface TimeStretch {
  readonly startAt: number;
  readonly spanSeconds: number;
}

/** What a page's address asks of the board. */
export interface BoardAddress {
  readonly filter: PlanFilter;
  readonly rowChoice: RowChoice;
  /** The order to select; null: none. */
  readonly orderId: string | null;
  /**
   * What time to show: a stretch and not a scale, so that other screens show the same; null: that of the selected order;
   * "as shown": the view that the board has.
   */
  readonly time: TimeStretch | "as shown" | null;
}

export const emptyBoard: BoardState = {
  plan: null,
  isProvisional: false,
  size: { widthPx: 0, heightPx: 0 },
  density: "roomy",
  view: { startAt: 0, secondsPerPx: 240, scrollPx: 0 },
  heldTime: null,
  rowChoice: "lines",
  filter: everything,
  selection: null,
  hover: null,
  refused: new Map(),
  carry: null,
  pending: null,
};
