import type { Plan, PlanEdit, ProblemEdit, TradeOff } from "@formweek/scheduler";
import type { HoursEdit } from "./plan-edit.ts";
import type { ScenarioChange } from "../scenarios/scenario-change.ts";
import type { TurnedOrder } from "../scenarios/turned-orders.ts";
import type { PlanFigures } from "./plan-figures.ts";

/** Which inputs a run looked at: what it found holds for these alone. */
export interface FoundFor {
  /** As a plan's document has it. */
  readonly inputHash: string;
  /** Instant at which the problem was put together, seconds: matters where the plant fixes no planning start. */
  readonly at: number;
}

/** A plan as the engine takes it up again: by its lots and their turns. */
export type PlanSketch = Pick<Plan, "lots" | "unplanned" | "objective">;

/** What would be done. */
export type RemedyAction =
  /** A change of the plan by hand. */
  | { readonly kind: "edit"; readonly edit: PlanEdit }
  /** Nothing but searching on from the plan. */
  | { readonly kind: "plan on" }
  /** Hours are added to the plant's, and the plan is made for them. */
  | { readonly kind: "hours"; readonly edit: HoursEdit }
  /** A change of plant or order that people have to make. */
  | { readonly kind: "change"; readonly edit: ProblemEdit };

/** One thing that helps, really timed or planned, with what came of it. */
export interface FoundRemedy {
  readonly action: RemedyAction;
  readonly after: PlanFigures;
  /** Seconds by which the order is still late; null: it would not be planned. */
  readonly orderLateSeconds: number | null;
  /** The plan that came of it; null where the action itself makes the plan. */
  readonly sketch: PlanSketch | null;
}

/** What would help one late order: what the plan alone can give first, then what changes plant or order; the cheapest plan first of each. */
export interface RemedyFindings extends FoundFor {
  readonly kind: "remedies";
  readonly planId: string;
  readonly orderId: string;
  readonly before: PlanFigures;
  readonly orderLateSeconds: number | null;
  /** How many things were tried. */
  readonly tried: number;
  readonly remedies: readonly FoundRemedy[];
}

/** One of several plans no one of which beats another. */
export interface TradedPlan {
  readonly figures: PlanFigures;
  /** Money by criterion, as `TradeOffFindings.criteria` has them. */
  readonly values: readonly number[];
  readonly leastIn: TradeOff["criteria"];
  readonly sketch: PlanSketch;
}

export interface TradeOffFindings extends FoundFor {
  readonly kind: "trade-off";
  readonly criteria: TradeOff["criteria"];
  /** The cheapest at the plant's own prices first. */
  readonly plans: readonly TradedPlan[];
}

/** Which scenarios a run has worked out; what they came to stands with them. */
export interface ScenarioFindings {
  readonly kind: "scenarios";
  readonly scenarioIds: readonly string[];
}

/** A single change with what it alone would do. */
export interface TriedChange {
  readonly change: ScenarioChange;
  readonly with: PlanFigures;
  readonly turned: readonly TurnedOrder[];
}

export interface HelpFindings {
  readonly kind: "help";
  /** Planned on for as long without any change. */
  readonly without: PlanFigures;
  readonly tried: number;
  /** Those that help, the cheapest plan first. */
  readonly changes: readonly TriedChange[];
}

/** What a run found that has plans to choose from. */
export type ChoosableFindings = RemedyFindings | TradeOffFindings;

export type RunFindings = ChoosableFindings | ScenarioFindings | HelpFindings;

export function sketchOf({ lots, unplanned, objective }: Plan): PlanSketch {
  return { lots, unplanned, objective };
}

/** A sketch as the engine's edits take it; they time its segments themselves. */
export function planOfSketch(sketch: PlanSketch): Plan {
  return { ...sketch, segments: [] };
}
