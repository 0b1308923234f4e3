import { ChangedDecode } from "../timing/changed-decode.ts";
import { moneyOf } from "../timing/cost-sums.ts";
import { LineModel } from "../timing/line-model.ts";
import { withoutPassedOver } from "../timing/passed-over.ts";
import {
  copyLine,
  copyLots,
  copySequences,
  emptySequences,
  isSameBehind,
  type Sequences,
} from "../timing/sequences.ts";
import { createAnnealing, type Annealing } from "./annealing.ts";
import { BestPlace } from "./plant/best-place.ts";
import { Rebuild } from "./plant/rebuild.ts";
import type { RecreateState } from "./plant/recreate.ts";
import { LatenessRamp } from "./plant/lateness-ramp.ts";
import { LossProbe } from "./plant/loss-probe.ts";
import { joinNeighbours } from "./plant/join-neighbours.ts";
import { scheduleFor, type Schedule } from "./plant/schedule.ts";
import type { RuinState } from "./plant/ruin.ts";
import type { Search, SearchContext, SearchMethod } from "./search-method.ts";
import type { Work } from "../work/work.ts";

/** Of steps that the line model finds hopeless, one in so many is decoded all the same, to know how good its guesses are. */
const CHECKED_GUESS = 16;
/** One step in so many changes how a lot takes its turn, where lines share moulds and there are few orders. */
const CHANGED_TURNS = 4;
/** On larger plants changed turns cost more than they gain: measured at 200 orders. */
const MOST_ORDERS_FOR_TURNS = 40;
/** Money below which two guesses are the same. */
const LEAST_MARGIN = 1e-6;

/**
 * Ruin and recreate for whole plants: some orders are taken out and put back one by one where the line model finds them
 * cheapest; a full decode then judges the plan, and annealing decides. All rules hold in every judged plan.
 */
class PlantSearch implements Search {
  readonly stepsPerLook: number;
  private readonly context: SearchContext;
  private readonly current: Sequences;
  private readonly trial: Sequences;
  private readonly bestFound: Sequences;
  /** on its way to be the best found */
  private readonly candidate: Sequences;
  private readonly model: LineModel;
  /** keeps the states of `current` */
  private readonly timing: ChangedDecode;
  private readonly ruinState: RuinState;
  private readonly rebuild: Rebuild;
  /** [lot] line in `current` */
  private readonly currentLineOf: Int32Array;
  private currentLeftOver: number[] = [];
  private readonly annealing: Annealing[] = [];
  private currentMoney = Infinity;
  private bestPaid = Infinity;
  private lateScale = 1;
  private readonly lossProbe = new LossProbe();
  private decodes = 0;
  private guesses = 0;
  /** usual distance between the line model's guess and the full decode, money */
  private guessError = 0;
  /** [line] money of the current plan by the line model */
  private readonly lineMoney: Float64Array;
  private readonly schedule: Schedule;
  private readonly latenessRamp: LatenessRamp;
  /** money that the lines' costs do not show of lots taken out together */
  private splitMoney = 0;
  /** One step in so many changes a turn; 0 for none. */
  private readonly turnOneIn: number;

  constructor(context: SearchContext) {
    this.context = context;
    const { problem, decoder, random, start } = context;
    this.current = start;
    this.trial = emptySequences(problem);
    this.bestFound = emptySequences(problem);
    this.candidate = emptySequences(problem);
    for (const copy of [this.trial, this.bestFound]) copySequences(start, copy);
    this.lineMoney = new Float64Array(problem.lines.count);
    this.model = new LineModel(problem, this.trial);
    this.timing = new ChangedDecode(decoder);
    const lineOf = new Int32Array(problem.lots.count).fill(-1);
    for (let line = 0; line < problem.lines.count; line++) {
      for (let p = 0; p < start.length[line]!; p++) lineOf[problem.options.lot[start.at[line]![p]!]!] = line;
    }
    for (const lot of problem.lots.firstLot.subarray(0, problem.jobs.count))
      if (lineOf[lot]! < 0) this.currentLeftOver.push(lot);
    this.currentLineOf = Int32Array.from(lineOf);
    const ruined = { lots: [] as number[], from: new Int32Array(problem.lines.count) };
    const leftOver = [...this.currentLeftOver];
    this.ruinState = {
      problem,
      sequences: this.trial,
      model: this.model,
      start: new Int32Array(problem.lots.count),
      end: new Int32Array(problem.lots.count),
      suffering: [],
      random,
      lineOf,
      ruined,
      leftOver,
    };
    const recreateState: RecreateState = {
      best: new BestPlace(problem, this.trial, this.model, random),
      problem,
      sequences: this.trial,
      model: this.model,
      random,
      lineOf,
      leftOver,
      from: ruined.from,
      keys: new Float64Array(problem.lots.count),
      isGivenUp: context.isGivenUp,
    };
    this.schedule = scheduleFor(problem.jobs.count, problem.terms.stability);
    this.latenessRamp = new LatenessRamp(problem, context.strategy.lateStart * this.schedule.lateStart);
    const sharesMoulds = problem.moulds.copyCount > 0 && problem.lines.count > 1;
    this.turnOneIn = sharesMoulds && problem.jobs.count <= MOST_ORDERS_FOR_TURNS ? CHANGED_TURNS : 0;
    this.rebuild = new Rebuild(this.ruinState, recreateState, {
      campaignOneIn: this.schedule.campaignOneIn,
      turnOneIn: this.turnOneIn,
    });
    this.stepsPerLook = problem.jobs.count > 300 ? 1 : 8;
  }

