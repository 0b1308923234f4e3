import { NEVER } from "../problem/calendar.ts";
import type { CompiledProblem } from "../problem/compiled-problem.ts";
import type { OrdersAlone } from "./orders-alone.ts";
import { noPricedRun, RunPricer, type PricedRun } from "./priced-run.ts";
import { roughPlan } from "./rough-plan.ts";
import type { SetupGroup } from "./setup-groups.ts";
import { sumPrices, timePrices, type TimePrices } from "./time-prices.ts";
import type { Work } from "../work/work.ts";

export interface LatenessAsk {
  readonly alone: OrdersAlone;
  readonly groups: readonly SetupGroup[];
  /** [option] s of line time that a change into its set-up takes at least; 0 where none may be needed */
  readonly changeSeconds: Float64Array;
  /** [job] money of leaving it out, in the bound that allows it */
  readonly leftOut: Float64Array;
}

/** Money that lateness costs at least. */
export interface LatenessBound {
  /** in any plan, each order left out at the given money instead */
  readonly orLeftOut: number;
  /** in plans of all orders that can be planned */
  readonly ofAll: number;
}

/** Places looked at in all; what bounds the time. */
const MOST_PLACES = 4_000_000;
const MOST_ROUNDS = 300;
/** Rounds without a better bound after which the steps are halved. */
const PATIENCE = 5;
/** Share of the direction before that goes on. */
const MOMENTUM = 0.6;

/** One round's answers, by job. */
interface Round {
  readonly plain: readonly PricedRun[];
  readonly first: readonly PricedRun[];
  orLeftOut: number;
  ofAll: number;
}

class Ascent {
  readonly best: { orLeftOut: number; ofAll: number } = { orLeftOut: 0, ofAll: 0 };
  private readonly problem: CompiledProblem;
  private readonly ask: LatenessAsk;
  private readonly prices: TimePrices;
  private readonly pricer: RunPricer;
  private readonly round: Round;
  private readonly direction: Float64Array;
  private readonly use: Float64Array;

  constructor(problem: CompiledProblem, ask: LatenessAsk, prices: TimePrices) {
    this.problem = problem;
    this.ask = ask;
    this.prices = prices;
    this.pricer = new RunPricer(problem, prices);
    const runs = (): PricedRun[] => Array.from({ length: problem.jobs.count }, noPricedRun);
    this.round = { plain: runs(), first: runs(), orLeftOut: 0, ofAll: 0 };
    this.direction = new Float64Array(prices.price.length);
    this.use = new Float64Array(prices.price.length);
  }

  /** Prices every order anew; adds up both bounds and the time that the first one's places take. */
  *evaluate(): Work<void> {
    const { ask, prices, round, use } = this;
    sumPrices(prices);
    use.fill(0);
    let priced = 0;
    for (let cell = 0; cell < prices.price.length; cell++)
      priced += prices.price[cell]! * prices.capacity[cell]!;
    round.orLeftOut = -priced;
    round.ofAll = -priced;
    for (const group of ask.groups) {
      yield;
      for (const job of group.jobs) this.priceJob(job);
      this.addGroup(group);
    }
    this.best.orLeftOut = Math.max(this.best.orLeftOut, round.orLeftOut);
    this.best.ofAll = Math.max(this.best.ofAll, round.ofAll);
  }

  private priceJob(job: number): void {
    const { ask, round, pricer } = this;
    const { firstOption } = this.problem.jobs;
    const plain = round.plain[job]!;
    const first = round.first[job]!;
    plain.money = Infinity;
    first.money = Infinity;
    for (let option = firstOption[job]!; option < firstOption[job + 1]!; option++) {
      const earliestStart = ask.alone.earliestStart[option]!;
      if (earliestStart >= NEVER) continue;
      const choice = {
        option,
        seconds: ask.alone.seconds[option]!,
        isExact: ask.alone.exactStart[job]! >= 0,
        earliestStart,
        changeSeconds: ask.changeSeconds[option]!,
      };
      pricer.price(choice, plain, first);
    }
  }

  /** The orders of a group one by one, and the change that one of them, the first, cannot do without. */
  private addGroup(group: SetupGroup): void {
    const { ask, round } = this;
    let leavingAll = 0;
    let change = Infinity;
    let changeOfAll = Infinity;
    let firstJob = -1;
    for (const job of group.jobs) {
      const plain = round.plain[job]!.money;
      const first = round.first[job]!.money;
      const leftOut = ask.leftOut[job]!;
      const least = Math.min(plain, leftOut);
      round.orLeftOut += least;
      round.ofAll += plain;
      leavingAll += leftOut - least;
      changeOfAll = Math.min(changeOfAll, first - plain);
      if (first - least < change) {
        change = first - least;
        firstJob = job;
      }
    }
    round.ofAll += changeOfAll;
    round.orLeftOut += Math.min(leavingAll, change);
    if (leavingAll < change) return;
    for (const job of group.jobs) {
      const run = job === firstJob ? round.first[job]! : round.plain[job]!;
      if (job === firstJob || run.money < ask.leftOut[job]!) this.takeTime(run, job === firstJob);
    }
  }

