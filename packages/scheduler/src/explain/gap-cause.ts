import type { LotName } from "../edit/plan-edit.ts";
import type { RootCause } from "./late-chain.ts";

/** What an idle line waits for. */
export type GapCause =
  | { readonly kind: "line closed"; readonly lineId: string }
  | { readonly kind: "no operators"; readonly lineId: string; readonly poolId: string }
  /** The line closes so soon that warming up again after the stop would cost more than the run would make before it. */
  | { readonly kind: "stop too near"; readonly lineId: string }
  | { readonly kind: "setters off"; readonly teamId: string }
  /** The team is at a change on another line. */
  | { readonly kind: "setters busy"; readonly teamId: string; readonly lineId: string }
  | { readonly kind: "trolley busy"; readonly trolleyId: string; readonly lineId: string }
  /** The copy hangs on another line, last for that lot where one ran with it. */
  | {
      readonly kind: "mould elsewhere";
      readonly mouldId: string;
      readonly copy: number;
      readonly lineId: string;
      readonly lot: LotName | null;
    }
  | { readonly kind: "mould carried"; readonly mouldId: string; readonly copy: number }
  /** Nothing stands against it but the plan's own sequence of steps. */
  | { readonly kind: "other work first"; readonly lineId: string }
  | RootCause;

/** [from, to) of a gap and what the line waits for then. */
export interface GapStretch {
  readonly from: number;
  readonly to: number;
  readonly cause: GapCause;
}

/** A spell [from, to) in which a line does nothing, instants in seconds since the epoch. */
export interface IdleGap {
  readonly lineId: string;
  readonly from: number;
  readonly to: number;
  /** The lot that the line waits to make; null where nothing more is planned on it. */
  readonly next: LotName | null;
  /** Fill the gap without overlap, in order of time: what holds the step that comes next. Empty without a next lot. */
  readonly stretches: readonly GapStretch[];
  /** What would hold it too, though not as long: until when each, the last one first. */
  readonly besides: readonly { readonly cause: GapCause; readonly until: number }[];
  /**
   * Without a next lot: orders that the line could make but that begin on other lines after `from`, or that are not planned; the most
   * late first, unplanned ones before them.
   */
  readonly couldRunHere: readonly string[];
}
