import type { ChangeSegment, MouldCopy, Plan, UnplannedReason } from "../plan/plan.ts";
import type { ProblemFault } from "../result.ts";

/** What a plan that stands can promise for one more order. All instants are epoch seconds. */
export type PromiseAnswer =
  | { readonly status: "promised"; readonly promise: PromisedRun }
  | {
      readonly status: "refused";
      /** At least one; the order's own refusals are among them. */
      readonly reasons: readonly PromiseRefusal[];
      readonly decodes: number;
    }
  | { readonly status: "faulty-order"; readonly faults: readonly ProblemFault[] };

/** The place at which the new order finishes earliest. */
export interface PromisedRun {
  readonly orderId: string;
  readonly lineId: string;
  readonly setupId: string;
  readonly mould: MouldCopy | null;
  /** Runs before it on its line. */
  readonly position: number;
  readonly start: number;
  readonly end: number;
  /** End plus conditioning: what can be promised. */
  readonly finish: number;
  /** The change that serves it; null where none is needed. */
  readonly changeBefore: ChangeSegment | null;
  /** The change that serves the next run of its line. */
  readonly changeAfter: ChangeSegment | null;
  /** Runs that start or end at another time than before, all within their promises; by start. */
  readonly moved: readonly MovedRun[];
  /** Places, each a line × set-up × position, that the order may have. */
  readonly places: number;
  /** Places that were timed under all rules; the others cannot be better. */
  readonly decodes: number;
  /** The plan with the order in it, made when it is asked for. */
  readonly plan: () => Plan;
}

export interface MovedRun {
  readonly orderId: string;
  /** 0-based */
  readonly lot: number;
  readonly lineId: string;
  readonly startBefore: number;
  readonly start: number;
  readonly endBefore: number;
  readonly end: number;
}

/** Why a line cannot take the order. `delays-another`: it could run there, but `orderId` would miss its promise, at the end of the line as before all others. */
export type PromiseRefusal =
  | UnplannedReason
  | {
      readonly code: "delays-another";
      readonly lineId: string;
      readonly setupId: string;
      readonly orderId: string;
      readonly text: string;
    };
