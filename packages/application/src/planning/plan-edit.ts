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

/** A plan that a run found beside others was chosen; `orderId`: the late order that it was to help, null where there was none. */
export interface PlanChoice {
  readonly kind: "choose";
  readonly runId: string;
  /** Place among the run's findings, from 0. */
  readonly place: number;
  readonly orderId: string | null;
}

/** Capacity was held for a customer, given back, or became an order; orders by what they are called in the plan before it. */
export type HoldChange =
  | { readonly kind: "hold"; readonly orderId: string; readonly customer: string }
  | {
      readonly kind: "end holds";
      readonly orderIds: readonly string[];
      readonly state: "released" | "expired";
    }
  | { readonly kind: "order hold"; readonly orderId: string; readonly orderNumber: string };

/** The changes of a scenario were made in plant and book, and the plan for them is worked on. */
export interface ScenarioAdoption {
  readonly kind: "adopt";
  readonly scenarioId: string;
  /** Of the scenario. */
  readonly name: string;
}

/** What a person did between two plans: to the plan, to the hours in which it runs, a choice of another, a hold, or a scenario. */
export type HandEdit = PlanEdit | HoursEdit | PlanChoice | HoldChange | ScenarioAdoption;
