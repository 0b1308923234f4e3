import type { OrderTerms } from "../commands/order-changes.ts";
import type { HoursEdit } from "../planning/plan-edit.ts";

/** One more setter team beside another, for a spell. Instants, seconds. */
export interface ExtraTeam {
  readonly kind: "another team";
  /** As many setters come as this team has. */
  readonly likeTeamId: string;
  readonly name: string;
  readonly from: number;
  readonly to: number;
}

/** A mould runs at so many cycles a minute on a line, whatever it makes. */
export interface CycleRate {
  readonly kind: "cycle rate";
  readonly lineId: string;
  readonly mouldId: string;
  readonly cyclesPerMin: number;
}

/** One change of plant or orders that is thought through; nothing is changed by it until its scenario is adopted. */
export type ScenarioChange =
  | Extract<HoursEdit, { readonly kind: "close line" | "add shift" }>
  | { readonly kind: "more copies"; readonly mouldId: string; readonly more: number }
  | ExtraTeam
  | CycleRate
  | { readonly kind: "cancel order"; readonly orderId: string }
  | { readonly kind: "rush order"; readonly order: OrderTerms }
  | {
      readonly kind: "change order";
      readonly orderId: string;
      /** Null: as it is. */
      readonly pieces: number | null;
      /** Instant, seconds; null: as it is. */
      readonly dueAt: number | null;
    };