  private takeTime(run: PricedRun, isFirst: boolean): void {
    const { prices, use } = this;
    const { options, setups } = this.problem;
    const line = options.line[run.option]!;
    const { count, from, to } = prices.knots[line]!;
    const take = (cell: number, starts: number, ends: number): void => {
      const seconds = Math.min(run.end, ends) - Math.max(run.start, starts);
      if (seconds > 0) use[cell]! += seconds;
    };
    for (let k = 0; k < count && from[k]! < run.end; k++) {
      const cell = prices.firstCell[line]! + 2 * k;
      take(cell, from[k]!, to[k]!);
      if (k + 1 < count) take(cell + 1, to[k]!, from[k + 1]!);
    }
    if (isFirst && run.changeCell >= 0) use[run.changeCell]! += run.changeSeconds;
    const mould = setups.mould[options.setup[run.option]!]!;
    const mouldCell = mould < 0 ? -1 : prices.firstMouldCell[mould]!;
    if (mouldCell < 0) return;
    for (let b = Math.floor(run.start / prices.step); b < prices.steps && b * prices.step < run.end; b++)
      take(mouldCell + b, b * prices.step, (b + 1) * prices.step);
  }

  /** Moves the prices along (use less capacity), so far that the bound would rise to `target` if it were linear. */
  move(target: number, scale: number): void {
    const { prices, direction, use, round } = this;
    const { price, capacity } = prices;
    let length = 0;
    for (let cell = 0; cell < price.length; cell++) {
      let rise = use[cell]! - capacity[cell]! + MOMENTUM * direction[cell]!;
      // a price of 0 stays there
      if (price[cell] === 0 && rise < 0) rise = 0;
      direction[cell] = rise;
      length += rise * rise;
    }
    if (length === 0) return;
    const stride = (scale * (target - round.orLeftOut)) / length;
    for (let cell = 0; cell < price.length; cell++)
      price[cell] = Math.max(0, price[cell]! + stride * direction[cell]!);
  }
}

/** Step of the cells, s, and how many: the more orders, the coarser. */
function gridOf(problem: CompiledProblem, lastEnd: number): { step: number; until: number } {
  const steps = Math.max(12, Math.min(96, Math.floor(100_000 / Math.max(1, problem.options.count))));
  const step = Math.max(60, Math.ceil(Math.min(problem.horizon, lastEnd) / steps));
  return { step, until: step * steps };
}

/**
 * A bound on lateness under competition for line and mould time. Every order runs once, where lateness and the price of the
 * time it takes are least together; what the priced time would bring is taken off. That is a bound for any prices >= 0
 * (Lagrangian relaxation of capacity in a time-indexed model: M. E. Dyer, L. A. Wolsey, "Formulating the single machine
 * sequencing problem with release dates as a mixed integer program", Discrete Applied Mathematics 26, 1990; from memory), and
 * a subgradient ascent looks for good ones. At prices 0 it is the sum of the orders alone.
 */
export function* latenessBound(problem: CompiledProblem, ask: LatenessAsk): Work<LatenessBound> {
  const rough = roughPlan(problem, ask.alone, ask.changeSeconds);
  yield;
  const { step, until } = gridOf(problem, rough.lastEnd);
  const prices = timePrices(problem, step, until);
  const ascent = new Ascent(problem, ask, prices);
  yield* ascent.evaluate();
  const { best } = ascent;
  const target = rough.lateness;
  if (target <= best.orLeftOut * (1 + 1e-9)) return best;
  const meanKnots =
    prices.knots.reduce((sum, { count }) => sum + count, 0) / Math.max(1, prices.knots.length);
  const places = 2 * meanKnots * problem.options.count;
  const rounds = Math.min(MOST_ROUNDS, Math.floor(MOST_PLACES / Math.max(1, places)));
  let scale = 1;
  let waited = 0;
  for (let round = 0; round < rounds; round++) {
    const before = best.orLeftOut;
    ascent.move(Math.max(target, best.orLeftOut * 1.05), scale);
    yield* ascent.evaluate();
    if (best.orLeftOut > before) waited = 0;
    else if (++waited >= PATIENCE) {
      waited = 0;
      scale /= 2;
    }
  }
  return best;
}
