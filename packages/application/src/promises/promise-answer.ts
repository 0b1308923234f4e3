import type { RoundingUnit } from "@formweek/capacity-model";
import type { UnplannedCause } from "@formweek/scheduler";
import type { DocumentMould } from "../planning/plan-document.ts";
import type { ShiftAdded } from "../planning/plan-edit.ts";
import type { OfferKind } from "../ports/hold-repository.ts";

/** Answers to what a customer asks for, as people and other programs read them: names beside ids, instants as ISO 8601 UTC. */

/** What a customer asks for, as it was typed. `wanted`: a day or a day and time by the plant's clock; null: as soon as can be. */
export interface Enquiry {
  readonly product: string;
  readonly pieces: number;
  readonly wanted: string | null;
  readonly partsAllowed: boolean;
}

export interface UnderstoodEnquiry {
  readonly productId: string;
  readonly productName: string;
  readonly pieces: number;
  readonly wantedAt: string | null;
  readonly partsAllowed: boolean;
}

/** What the answer stands on: the working plan, timed again for the inputs as they are now. */
export interface PromiseBase {
  readonly planId: string;
  /** Of the working plan. */
  readonly revision: number;
  readonly sameInputs: boolean;
  /** Nothing is offered before it. */
  readonly from: string;
  /** End of the plan's horizon. */
  readonly until: string;
  /** Orders of the book that need hours and have none in the plan. */
  readonly unplannedOrders: number;
  /** Order ids of holds that need hours and have none in the plan. */
  readonly unplannedHolds: readonly string[];
}

/** How pieces ordered become pieces to form; only steps that change something. */
export type QuantityStep =
  | { readonly kind: "stock"; readonly pieces: number }
  | { readonly kind: "least run"; readonly pieces: number }
  | {
      readonly kind: "whole units";
      readonly unit: RoundingUnit;
      readonly unitPieces: number;
      readonly units: number;
    }
  | { readonly kind: "scrap"; readonly share: number; readonly pieces: number };

export interface PromiseQuantity {
  readonly fromStockPieces: number;
  readonly toMakePieces: number;
  readonly grossPieces: number;
  readonly steps: readonly QuantityStep[];
}

/** Where the spread of computed rates is known from: proven rates of the plant, or a fixed share. */
export type MarginBasis = { readonly kind: "plant"; readonly rates: number } | { readonly kind: "rule" };

export type PromisedRateBasis =
  | { readonly kind: "proven"; readonly reports: number }
  | {
      readonly kind: "computed";
      /** Standard deviation of true over computed running time. */
      readonly spreadShare: number;
      /** Share of the running time that is added. */
      readonly marginShare: number;
      readonly from: MarginBasis;
    };

export interface PromisedRate {
  readonly cyclesPerMin: number;
  /** Good pieces. */
  readonly piecesPerHour: number;
  readonly basis: PromisedRateBasis;
}

export interface PromisedChange {
  readonly start: string;
  readonly end: string;
  /** Work; the span is longer where setters pause. */
  readonly minutes: number;
  readonly teamId: string | null;
  readonly teamName: string | null;
  readonly mouldIn: DocumentMould | null;
  readonly mouldOut: DocumentMould | null;
}

export interface PromisedPart {
  readonly pieces: number;
  readonly goodPieces: number;
  readonly lineId: string;
  readonly lineName: string;
  readonly mould: DocumentMould | null;
  readonly mouldName: string;
  readonly sheetId: string;
  readonly sheetName: string;
  readonly start: string;
  readonly end: string;
  readonly finish: string;
  /** Finish with the margin of a computed rate. */
  readonly promised: string;
  readonly shift: string | null;
  readonly rate: PromisedRate;
  readonly change: PromisedChange | null;
}

export interface MovedForPromise {
  readonly orderId: string;
  readonly lot: number;
  readonly lineId: string;
  readonly startBefore: string;
  readonly start: string;
  readonly endBefore: string;
  readonly end: string;
}

export interface DisplacedForPromise {
  readonly orderId: string;
  readonly customer: string;
  readonly kind: "firm" | "forecast";
  readonly weight: number;
  readonly by: string;
  readonly finishBefore: string;
  readonly finish: string;
}

/** What an offer adds to the plan's cost. */
export interface PromisePrice {
  readonly cost: number;
  readonly terms: readonly {
    readonly name: string;
    readonly unit: string;
    readonly amount: number;
    readonly cost: number;
  }[];
  readonly changeMinutes: number;
  readonly overtimeMinutes: number;
}

/** One way to make the order. */
export interface Offer {
  readonly kind: OfferKind;
  /** Of the last part, by the rates as they are. */
  readonly finish: string;
  /** Of the last part with the margin of computed rates: what the customer is told. */
  readonly promised: string;
  /** Wanted minus promised; null where no day was wanted. */
  readonly slackSeconds: number | null;
  readonly parts: readonly PromisedPart[];
  readonly moved: readonly MovedForPromise[];
  readonly displaced: readonly DisplacedForPromise[];
  readonly price: PromisePrice;
  /** The shift that a planner has to add first. */
  readonly shift: ShiftAdded | null;
  readonly holdable: boolean;
}

export interface PromiseReason {
  readonly code: string;
  readonly lineId: string | null;
  readonly text: string;
  readonly cause?:
    | UnplannedCause
    | { readonly kind: "delays another"; readonly orderId: string; readonly bySeconds: number | null };
}

export type PromiseOutcome =
  | { readonly status: "from stock"; readonly promised: string }
  | { readonly status: "promised"; readonly offer: Offer }
  | { readonly status: "impossible"; readonly reasons: readonly PromiseReason[] };

/** One enquiry with its answer. */
export interface AnsweredEnquiry {
  readonly enquiry: UnderstoodEnquiry;
  readonly quantity: PromiseQuantity;
  readonly outcome: PromiseOutcome;
}

export interface PromiseGiven extends AnsweredEnquiry {
  readonly base: PromiseBase;
  readonly currency: string;
}

/** Other ways beside the first answer. */
export interface Alternatives {
  readonly base: PromiseBase;
  /** The earliest promise first. */
  readonly offers: readonly Offer[];
  /** Kinds that lead nowhere, and why. */
  readonly none: readonly { readonly kind: OfferKind; readonly reason: string }[];
}
