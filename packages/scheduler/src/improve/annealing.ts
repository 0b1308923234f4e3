import { exactExp, exactLog, exponentialDraws } from "../chance/exact-log.ts";
import type { Random } from "../chance/random.ts";

/** Threshold draws of annealing: a worse plan passes when its loss is below an exponential draw at the temperature. */
export interface Annealing {
  /** Loss that is still accepted in this step. */
  readonly tolerance: () => number;
  /** Sets the temperature for a share of the budget, 0 … 1. */
  readonly cool: (share: number) => void;
}

/** Geometric cooling from `hot` to `cold` (money), both > 0. */
export function createAnnealing(random: Random, hot: number, cold: number): Annealing {
  const draws = exponentialDraws();
  const slope = exactLog(cold / hot);
  let temperature = hot;
  let cooledAt = -1;
  return {
    tolerance: () => temperature * draws[random.below(4096)]!,
    cool: (share) => {
      // one new temperature for every 4,000th part of the budget is fine enough
      const cell = Math.floor(Math.min(1, share) * 4000);
      if (cell === cooledAt) return;
      cooledAt = cell;
      temperature = hot * exactExp((slope * cell) / 4000);
    },
  };
}
