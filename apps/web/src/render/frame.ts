import type { FitRefusal, LotName } from "@formweek/contracts";
import type { BoardPlan, BoardSegment } from "../kernels/board-plan.ts";
import type { BoardRow, BoardRows } from "../kernels/board-rows.ts";
import type { DropPlace } from "../kernels/drop-place.ts";
import type { BoardHit, BoardPoint } from "../kernels/hit-test.ts";
import type { RowLayout } from "../kernels/row-layout.ts";
import type { DayMark, TimeMark } from "../kernels/time-marks.ts";
import type { TimeView } from "../kernels/time-scale.ts";
import type { Palette } from "./palette.ts";

/** Words and figures that the drawing puts on the board, in the reader's language. */
export interface BoardWords {
  readonly day: (mark: DayMark, widthPx: number) => string;
  readonly week: (mark: DayMark) => string;
  readonly pieces: (count: number) => string;
  /** Name of a row and, below it, how much its resource is used. */
  readonly rowLabel: (row: BoardRow) => { readonly name: string; readonly shortName: string };
  readonly rowUse: (row: BoardRow) => string;
  /** The line that a segment is on. */
  readonly line: (segment: BoardSegment) => string;
  /** A segment in one sentence, for who cannot see it. */
  readonly piece: (segment: BoardSegment) => string;
  readonly hours: (seconds: number) => string;
  readonly late: (seconds: number) => string;
  readonly extraShift: (name: string) => string;
  readonly stop: (reason: "closed" | "operators" | "warm-up" | "service") => string;
  readonly refused: (reason: FitRefusal) => string;
  readonly now: string;
  /** Until when published runs stay, in words. */
  readonly frozen: (until: number) => string;
}

/** A lot that is carried, as it is drawn. */
export interface CarriedLot {
  readonly lot: LotName;
  /** Position of the stretch that it was taken up by, in the standing plan. */
  readonly index: number;
  readonly point: BoardPoint | null;
  readonly place: DropPlace;
  /** The plan that it was taken from; the frame's own is as it would be, where that is known. */
  readonly standing: BoardPlan;
  /** Lines that it does not fit, with the reason. */
  readonly refused: ReadonlyMap<string, FitRefusal>;
}

/** Everything that one picture of the board is made from. Drawing reads it and nothing else. */
export interface Frame {
  readonly plan: BoardPlan;
  readonly rows: BoardRows;
  readonly layout: RowLayout;
  readonly view: TimeView & { readonly scrollPx: number };
  readonly palette: Palette;
  readonly words: BoardWords;
  readonly days: readonly DayMark[];
  readonly shifts: readonly TimeMark[];
  /** Now, seconds since the epoch. */
  readonly now: number;
  /** Until when the published runs stay, seconds since the epoch; null: none does. */
  readonly frozenUntil: number | null;
  /** Orders that the filter keeps; null: all. */
  readonly kept: ReadonlySet<string> | null;
  /** Orders that are held: their runs carry a lock. */
  readonly held: { readonly has: (orderId: string) => boolean };
  /** Orders that are held for a customer: their runs carry a tag. */
  readonly promised: { readonly has: (orderId: string) => boolean };
  readonly hover: BoardHit | null;
  readonly carry: CarriedLot | null;
  readonly selectedIndex: number | null;
  readonly selectedOrderId: string | null;
  /** The line that is chosen by its name; null in a picture, where none can be. */
  readonly lineChoice: { readonly lineId: string | null } | null;
  readonly selectedGap: { readonly rowIndex: number; readonly start: number; readonly end: number } | null;
  /** The board has the keyboard's focus: the selection is ringed. */
  readonly isFocused: boolean;
}
