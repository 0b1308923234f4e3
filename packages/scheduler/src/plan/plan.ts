import type { UnplannedCause } from "./unplanned-cause.ts";

/** Wire-ready plan: ids and instants (integer seconds since the epoch, UTC), no indices. Segments never overlap on a line. */
export interface Plan {
  /** Sorted by line (in the problem's order), then start. */
  readonly segments: readonly Segment[];
  /** One entry per planned lot, in order of (orderId by code units, lot). */
  readonly lots: readonly PlannedLot[];
  readonly unplanned: readonly UnplannedOrder[];
  readonly objective: ObjectiveBreakdown;
}

export type Segment = ChangeSegment | RunSegment | StopSegment;

interface OnLine {
  readonly lineId: string;
  readonly start: number;
  readonly end: number;
}

/** Work between two set-ups; `stripping` when only the hanging mould is taken out for another line. */
export interface ChangeSegment extends OnLine {
  readonly kind: "change";
  readonly fromSetupId: string | null;
  readonly toSetupId: string;
  /** Index into the problem's `changes`. */
  readonly changeSpec: number;
  readonly stripping: boolean;
  readonly teamId: string | null;
  /** The line's trolley where the change has team work and uses it. */
  readonly trolleyId: string | null;
  /** End of dismounting = start of mounting; equals `start` when nothing is dismounted. */
  readonly mountStart: number;
  /** End of the team's work = start of the tail. */
  readonly tailStart: number;
  readonly mouldOut: MouldCopy | null;
  readonly mouldIn: MouldCopy | null;
}

/** An unbroken stretch of running; a lot that pauses has several. */
export interface RunSegment extends OnLine {
  readonly kind: "run";
  readonly orderId: string;
  /** 0-based. */
  readonly lot: number;
  readonly productId: string;
  readonly setupId: string;
  readonly mould: MouldCopy | null;
  /** Pieces formed in this stretch; the stretches of a lot add up to its pieces. */
  readonly pieces: number;
}

/** A pause inside a lot: closed time, too few operators, or warm-up after a long stop; or the service of its mould before it. */
export interface StopSegment extends OnLine {
  readonly kind: "stop";
  readonly reason: "closed" | "operators" | "warm-up" | "service";
  readonly orderId: string;
  readonly lot: number;
}

export interface MouldCopy {
  readonly mouldId: string;
  /** 0-based. */
  readonly copy: number;
}

export interface PlannedLot {
  readonly orderId: string;
  readonly lot: number;
  readonly lineId: string;
  readonly setupId: string;
  readonly pieces: number;
  readonly start: number;
  readonly end: number;
  /** End plus conditioning. */
  readonly finish: number;
  /** How it takes its turn among lines that share moulds and teams, for a search that goes on from the plan; absent: as it comes. */
  readonly turn?: LotTurn;
}

/** After another line took the mould that hung on its line, or after all others; or once that mould was taken out by itself. */
export type LotTurn = "gives way" | "stripped first";

export interface UnplannedOrder {
  readonly orderId: string;
  readonly reasons: readonly UnplannedReason[];
}

/** Ranked, most telling first. `lineId` null: holds for every line. */
export interface UnplannedReason {
  readonly code:
    | "no-line-fits"
    | "line-never-open-long-enough"
    | "mould-unavailable"
    | "no-team-hours"
    | "sheet-never-arrives"
    | "no-operators"
    | "pin-impossible"
    | "starts-too-late"
    | "beyond-horizon"
    /** a person took it out of the plan by hand; edits leave it out until one puts it back */
    | "taken-out";
  readonly lineId: string | null;
  readonly text: string;
  /** The same apart from words, for other languages; absent where only the words are known, and in older plans. */
  readonly cause?: UnplannedCause;
}

/** Every named term once, in the order below: amount in its unit × price = cost; `total` is their sum. Hours and weights as in `ObjectiveWeights`. */
export interface ObjectiveBreakdown {
  readonly terms: readonly ObjectiveTerm[];
  readonly total: number;
}

export interface ObjectiveTerm {
  readonly name:
    | "weighted tardiness"
    | "late orders"
    | "change time"
    | "team time"
    | "start-up scrap"
    | "overtime"
    | "earliness"
    | "load balance"
    | "lines changed"
    | "starts moved"
    | "unplanned orders"
    | "makespan";
  readonly unit: string;
  readonly amount: number;
  readonly price: number;
  readonly cost: number;
}
