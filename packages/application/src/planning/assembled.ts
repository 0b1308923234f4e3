import type { LineState, Order, Plant } from "@formweek/capacity-model";
import type { Pin, ProblemData } from "@formweek/scheduler";
import type { StockShare } from "../ports/hold-repository.ts";

/** What one order comes to after the shelf has been looked at. */
export interface OrderDemand {
  readonly order: Order;
  readonly fromStockPieces: number;
  /** Good pieces still to make, rounded; 0 when the stock covers the order. */
  readonly toMakePieces: number;
  /** Pieces to form for them, scrap included. */
  readonly grossPieces: number;
  /** How the quantity came about, step by step, in words. */
  readonly trail: readonly string[];
}

/** A shift worked once, uncut. */
export interface ExtraSpell {
  readonly start: number;
  readonly end: number;
  readonly name: string;
}

export interface ClosedSpell {
  readonly start: number;
  readonly end: number;
  readonly reason: string;
}

/** A plant and its orders made ready for the scheduler, with what the plan's description needs besides. */
export interface Assembled {
  readonly plant: Plant;
  readonly pins: readonly Pin[];
  readonly stockShares: readonly StockShare[];
  readonly problem: ProblemData;
  /** One per order, in the order given. */
  readonly demands: readonly OrderDemand[];
  /** Named closures per line id: its calendar's and its own. */
  readonly closures: ReadonlyMap<string, readonly ClosedSpell[]>;
  /** Shifts worked once per line id: its calendar's and those added. */
  readonly extraShifts: ReadonlyMap<string, readonly ExtraSpell[]>;
  /** States of a line, in the order of the problem's set-ups. */
  readonly states: readonly LineState[];
  readonly inputHash: string;
}
