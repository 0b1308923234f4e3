import { addWork, workedBefore } from "../problem/calendar.ts";
import type { CompiledProblem } from "../problem/compiled-problem.ts";
import { knotAt } from "./line-knots.ts";
import { mouldMoneyBefore, type TimePrices } from "./time-prices.ts";

/** The cheapest place of one order: lateness and the price of the time it takes. */
export interface PricedRun {
  money: number;
  option: number;
  /** s after the horizon's start; the run without its warm-ups */
  start: number;
  end: number;
  /** cell that pays for the change before it, -1 for none, and the seconds that it pays for */
  changeCell: number;
  changeSeconds: number;
}

export function noPricedRun(): PricedRun {
  return { money: Infinity, option: -1, start: 0, end: 0, changeCell: -1, changeSeconds: 0 };
}

export interface RunChoice {
  readonly option: number;
  /** s of running */
  readonly seconds: number;
  /** it starts then or never */
  readonly isExact: boolean;
  /** s: no start before */
  readonly earliestStart: number;
  /** s of line time that a change into the option's set-up takes at least, if the run is the first that needs it */
  readonly changeSeconds: number;
}

/**
 * Prices runs in every place that can be cheapest. Between two knots of its start or end a run's price is linear and lateness
 * only grows, so knots, the earliest start and the end on the due date hold a cheapest place.
 */
export class RunPricer {
  private readonly problem: CompiledProblem;
  private readonly prices: TimePrices;
  private choice: RunChoice = {
    option: 0,
    seconds: 0,
    isExact: false,
    earliestStart: 0,
    changeSeconds: 0,
  };
  /** The cheapest place if other runs need the set-up too, and if this run is the one that the change is for. */
  private plain = noPricedRun();
  private first = noPricedRun();
  private late = 0;

  constructor(problem: CompiledProblem, prices: TimePrices) {
    this.problem = problem;
    this.prices = prices;
  }

  /** Lowers `plain` and `first` to the option's cheapest places. */
  price(choice: RunChoice, plain: PricedRun, first: PricedRun): void {
    this.choice = choice;
    this.plain = plain;
    this.first = first;
    const { options } = this.problem;
    const { option, seconds, earliestStart } = choice;
    const line = options.line[option]!;
    const knots = this.prices.knots[line]!;
    const from = workedBefore(knots.calendar, earliestStart);
    const startKnot = knotAt(knots, from);
    let endKnot = startKnot;
    const last = knots.count - 1;
    const advance = (work: number): void => {
      while (endKnot < last && knots.work[endKnot + 1]! < work) endKnot++;
    };
    advance(from + seconds);
    if (!this.consider(from, startKnot, endKnot) || choice.isExact) return;
    this.considerOnDue(from);
    const afterFirst = endKnot;
    for (let k = startKnot + 1; k <= last; k++) {
      advance(knots.work[k]! + seconds);
      if (!this.consider(knots.work[k]!, k, endKnot)) break;
    }
    let knot = startKnot;
    for (let k = afterFirst + 1; k <= last; k++) {
      const work = knots.work[k]! - seconds;
      while (knot < last && knots.work[knot + 1]! <= work) knot++;
      if (!this.consider(work, knot, k - 1)) break;
    }
  }

  private considerOnDue(from: number): void {
    const { options, jobs } = this.problem;
    const { option, seconds } = this.choice;
    const knots = this.prices.knots[options.line[option]!]!;
    const due = jobs.due[options.job[option]!]!;
    if (due <= 0) return;
    const end = workedBefore(knots.calendar, due);
    if (end - seconds <= from) return;
    const endKnot = Math.max(0, knotAt(knots, end - 1));
    this.consider(end - seconds, knotAt(knots, end - seconds), endKnot);
  }

  /**
   * A run begun after `work` seconds of the line's time. `startKnot` is the last knot at or before, `endKnot` the last before its
   * end. False once no later place can be cheaper, or none is left.
   */
  private consider(work: number, startKnot: number, endKnot: number): boolean {
    const { problem, prices, choice, plain, first } = this;
    const { options, setups } = problem;
    const { option, seconds } = choice;
    const line = options.line[option]!;
    const knots = prices.knots[line]!;
    const { calendar } = knots;
    if (work + seconds > calendar.total) return false;
    const start = knots.to[startKnot]! + work - knots.work[startKnot]!;
    const afterEndKnot = work + seconds - knots.work[endKnot]!;
    const end =
      endKnot + 1 < knots.count ? knots.to[endKnot]! + afterEndKnot : addWork(calendar, start, seconds);
    this.countLate(option, end);
    const { late } = this;
    if (late >= plain.money && late >= first.money) return false;
    const base = prices.firstCell[line]!;
    const startCell = base + 2 * startKnot;
    const endCell = base + 2 * endKnot;
    let money = late;
    money += prices.beforeOpen[endCell >> 1]! + prices.price[endCell + 1]! * afterEndKnot;
    money -=
      prices.beforeOpen[startCell >> 1]! + prices.price[startCell + 1]! * (work - knots.work[startKnot]!);
    const mould = setups.mould[options.setup[option]!]!;
    const mouldCell = mould < 0 ? -1 : prices.firstMouldCell[mould]!;
    if (mouldCell >= 0) {
      money += mouldMoneyBefore(prices, mouldCell, end) - mouldMoneyBefore(prices, mouldCell, start);
    }
    if (money < plain.money) this.keep(plain, { money, start, end });
    const changeCell = startKnot + 1 < knots.count ? prices.cheapestCell[startCell >> 1]! : -1;
    const withChange = changeCell < 0 ? money : money + choice.changeSeconds * prices.price[changeCell]!;
    if (withChange < first.money) {
      this.keep(first, { money: withChange, start, end });
      first.changeCell = choice.changeSeconds > 0 ? changeCell : -1;
      first.changeSeconds = choice.changeSeconds;
    }
    return true;
  }

  private countLate(option: number, end: number): void {
    const { jobs, options } = this.problem;
    const job = options.job[option]!;
    const by = end - jobs.due[job]!;
    this.late = by > 0 ? by * jobs.latePerSecond[job]! + jobs.lateOnce[job]! : 0;
  }

  private keep(run: PricedRun, place: { money: number; start: number; end: number }): void {
    run.money = place.money;
    run.option = this.choice.option;
    run.start = place.start;
    run.end = place.end;
  }
}
