import type { Plan, UnplannedReason } from "../plan/plan.ts";
import type { ProblemFault } from "../result.ts";

/** A lot of an order as a plan numbers it, from 0. */
export interface LotName {
  readonly orderId: string;
  readonly lot: number;
}

/** A place on a line: just ahead of a lot that runs there, or behind all of them. */
export interface LotPlace {
  readonly lineId: string;
  /** The lot that comes right after it on that line; null: it comes last. */
  readonly before: LotName | null;
}

/** One thing that a person does to a plan. All lots that it does not name keep their line and their order on it. */
export type PlanEdit =
  /**
   * The lot keeps its set-up where the line may make it so, else takes the one that costs least there; of those with the mould
   * alone where one is named.
   */
  | ({ readonly kind: "move"; readonly mouldId?: string } & LotName & LotPlace)
  /** The whole order, all its lots; edits leave it out until it is put back. */
  | { readonly kind: "take out"; readonly orderId: string }
  /** In one lot, where the plan costs least. */
  | { readonly kind: "put back"; readonly orderId: string }
  /** So many `pieces` leave the lot and become a lot of their own at the place. */
  | ({ readonly kind: "split"; readonly pieces: number } & LotName & LotPlace)
  /** All lots of the order become one, where its first lot stands. */
  | { readonly kind: "join"; readonly orderId: string };

/** Why an edit cannot be: which rule, about what, and what can be done. */
export interface EditRefusal {
  readonly code: EditRefusalCode;
  /** The order that was to be edited. */
  readonly orderId: string;
  /** 0-based; null where the whole order is meant. */
  readonly lot: number | null;
  readonly lineId: string | null;
  /** Another order that stands against it, such as one that would find no room any more. */
  readonly otherOrderId: string | null;
  readonly text: string;
  readonly remedy: string;
  /** What stands behind it in the plan: fit or room. */
  readonly reasons?: readonly UnplannedReason[];
  /** Line on which the order is held. */
  readonly heldLineId?: string;
  /** Pieces that a lot needs at least. */
  readonly leastPieces?: number;
  /** Pieces that are packed together. */
  readonly unitPieces?: number;
}

export type EditRefusalCode =
  | "order-unknown"
  | "lot-unknown"
  | "line-unknown"
  | "place-unknown"
  | "does-not-fit"
  | "mould-does-not-fit"
  | "held-on-line"
  | "held-at-start"
  | "held-in-sequence"
  | "planned-already"
  | "not-planned"
  | "may-not-be-split"
  | "too-many-lots"
  | "too-few-pieces"
  | "breaks-packing"
  | "not-split"
  /** the lot itself finds no room at the place */
  | "no-room"
  /** another lot would find no room any more */
  | "crowds-out";

/** A plan after an edit, or why there is none. */
export type EditResult =
  { readonly ok: true; readonly value: Plan } | { readonly ok: false; readonly error: EditRefusal };

/** A plan made ready for edits, each tried on its own. */
export interface EditTable {
  /** The plan as it stands under the problem: the one given, or what that one became where the problem has changed since. */
  readonly plan: Plan;
  /**
   * The plan after the edit; the standing plan does not change. An edit that leaves everything where it is gives the standing plan
   * itself. The plan keeps all rules of the engine, but has not been audited.
   */
  readonly apply: (edit: PlanEdit) => EditResult;
}

/** A table, or the faults of the problem. */
export type OpenedEdits =
  | { readonly ok: true; readonly value: EditTable }
  | { readonly ok: false; readonly error: readonly ProblemFault[] };