  /** Times the plan that it starts from; nothing may be asked of the search before. */
  *timeStart(): Work<void> {
    yield;
    this.currentMoney = this.timing.whole(this.trial, { lateScale: 1, limit: Infinity });
    this.timing.keep();
    this.bestPaid = this.currentMoney;
    yield;
    this.learn(null);
  }

  adopt(elite: Sequences): void {
    const { problem } = this.context;
    const { lineOf, leftOver } = this.ruinState;
    copySequences(elite, this.current);
    copySequences(elite, this.trial);
    lineOf.fill(-1);
    for (let line = 0; line < problem.lines.count; line++) {
      for (let p = 0; p < elite.length[line]!; p++) lineOf[problem.options.lot[elite.at[line]![p]!]!] = line;
    }
    leftOver.length = 0;
    for (const lot of problem.lots.firstLot.subarray(0, problem.jobs.count))
      if (lineOf[lot]! < 0) leftOver.push(lot);
    this.currentLineOf.set(lineOf);
    this.currentLeftOver = [...leftOver];
    this.currentMoney = this.timing.whole(this.trial, { lateScale: this.lateScale, limit: Infinity });
    this.timing.keep();
    this.learn(null);
    this.keepIfBest();
  }

  best(): Sequences {
    return this.bestFound;
  }

  bestMoney(): number {
    return this.bestPaid;
  }

  evaluations(): number {
    return this.model.evaluations + this.decodes;
  }

  step(share: number): void {
    const { problem } = this.context;
    if (problem.jobs.count === 0) return;
    this.ramp(share);
    this.splitMoney = this.rebuild.step();
    if (isSameBehind(problem, this.trial, this.current, this.ruinState.ruined.from)) {
      this.reject();
      return;
    }
    const tolerance = this.tolerance(share);
    const guess = this.guess();
    this.guesses++;
    const hopeless = guess > tolerance + 2 * this.guessError + LEAST_MARGIN;
    if (hopeless && this.lossProbe.isDone && this.guesses % CHECKED_GUESS !== 0) {
      this.reject();
      return;
    }
    this.decodes++;
    const money = this.decodeTrial(this.currentMoney + tolerance);
    if (money < Infinity)
      this.guessError += (Math.abs(money - this.currentMoney - guess) - this.guessError) / 32;
    if (!this.lossProbe.isDone) this.probe(money);
    if (money < Infinity && money <= this.currentMoney + tolerance) this.accept(money);
    else this.reject();
  }

  /** Money of the trial, Infinity when above the limit. */
  private decodeTrial(limit: number): number {
    const ask = { lateScale: this.lateScale, limit };
    // a changed turn changes no position
    if (this.turnOneIn > 0) return this.timing.whole(this.trial, ask);
    return this.timing.changed(this.trial, this.ruinState.ruined.from, ask);
  }

  /** What the line model thinks the step costs. */
  private guess(): number {
    const { from } = this.ruinState.ruined;
    const { jobs, lots } = this.context.problem;
    let money = this.splitMoney;
    for (let line = 0; line < from.length; line++) {
      if (from[line]! >= 0) money += this.model.moneyOf(line) - this.lineMoney[line]!;
    }
    for (const lot of this.ruinState.leftOver) money += jobs.unplanned[lots.job[lot]!]!;
    for (const lot of this.currentLeftOver) money -= jobs.unplanned[lots.job[lot]!]!;
    return money;
  }

