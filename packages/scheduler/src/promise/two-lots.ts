import { lotRuleOf } from "../problem/lot-rule.ts";
import type { Job } from "../problem/problem-data.ts";
import type { LotSteps } from "./place-bounds.ts";

/** An order that is made in two lots, and what one of them may be while the other is what is left. */
export interface TwoLots {
  /** With the rule under which it may be split. */
  readonly order: Job;
  readonly steps: LotSteps;
}

/**
 * The order in two lots of the sizes that its lots must have, or would have to have if it might be split; null where its pieces
 * do not make two.
 */
export function inTwoLots(order: Job): TwoLots | null {
  const { leastPieces, unitPieces } = order.lots ?? order.lotSize ?? { leastPieces: 1, unitPieces: 1 };
  const most = Math.max(2, order.lots?.most ?? 2);
  const split = { ...order, lots: { most, leastPieces, unitPieces } };
  if (leastPieces > order.pieces || lotRuleOf(split).most < 2) return null;
  const first = Math.ceil(leastPieces / unitPieces) * unitPieces;
  const count = Math.floor((order.pieces - leastPieces - first) / unitPieces);
  return { order: split, steps: { first, unit: unitPieces, count } };
}
