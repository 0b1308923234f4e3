/** A stretch of wall-clock time [from, to), seconds since the epoch. */
interface Stretch {
  readonly from: number;
  readonly to: number;
}

/** What happened in one stretch of the chain that holds a late order. */
export type ChainCause =
  | { readonly kind: "conditioning"; readonly orderId: string }
  | {
      readonly kind: "run";
      readonly lineId: string;
      readonly orderId: string;
      readonly lot: number;
      /** Seconds of the stretch in which pieces are formed; the rest is stops. */
      readonly workSeconds: number;
      readonly closedSeconds: number;
      readonly operatorSeconds: number;
      readonly warmUpSeconds: number;
    }
  | {
      readonly kind: "change";
      readonly lineId: string;
      readonly toSetupId: string;
      readonly teamId: string | null;
      /** Seconds of work of the change's phases that lie in the stretch; the rest is closed time. */
      readonly workSeconds: number;
    }
  /** The mould of the order's lot is served on the line after its cycles. */
  | {
      readonly kind: "mould service";
      readonly mouldId: string;
      readonly lineId: string;
      readonly orderId: string;
      readonly lot: number;
    }
  | { readonly kind: "carrying"; readonly mouldId: string; readonly copy: number; readonly lineId: string }
  | { readonly kind: "line closed"; readonly lineId: string }
  | { readonly kind: "no operators"; readonly lineId: string }
  | { readonly kind: "setters off"; readonly lineId: string; readonly teamId: string | null }
  /** Other work was put first: the resources were idle or not, but the plan's order of steps gave them away. */
  | { readonly kind: "other work first"; readonly lineId: string };

export type ChainLink = Stretch & ChainCause;

/** What nothing in the plan could have moved. */
export type RootCause =
  | { readonly kind: "line free"; readonly lineId: string }
  | { readonly kind: "earliest start"; readonly orderId: string }
  | { readonly kind: "pinned start"; readonly orderId: string }
  | { readonly kind: "sheet arrival"; readonly sheetId: string }
  | { readonly kind: "mould arrives"; readonly lineId: string }
  | { readonly kind: "mould out of service"; readonly mouldId: string; readonly copy: number };

/** Where and why the chain begins. */
export type ChainRoot = RootCause & { readonly at: number };

/**
 * Why an order is late: from the root the links follow one another without a gap up to the order's finish, each the reason
 * why the next could not begin earlier. Shortening any link, or moving the root, moves the finish.
 */
export interface LateChain {
  readonly orderId: string;
  readonly dueAt: number;
  readonly finishAt: number;
  readonly lateSeconds: number;
  readonly root: ChainRoot;
  readonly links: readonly ChainLink[];
}
