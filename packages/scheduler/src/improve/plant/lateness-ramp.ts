import { exactExp, exactLog } from "../../chance/exact-log.ts";
import type { CompiledProblem } from "../../problem/compiled-problem.ts";

/** Steps in which the price grows: each has the whole plan judged anew. */
const CELLS = 50;
/** Scale at the beginning where changes cost nothing, so that there is nothing to weigh lateness against. */
const WITHOUT_CHANGES = 0.15;

function mean(sum: number, count: number): number {
  return count === 0 ? 0 : sum / count;
}

/** Money for a second in which a line stands in a change, over all kinds of change. */
function changePrice({ changes }: CompiledProblem): number {
  let sum = 0;
  let count = 0;
  for (let spec = 0; spec < changes.total.length; spec++) {
    if (changes.total[spec]! <= 0) continue;
    sum += changes.cost[spec]! / changes.total[spec]!;
    count++;
  }
  return mean(sum, count);
}

/** Money for a second by which an order is late, over all orders. */
function latePrice({ jobs }: CompiledProblem): number {
  return mean(
    jobs.latePerSecond.reduce((sum, price) => sum + price, 0),
    jobs.count,
  );
}

/**
 * How the price of lateness grows over a search: at first an hour of lateness counts no more than a small part of an hour of
 * change, so that changes are saved, which frees the time that lateness needs; then it grows by the same factor in every cell.
 */
export class LatenessRamp {
  private readonly firstLog: number;

  /** `changeHours`: hours of change, by their price, that an hour of lateness counts at first. */
  constructor(problem: CompiledProblem, changeHours: number) {
    const [change, late] = [changePrice(problem), latePrice(problem)];
    const first = change > 0 && late > 0 ? (changeHours * change) / late : WITHOUT_CHANGES;
    this.firstLog = exactLog(Math.min(1, first));
  }

  /** Scale of lateness, over 0 … 1, after a share of the ramp, 0 … 1 and beyond. */
  scaleAt(share: number): number {
    const cell = Math.min(1, Math.floor(share * CELLS) / CELLS);
    return cell === 1 ? 1 : exactExp(this.firstLog * (1 - cell));
  }
}
