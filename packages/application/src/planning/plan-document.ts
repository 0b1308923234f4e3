import type { ChangeTaskKind } from "@formweek/capacity-model";
import type { ChainCause, RootCause, UnplannedCause } from "@formweek/scheduler";

/**
 * A plan as people and other programs read it: names beside ids, instants as ISO 8601 UTC texts, mould copies counted from
 * 1. The command line writes it, the API serves it, the audit command reads it back. Every instant is whole seconds.
 */
export interface PlanDocument {
  readonly format: "formweek-plan/1";
  readonly engineVersion: string;
  readonly seed: number;
  /** Search steps that made it; with the same input, seed and step budget the same document results. */
  readonly steps: number;
  /** 16 hex digits over plant, orders and pins; an audit against other inputs says so. */
  readonly inputHash: string;
  readonly plant: {
    readonly id: string;
    readonly name: string;
    readonly timeZone: string;
    readonly currency: string;
  };
  readonly horizon: { readonly start: string; readonly end: string };
  readonly lines: readonly DocumentLine[];
  /** Setter teams; plans from before their hours were written down have none. */
  readonly teams: readonly DocumentTeam[];
  readonly segments: readonly DocumentSegment[];
  readonly lots: readonly DocumentLot[];
  readonly orders: readonly DocumentOrder[];
  readonly unplanned: readonly DocumentUnplanned[];
  /** Late orders with the chain that holds each, the worst first; plans from before it was worked out have none. */
  readonly late: readonly DocumentLate[];
  readonly objective: { readonly terms: readonly DocumentTerm[]; readonly total: number };
  /** Lower bound on the objective's total and the plan's gap to it as a share; null when none was computed. */
  readonly bound: {
    readonly total: number;
    readonly gap: number;
    /** What lateness and changes must each come to in a plan of all orders; null in a plan that leaves some out. */
    readonly parts: {
      readonly lateness: number;
      readonly changes: number;
      readonly changeMinutes: number;
    } | null;
  } | null;
  readonly summary: PlanSummary;
}

/** A setter team over the plan's horizon. */
export interface DocumentTeam {
  readonly id: string;
  readonly name: string;
  /** Spells inside the plan's span in which it works. */
  readonly open: readonly (readonly [start: string, end: string])[];
}

/** Why one order is late: links without a gap from `since` to the order's finish, each what the next had to wait for. */
export interface DocumentLate {
  readonly orderId: string;
  readonly lateSeconds: number;
  readonly since: string;
  /** Why nothing could begin before `since`. */
  readonly sinceText: string;
  /** The same apart from words; absent in older plans. */
  readonly root?: RootCause;
  readonly links: readonly DocumentLateLink[];
}

export interface DocumentLateLink {
  readonly kind:
    | "conditioning"
    | "run"
    | "change"
    | "mould service"
    | "carrying"
    | "line closed"
    | "no operators"
    | "setters off"
    | "other work first";
  readonly from: string;
  readonly to: string;
  readonly lineId: string | null;
  readonly orderId: string | null;
  readonly text: string;
  /** The same apart from words; absent in older plans. */
  readonly cause?: DocumentCause;
}

/** What happened in a link; a change names the mould and sheet that it set up. */
export type DocumentCause =
  | Exclude<ChainCause, { readonly kind: "change" }>
  | (Omit<Extract<ChainCause, { readonly kind: "change" }>, "toSetupId"> & {
      readonly mouldId: string | null;
      readonly sheetId: string | null;
    });

export interface DocumentLine {
  readonly id: string;
  readonly name: string;
  /** Working spells inside the plan's span, for shading. */
  readonly open: readonly (readonly [start: string, end: string])[];
  readonly closures: readonly { readonly start: string; readonly end: string; readonly reason: string }[];
  /** Shifts worked once, on top of the weekly ones; plans from before they were written down have none. */
  readonly extraShifts: readonly { readonly start: string; readonly end: string; readonly name: string }[];
  /** Split of the time from the horizon's start to the plan's last finish. */
  readonly utilisation: {
    readonly runSeconds: number;
    readonly changeSeconds: number;
    readonly stopSeconds: number;
    readonly idleSeconds: number;
    readonly closedSeconds: number;
  };
}

