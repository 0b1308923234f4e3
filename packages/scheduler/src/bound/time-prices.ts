import type { CompiledProblem } from "../problem/compiled-problem.ts";
import { lineKnots, type LineKnots } from "./line-knots.ts";

/** What a second of a line's or a mould's time costs, by cell; all in one vector, so that an ascent moves them together. */
export interface TimePrices {
  readonly step: number;
  /** steps of a mould's time; none is priced after the last */
  readonly steps: number;
  readonly knots: readonly LineKnots[];
  /** [line] first cell */
  readonly firstCell: Int32Array;
  /** [mould] first cell, -1 where its copies can never be short */
  readonly firstMouldCell: Int32Array;
  /** [cell] money per second, >= 0 */
  readonly price: Float64Array;
  /** [cell] seconds that there are */
  readonly capacity: Float64Array;
  /** [line's cell / 2] money of the time before the knot's closed time, and before its open time */
  readonly beforeClosed: Float64Array;
  readonly beforeOpen: Float64Array;
  /** [line's cell / 2] cell of the cheapest second up to that open time */
  readonly cheapestCell: Int32Array;
  /** [mould's cell] money of the mould's time before it; one more than steps */
  readonly beforeStep: Float64Array;
}

/** Seconds of [from, to) at or after `free`. */
function secondsAfter(free: number, from: number, to: number): number {
  return Math.max(0, to - Math.max(from, free));
}

/** Moulds that more lines may want than there are copies in service. */
function scarceMoulds(problem: CompiledProblem): readonly boolean[] {
  const { moulds, options, setups } = problem;
  const lines = Array.from({ length: moulds.count }, () => new Set<number>());
  for (let option = 0; option < options.count; option++) {
    const mould = setups.mould[options.setup[option]!]!;
    if (mould >= 0) lines[mould]!.add(options.line[option]!);
  }
  return lines.map((users, m) => {
    const [first, end] = [moulds.firstCopy[m]!, moulds.firstCopy[m + 1]!];
    return users.size > end - first || moulds.service.slice(first, end).some((spells) => spells !== null);
  });
}

function mouldSeconds(problem: CompiledProblem, mould: number, spell: readonly [number, number]): number {
  const { firstCopy, service } = problem.moulds;
  const [from, to] = spell;
  let seconds = 0;
  for (let copy = firstCopy[mould]!; copy < firstCopy[mould + 1]!; copy++) {
    seconds += to - from;
    for (const [start, end] of service[copy] ?? []) {
      seconds -= Math.max(0, Math.min(to, end) - Math.max(from, start));
    }
  }
  return seconds;
}

/** Cells over [0, until) in steps of `step` seconds, all prices 0. `until` is a multiple of `step`. */
export function timePrices(problem: CompiledProblem, step: number, until: number): TimePrices {
  const { lines, moulds } = problem;
  const steps = Math.round(until / step);
  const knots = lines.runCalendar.map((calendar) => lineKnots(calendar, step, until));
  const firstCell = new Int32Array(lines.count);
  let cells = 0;
  knots.forEach((each, line) => {
    firstCell[line] = cells;
    cells += 2 * each.count;
  });
  const scarce = scarceMoulds(problem);
  const firstMouldCell = new Int32Array(moulds.count).fill(-1);
  scarce.forEach((isScarce, mould) => {
    if (!isScarce) return;
    firstMouldCell[mould] = cells;
    cells += steps + 1;
  });
  const capacity = new Float64Array(cells);
  knots.forEach((each, line) => {
    const free = lines.freeAt[line]!;
    for (let k = 0; k < each.count; k++) {
      const cell = firstCell[line]! + 2 * k;
      capacity[cell] = secondsAfter(free, each.from[k]!, each.to[k]!);
      capacity[cell + 1] = k + 1 < each.count ? secondsAfter(free, each.to[k]!, each.from[k + 1]!) : 0;
    }
  });
  firstMouldCell.forEach((cell, mould) => {
    if (cell < 0) return;
    for (let b = 0; b < steps; b++) {
      capacity[cell + b] = mouldSeconds(problem, mould, [b * step, (b + 1) * step]);
    }
  });
  return {
    step,
    steps,
    knots,
    firstCell,
    firstMouldCell,
    price: new Float64Array(cells),
    capacity,
    beforeClosed: new Float64Array(cells),
    beforeOpen: new Float64Array(cells),
    cheapestCell: new Int32Array(cells),
    beforeStep: new Float64Array(cells),
  };
}

/** Brings the sums up to date with the prices. */
export function sumPrices(prices: TimePrices): void {
  const { price, capacity, beforeClosed, beforeOpen, cheapestCell, beforeStep } = prices;
  prices.knots.forEach(({ count, from, to, work }, line) => {
    let sum = 0;
    let cheapest = -1;
    const look = (cell: number): void => {
      if (capacity[cell]! > 0 && (cheapest < 0 || price[cell]! < price[cheapest]!)) cheapest = cell;
    };
    for (let k = 0; k < count; k++) {
      const cell = prices.firstCell[line]! + 2 * k;
      const at = cell >> 1;
      beforeClosed[at] = sum;
      sum += price[cell]! * (to[k]! - from[k]!);
      beforeOpen[at] = sum;
      if (k + 1 < count) sum += price[cell + 1]! * (work[k + 1]! - work[k]!);
      look(cell);
      look(cell + 1);
      cheapestCell[at] = cheapest;
    }
  });
  prices.firstMouldCell.forEach((cell) => {
    if (cell < 0) return;
    let sum = 0;
    for (let b = 0; b <= prices.steps; b++) {
      beforeStep[cell + b] = sum;
      if (b < prices.steps) sum += price[cell + b]! * prices.step;
    }
  });
}

/** Money of a mould's time before the instant `t`. */
export function mouldMoneyBefore(prices: TimePrices, cell: number, t: number): number {
  const b = Math.min(prices.steps, Math.floor(t / prices.step));
  return (
    prices.beforeStep[cell + b]! + (b < prices.steps ? prices.price[cell + b]! * (t - b * prices.step) : 0)
  );
}