  /** Takes over the times of the plan that the decoder timed last. */
  private learn(changedFrom: Int32Array | null): void {
    const { decoder } = this.context;
    const { jobs, lots } = this.context.problem;
    const { start, end, suffering, lineOf } = this.ruinState;
    this.model.learn(decoder, changedFrom);
    for (let line = 0; line < this.lineMoney.length; line++) this.lineMoney[line] = this.model.moneyOf(line);
    end.set(decoder.end);
    suffering.length = 0;
    for (let lot = 0; lot < start.length; lot++) {
      const runs = decoder.option[lot]! >= 0;
      start[lot] = runs ? decoder.start[lot]! : -1;
      const suffers = !runs || decoder.end[lot]! > jobs.due[lots.job[lot]!]!;
      if (suffers && lineOf[lot]! >= 0) suffering.push(lot);
    }
  }

  /** Lateness costs little at first and its full price later. */
  private ramp(share: number): void {
    const scale = this.latenessRamp.scaleAt(this.roundShare(share) / this.schedule.rampShare);
    if (scale === this.lateScale) return;
    this.lateScale = scale;
    this.model.lateness.scale = scale;
    const { decoder } = this.context;
    this.currentMoney = decoder.decode(this.current, scale);
    this.learn(null);
  }

  private tolerance(share: number): number {
    const annealing = this.annealing[0];
    if (annealing === undefined) return !this.lossProbe.isDone ? Infinity : 0;
    annealing.cool(this.roundShare(share));
    return annealing.tolerance();
  }

  /** Share of the round under way that is gone, of the budget's share. */
  private roundShare(share: number): number {
    const round = share * this.schedule.rounds;
    return share >= 1 ? 1 : round - Math.floor(round);
  }

  /** Measures usual losses on the first steps, all of which are undone unless they gain. */
  private probe(money: number): void {
    this.lossProbe.note(money - this.currentMoney);
    if (!this.lossProbe.isDone) return;
    const { random, strategy } = this.context;
    const usual = this.lossProbe.usual();
    const { hotShare, coldShare } = this.schedule;
    this.annealing.push(createAnnealing(random, usual * hotShare * strategy.heat, usual * coldShare));
  }

  private accept(money: number): void {
    const { from } = this.ruinState.ruined;
    if (!this.lossProbe.isDone && money > this.currentMoney) {
      this.reject();
      return;
    }
    this.currentMoney = money;
    this.timing.keep();
    for (let line = 0; line < from.length; line++)
      if (from[line]! >= 0) copyLine(this.trial, this.current, line);
    copyLots(this.trial, this.current);
    this.currentLineOf.set(this.ruinState.lineOf);
    this.currentLeftOver = [...this.ruinState.leftOver];
    this.learn(from);
    this.keepIfBest();
  }

  /** Keeps the trial, which the decoder timed last, as the best found, if it is that still when only what runs is left in it. */
  private keepIfBest(): void {
    const { decoder, problem } = this.context;
    const money = this.lateScale === 1 ? this.currentMoney : moneyOf(problem, decoder.sums, 1);
    if (money >= this.bestPaid) return;
    copySequences(this.trial, this.candidate);
    const paid = withoutPassedOver(decoder, this.candidate, money);
    if (paid >= this.bestPaid) return;
    this.bestPaid = paid;
    copySequences(this.candidate, this.bestFound);
    this.joinBest();
  }

  /** Lots of one order side by side are one lot, unless that is dearer: where other steps take what they need in another order. */
  private joinBest(): void {
    const { decoder, problem } = this.context;
    if (problem.lots.count === problem.jobs.count) return;
    joinNeighbours(problem, this.candidate, () => {
      const paid = withoutPassedOver(decoder, this.candidate, decoder.decode(this.candidate));
      const [from, into] =
        paid <= this.bestPaid ? [this.candidate, this.bestFound] : [this.bestFound, this.candidate];
      this.bestPaid = Math.min(paid, this.bestPaid);
      copySequences(from, into);
    });
  }

  private reject(): void {
    const { from } = this.ruinState.ruined;
    for (let line = 0; line < from.length; line++)
      if (from[line]! >= 0) copyLine(this.current, this.trial, line);
    copyLots(this.current, this.trial);
    this.ruinState.lineOf.set(this.currentLineOf);
    this.ruinState.leftOver.length = 0;
    this.ruinState.leftOver.push(...this.currentLeftOver);
    this.model.restore(from);
  }
}

export const plantSearch: SearchMethod = {
  name: "ruin and recreate",
  supports: () => true,
  *begin(context) {
    const search = new PlantSearch(context);
    yield* search.timeStart();
    return search;
  },
};