export interface DocumentMould {
  readonly mouldId: string;
  /** 1-based. */
  readonly copy: number;
}

export interface DocumentChange {
  readonly kind: "change";
  readonly lineId: string;
  readonly start: string;
  readonly end: string;
  readonly mountStart: string;
  readonly tailStart: string;
  readonly stripping: boolean;
  readonly teamId: string | null;
  readonly trolleyId: string | null;
  readonly fromSetupId: string | null;
  readonly toSetupId: string;
  readonly mouldOut: DocumentMould | null;
  readonly mouldIn: DocumentMould | null;
  /** Work of the change; its span on the line is longer where setters pause. */
  readonly minutes: number;
  readonly scrapKg: number;
  readonly tasks: readonly DocumentTask[];
}

export interface DocumentTask {
  /** Absent in older plans. */
  readonly kind?: ChangeTaskKind;
  readonly name: string;
  readonly minutes: number;
  readonly byTeam: boolean;
}

export interface DocumentRun {
  readonly kind: "run";
  readonly lineId: string;
  readonly start: string;
  readonly end: string;
  readonly orderId: string;
  readonly lot: number;
  readonly productId: string;
  readonly productName: string;
  readonly customer: string;
  readonly mould: DocumentMould | null;
  readonly mouldName: string;
  readonly sheetId: string;
  readonly sheetName: string;
  readonly colour: { readonly name: string; readonly hex: string; readonly clear: boolean };
  readonly setupId: string;
  readonly pieces: number;
  readonly due: string;
  readonly lateSeconds: number;
}

export interface DocumentStop {
  readonly kind: "stop";
  readonly lineId: string;
  readonly start: string;
  readonly end: string;
  readonly reason: "closed" | "operators" | "warm-up" | "service";
  readonly orderId: string;
  readonly lot: number;
}

export type DocumentSegment = DocumentChange | DocumentRun | DocumentStop;

export interface DocumentLot {
  readonly orderId: string;
  readonly lot: number;
  readonly lineId: string;
  readonly setupId: string;
  readonly pieces: number;
  readonly start: string;
  readonly end: string;
  readonly finish: string;
  /** How it takes its turn among lines that share moulds and teams; absent: as it comes. */
  readonly turn?: "gives way" | "stripped first";
}

export type OrderState = "on time" | "late" | "covered by stock" | "unplanned" | "partly planned";

export interface DocumentOrder {
  readonly orderId: string;
  readonly customer: string;
  readonly productId: string;
  readonly productName: string;
  readonly pieces: number;
  readonly due: string;
  readonly state: OrderState;
  readonly finish: string | null;
  readonly lateSeconds: number;
  /** Due minus finish; negative when late; null without a finish. */
  readonly slackSeconds: number | null;
  readonly fromStockPieces: number;
  readonly toMakePieces: number;
  readonly grossPieces: number;
}

export interface DocumentUnplanned {
  readonly orderId: string;
  readonly reasons: readonly {
    readonly code: string;
    readonly lineId: string | null;
    readonly text: string;
    /** The same apart from words; absent where only the words are known, and in older plans. */
    readonly cause?: UnplannedCause;
  }[];
}

export interface DocumentTerm {
  readonly name: string;
  readonly unit: string;
  readonly amount: number;
  readonly price: number;
  readonly cost: number;
}

export interface PlanSummary {
  readonly orders: number;
  readonly onTime: number;
  readonly late: number;
  readonly unplanned: number;
  readonly coveredByStock: number;
  readonly tardinessHours: number;
  readonly worstLateHours: number;
  readonly changes: number;
  readonly changeHours: number;
  readonly teamHours: number;
  /** Run time over working time from the horizon's start to the last finish, 0…1. */
  readonly utilisation: number;
  readonly makespanEnd: string | null;
}
