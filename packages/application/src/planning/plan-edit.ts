import type { PlanEdit } from "@formweek/scheduler";

export type { PlanEdit } from "@formweek/scheduler";

/** A spell in which one line stands, by the plant's clock. */
export interface LineClosing {
  readonly lineId: string;
  readonly from: string;
  readonly to: string;
  readonly reason: string;
}

/** A shift worked once by the lines and people that it names, by the plant's clock. */
export interface ShiftAdded {
  readonly date: string;
  readonly name: string;
  readonly start: string;
  readonly end: string;
  readonly breaks: readonly { readonly start: string; readonly end: string }[];
  readonly lineIds: readonly string[];
  readonly teamIds: readonly string[];
  readonly operators: readonly { readonly poolId: string; readonly heads: number }[];
}

/** One change of the plant's hours by hand. Each has an inverse that names the same record. */
export type HoursEdit =
  | { readonly kind: "close line"; readonly closure: LineClosing }
  | { readonly kind: "open line"; readonly closure: LineClosing }
  | { readonly kind: "add shift"; readonly shift: ShiftAdded }
  | { readonly kind: "take shift back"; readonly shift: ShiftAdded };

/** What a person did between two plans: to the plan, or to the hours in which it runs. */
export type HandEdit = PlanEdit | HoursEdit;
