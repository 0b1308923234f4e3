import type { Job } from "./problem-data.ts";

/** How an order may be split: into at most `most` lots, each of `leastPieces` or more, all but one a multiple of `unitPieces`. */
export interface LotRule {
  readonly most: number;
  readonly leastPieces: number;
  readonly unitPieces: number;
}

/** More lots than these of one order are never made: each costs a change and a start-up. */
export const MOST_LOTS = 4;

/** The rule of an order, with no more lots than its pieces allow; one lot of all pieces where it may not be split. */
export function lotRuleOf({ pieces, lots }: Job): LotRule {
  const whole = { most: 1, leastPieces: pieces, unitPieces: 1 };
  if (lots === undefined) return whole;
  const { leastPieces, unitPieces } = lots;
  const leastUnits = Math.ceil(leastPieces / unitPieces) * unitPieces;
  const most = Math.min(lots.most, MOST_LOTS, 1 + Math.floor((pieces - leastPieces) / leastUnits));
  return most <= 1 ? whole : { most, leastPieces, unitPieces };
}
