import type { ChangeSegment, MouldCopy, ObjectiveBreakdown, Plan, UnplannedReason } from "../plan/plan.ts";
import type { Job, ProblemData } from "../problem/problem-data.ts";
import type { ProblemFault } from "../result.ts";
import type { FaultySimulation, Simulation, SimulationParams } from "../simulate/simulation.ts";
import type { Work } from "../work/work.ts";

/**
 * A plan that stands, ready to be asked for one order more. A desk never changes: taking a promise as standing gives another one. All
 * instants are epoch seconds. The order's due date is its wanted day: lateness is priced against it.
 */
export interface OpenDesk {
  readonly status: "open";
  /** The plan's problem, with the orders held since. */
  readonly problem: ProblemData;
  /** What the plan costs. */
  readonly objective: ObjectiveBreakdown;
  /** Runs that lie elsewhere than in the plan given, where its problem has changed since; by start. */
  readonly retimed: readonly MovedRun[];
  /** By when an order must be finished here, and when it is; null for one that the plan does not make. */
  readonly limitOf: (orderId: string) => OrderLimit | null;
  /** The plan as it stands, made when it is asked for. */
  readonly plan: () => Plan;
  /** The earliest finish of the order in one lot. */
  readonly promise: (order: Job) => PromiseAnswer;
  /** The same in two lots on two lines at once, where that ends earlier. */
  readonly splitOverLines: (order: Job) => Work<SplitAnswer>;
  /** As many pieces as can be finished by an instant, conditioning included, and the rest as early as can be after that. */
  readonly firstPart: (order: Job, by: number) => Work<FirstPartAnswer>;
  /** The earliest finish in one lot where the orders named may become late, as long as they are still made. */
  readonly displacing: (order: Job, orderIds: ReadonlySet<string>) => PromiseAnswer;
  /** How sure the plan as it stands is, its orders in time by their limits here: of a promise, simulate the desk on which it is held. */
  readonly simulate: (params: SimulationParams) => Work<Simulation | FaultySimulation>;
}

/** When an order must be finished, conditioning included, and when it is. */
export interface OrderLimit {
  readonly by: number;
  readonly finish: number;
}

/** What a plan that stands can promise for one more order. */
export type PromiseAnswer =
  | { readonly status: "promised"; readonly promise: PromisedOrder }
  | {
      readonly status: "refused";
      /** At least one; the order's own refusals are among them. */
      readonly reasons: readonly PromiseRefusal[];
      readonly decodes: number;
    }
  | FaultyOrder;

export interface FaultyOrder {
  readonly status: "faulty-order";
  readonly faults: readonly ProblemFault[];
}

/** No plan of this kind, and why. */
export interface NoAlternative<Reason extends string> {
  readonly status: "none";
  readonly reason: Reason;
}

/** `too-small`: its pieces do not make two lots. `one-line`: only one line can make it. `no-gain`: one lot ends as early. */
export type SplitAnswer =
  | {
      readonly status: "promised";
      readonly promise: PromisedOrder;
      /** Seconds earlier than in one lot; null where one lot has no place at all. */
      readonly earlierBySeconds: number | null;
    }
  | NoAlternative<"too-small" | "one-line" | "no-gain">
  | FaultyOrder;

/** `whole`: all pieces are in time in one lot. `too-small`: its pieces do not make two lots. */
export type FirstPartAnswer =
  | { readonly status: "whole"; readonly promise: PromisedOrder }
  | {
      readonly status: "promised";
      readonly promise: PromisedOrder;
      /** In time. */
      readonly first: PartOfOrder;
      readonly rest: PartOfOrder;
    }
  | NoAlternative<"too-small" | "nothing-by-then" | "no-room-for-the-rest">
  | FaultyOrder;

export interface PartOfOrder {
  readonly pieces: number;
  /** End of its lot plus conditioning. */
  readonly finish: number;
}

/** An order with its place in the plan that stands. */
export interface PromisedOrder {
  /** As the problem with this plan has it: in two lots it carries the split rule that they keep. */
  readonly order: Job;
  /** End of its last lot plus conditioning: what can be promised. */
  readonly finish: number;
  /** One or two, by start. */
  readonly lots: readonly PromisedLot[];
  /** Runs that start or end at another time than before; by start. */
  readonly moved: readonly MovedRun[];
  /** Orders that are finished later than their limits; none but those that were given up for displacing. By order id. */
  readonly displaced: readonly DisplacedOrder[];
  /** What the plan with the order costs, and that less what it cost before, term by term. */
  readonly objective: ObjectiveBreakdown;
  readonly price: ObjectiveBreakdown;
  /** Places, each a line × set-up × position, that the order may have in one lot. */
  readonly places: number;
  /** Plans timed under all rules to find it; the other places cannot be better. */
  readonly decodes: number;
  /** The plan with the order in it, made when it is asked for. */
  readonly plan: () => Plan;
  /**
   * The desk with this promise standing: the order is to be finished by the instant, or by its due date, but no earlier than it is here.
   * Displaced orders keep what is left to them.
   */
  readonly hold: (by?: number) => OpenDesk;
}

/** One lot of a promised order. */
export interface PromisedLot {
  readonly pieces: number;
  readonly lineId: string;
  readonly setupId: string;
  readonly mould: MouldCopy | null;
  /** Runs before it on its line. */
  readonly position: number;
  readonly start: number;
  readonly end: number;
  /** End plus conditioning. */
  readonly finish: number;
  /** The change that serves it; null where none is needed. */
  readonly changeBefore: ChangeSegment | null;
  /** The change that serves the next run of its line. */
  readonly changeAfter: ChangeSegment | null;
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

export interface DisplacedOrder {
  readonly orderId: string;
  /** By when it had to be finished. */
  readonly by: number;
  readonly finishBefore: number;
  readonly finish: number;
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

/** Enquiries answered one after another on one desk, each promise held for the next. */
export interface BatchAnswer {
  /** In the order of the enquiries. */
  readonly answers: readonly BatchedAnswer[];
  /** With all of the promises standing. */
  readonly desk: OpenDesk;
  /** What all of them add to the cost of the plan. */
  readonly price: ObjectiveBreakdown;
  /** Weight × hours finished after the wanted day, of those promised. */
  readonly lateWeightHours: number;
  /** How the enquiries were ordered. */
  readonly sequence: EnquirySequence;
}

export type EnquirySequence = "as given" | "wanted day" | "largest first" | "smallest first" | "least slack";

export type BatchedAnswer =
  | {
      readonly status: "promised";
      readonly orderId: string;
      /** In the plan with all of them: a later promise may move an order within its wanted day. */
      readonly finish: number;
    }
  | (Exclude<PromiseAnswer, { readonly status: "promised" }> & { readonly orderId: string });
