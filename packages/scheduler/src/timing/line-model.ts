import { addWork, NEVER, nextOpen } from "../problem/calendar.ts";
import type { CompiledProblem } from "../problem/compiled-problem.ts";
import type { Decoder } from "./decoder.ts";
import { hoursIn } from "./line-hours.ts";
import { MouldRuns } from "./mould-runs.ts";
import { copyTimes, createTimes, type LineTimes } from "./line-times.ts";
import { runEnd, worthwhileStart } from "./run-timing.ts";
import { lotSeconds, type Sequences } from "./sequences.ts";
import { SplitLateness } from "./split-lateness.ts";

/** Money for another line or start than the published plan has. */
function moveMoney({ jobs, options, lots, data }: CompiledProblem, option: number, start: number): number {
  const job = options.job[option]!;
  const published = jobs.publishedLines[job]!;
  // lots after the first move the order's start only if they overtake it
  if (published.length === 0 || options.lot[option] !== lots.firstLot[job]) return 0;
  const { movedLinePerOrder, movedStartPerHour } = data.objective;
  const line = published.includes(options.line[option]!) ? 0 : movedLinePerOrder;
  return line + (Math.abs(start - jobs.publishedStart[job]!) * movedStartPerHour) / 3600;
}

/**
 * Each line judged by itself: fast and exact where lines are independent, else a good guess. What the other lines do to a run
 * (a mould or team that comes late) enters as the order's `ready`, learnt from the last full decode; a mould in use on other
 * lines at the time moves a new run behind that use.
 */
export class LineModel {
  readonly problem: CompiledProblem;
  private readonly sequences: Sequences;
  readonly free: LineTimes["free"];
  readonly setup: LineTimes["setup"];
  readonly start: LineTimes["start"];
  readonly change: LineTimes["change"];
  readonly gap: LineTimes["gap"];
  readonly cost: LineTimes["cost"];
  readonly lateRate: LineTimes["lateRate"];
  /** [lot] s before which the rest of the plant does not let it start */
  readonly ready: Int32Array;
  readonly lateness: SplitLateness;
  readonly mouldRuns: MouldRuns;
  /** What `learn` left behind, for `restore`. */
  private readonly saved: LineTimes;
  private readonly savedReady: Int32Array;
  evaluations = 0;
  // answer of `simulate`
  private runStart = 0;
  private runEnd = 0;
  private money = 0;

  constructor(problem: CompiledProblem, sequences: Sequences) {
    this.problem = problem;
    this.sequences = sequences;
    const times = createTimes(sequences);
    this.free = times.free;
    this.setup = times.setup;
    this.start = times.start;
    this.change = times.change;
    this.gap = times.gap;
    this.cost = times.cost;
    this.lateRate = times.lateRate;
    this.ready = new Int32Array(problem.lots.count);
    this.lateness = new SplitLateness(problem);
    this.mouldRuns = new MouldRuns(problem, sequences, times);
    this.saved = createTimes(sequences);
    this.savedReady = new Int32Array(this.ready.length);
  }

  /** Times one option on a line; true when it runs. Leaves start, end and money (changes and lateness) behind. */
  private simulate(free: number, from: number, option: number, notBefore: number): boolean {
    const { problem } = this;
    const { jobs, options, lines, changes } = problem;
    const line = options.line[option]!;
    const job = options.job[option]!;
    const lot = options.lot[option]!;
    const fixed = problem.lots.fixedStart[lot]!;
    let wanted = jobs.release[job]!;
    if (fixed > wanted) wanted = fixed;
    if (this.ready[lot]! > wanted) wanted = this.ready[lot]!;
    if (notBefore > wanted) wanted = notBefore;
    const opens = options.availableFrom[option]!;
    if (opens > wanted) wanted = opens;
    let at = opens > free ? opens : free;
    if (problem.changeAwaitsEarliestStart && wanted > at) at = wanted;
    let money = 0;
    const { terms } = problem;
    if (from >= 0) {
      const row = (lines.changeClass[line]! * changes.setupCount + from) * changes.setupCount;
      const spec = changes.matrix[row + options.setup[option]!]!;
      if (spec >= 0) {
        const teamWork = changes.teamWork[spec]!;
        const opening = teamWork > 0 ? problem.anyTeam : lines.calendar[line]!;
        const changeStart = changes.total[spec]! > 0 ? nextOpen(opening, at) : at;
        if (teamWork > 0) at = addWork(problem.anyTeam, changeStart, teamWork);
        at = addWork(lines.calendar[line]!, at, changes.tail[spec]!);
        money = changes.cost[spec]!;
        if (terms.overtime && at < NEVER)
          money += problem.overtimePrice * hoursIn(lines.overtime[line]!, { from: changeStart, to: at });
      }
    }
    const work = lotSeconds(problem, this.sequences, option);
    let start = nextOpen(lines.runCalendar[line]!, at > wanted ? at : wanted);
    if (fixed < 0 && lines.pool[line]! < 0) start = worthwhileStart(problem, line, { start, work, job });
    if (start > jobs.latestStart[job]! || (fixed >= 0 && start !== fixed)) return this.passOver(job);
    const end = runEnd(problem, line, start, work);
    if (end >= NEVER) return this.passOver(job);
    money += this.lateness.of(lot, job, end);
    if (terms.overtime)
      money += problem.overtimePrice * hoursIn(lines.mannedOvertime[line]!, { from: start, to: end });
    if (terms.stability) money += moveMoney(problem, option, start);
    this.runStart = start;
    this.runEnd = end;
    this.money = money;
    return true;
  }

  private passOver(job: number): false {
    this.money = this.problem.jobs.unplanned[job]!;
    return false;
  }

  /** Money of a line by its rows. */
  moneyOf(line: number): number {
    const costs = this.cost[line]!;
    let money = 0;
    for (let p = 0; p < this.sequences.length[line]!; p++) money += costs[p]!;
    return money;
  }

  freeBefore(line: number, position: number): number {
    return position === 0 ? this.problem.lines.freeAt[line]! : this.free[line]![position - 1]!;
  }

  setupBefore(line: number, position: number): number {
    return position === 0 ? this.problem.lines.initialSetup[line]! : this.setup[line]![position - 1]!;
  }

  /** Times a line anew from a position on. */
  refresh(line: number, position: number): void {
    const { options } = this.problem;
    const row = this.sequences.at[line]!;
    const length = this.sequences.length[line]!;
    let free = this.freeBefore(line, position);
    let setup = this.setupBefore(line, position);
    for (let p = position; p < length; p++) {
      const option = row[p]!;
      if (this.simulate(free, setup, option, 0)) {
        free = this.runEnd;
        setup = options.setup[option]!;
        this.start[line]![p] = this.runStart;
      } else this.start[line]![p] = NEVER;
      this.keep(line, p, free, setup);
    }
    this.sumLateRates(line);
  }

  private keep(line: number, p: number, free: number, setup: number): void {
    const change = this.changeBefore(line, p);
    this.change[line]![p] = change;
    // what the run could start at if nothing but its line and the work of its change mattered
    const couldStart = this.freeBefore(line, p) + (change < 0 ? 0 : this.problem.changes.total[change]!);
    this.gap[line]![p] = this.start[line]![p]! - couldStart;
    this.free[line]![p] = free;
    this.setup[line]![p] = setup;
    this.cost[line]![p] = this.money;
  }

  /** Spec of the change from what is mounted before a position to the run there, or -1. */
  private changeBefore(line: number, p: number): number {
    const { options, changes, lines } = this.problem;
    const before = this.setupBefore(line, p);
    if (before < 0) return -1;
    const setup = options.setup[this.sequences.at[line]![p]!]!;
    return changes.matrix[
      (lines.changeClass[line]! * changes.setupCount + before) * changes.setupCount + setup
    ]!;
  }

  /**
   * Takes the times of a full decode, and learns what each run had to wait for beyond its line. `changedFrom[line]` is the first
   * position where the line has other runs than when the model learnt last, below 0 for none; null when all is to be learnt anew.
   */
  learn(decoder: Decoder, changedFrom: Int32Array | null): void {
    const { problem, sequences } = this;
    // what the lots of an order cost depends on one another
    const from = problem.lots.count === problem.jobs.count ? changedFrom : null;
    this.lateness.learn(decoder);
    if (changedFrom === null) this.mouldRuns.recountAll();
    for (let line = 0; line < problem.lines.count; line++) {
      const length = sequences.length[line]!;
      const first = from === null ? 0 : this.firstToLearn(decoder, line, from[line]!);
      if (from !== null && first === length && from[line]! < 0) continue;
      this.learnLine(decoder, line, first);
      this.sumLateRates(line);
      copyTimes(this, this.saved, line, [first, length]);
    }
    this.savedReady.set(this.ready);
    this.mouldRuns.keep();
  }

  /** First position of a line whose times are not those learnt last, at most `changedFrom` where that is 0 or more. */
  private firstToLearn({ option, start, end }: Decoder, line: number, changedFrom: number): number {
    const row = this.sequences.at[line]!;
    const limit = changedFrom < 0 ? this.sequences.length[line]! : changedFrom;
    for (let p = 0; p < limit; p++) {
      const lot = this.problem.options.lot[row[p]!]!;
      const runs = option[lot] === row[p];
      if (this.saved.start[line]![p] !== (runs ? start[lot]! : NEVER)) return p;
      if (runs && this.saved.free[line]![p] !== end[lot]) return p;
    }
    return limit;
  }

  private learnLine(decoder: Decoder, line: number, first: number): void {
    const { ready } = this;
    const { options } = this.problem;
    const row = this.sequences.at[line]!;
    const length = this.sequences.length[line]!;
    let free = this.freeBefore(line, first);
    let setup = this.setupBefore(line, first);
    for (let p = first; p < length; p++) {
      const option = row[p]!;
      const lot = options.lot[option]!;
      const job = options.job[option]!;
      ready[lot] = 0;
      const runs = this.simulate(free, setup, option, 0);
      if (decoder.option[lot] === option) {
        if (!runs || decoder.start[lot]! > this.runStart) ready[lot] = decoder.start[lot]!;
        if (ready[lot] > 0) this.simulate(free, setup, option, 0);
        if (decoder.end[lot] !== this.runEnd)
          this.money +=
            this.lateness.of(lot, job, decoder.end[lot]!) - this.lateness.of(lot, job, this.runEnd);
        free = decoder.end[lot]!;
        setup = options.setup[option]!;
        this.start[line]![p] = decoder.start[lot]!;
      } else {
        this.passOver(job);
        this.start[line]![p] = NEVER;
      }
      this.keep(line, p, free, setup);
    }
  }

  /** Goes back to what `learn` left behind on the lines that were touched since (`from[line]` >= 0); the caller restores the sequences. */
  restore(from: Int32Array): void {
    for (let line = 0; line < from.length; line++) {
      if (from[line]! >= 0) copyTimes(this.saved, this, line, [from[line]!, this.sequences.length[line]!]);
    }
    this.ready.set(this.savedReady);
    this.lateness.restore();
    this.mouldRuns.restore();
  }

  private sumLateRates(line: number): void {
    const { options } = this.problem;
    const row = this.sequences.at[line]!;
    const rates = this.lateRate[line]!;
    const length = this.sequences.length[line]!;
    rates[length] = 0;
    for (let p = length - 1; p >= 0; p--) {
      const option = row[p]!;
      const rate =
        this.start[line]![p]! < NEVER
          ? this.lateness.rateOf(options.lot[option]!, options.job[option]!, this.free[line]![p]!)
          : 0;
      rates[p] = rates[p + 1]! + rate;
    }
  }

  /**
   * Money that an option adds when it is put at a position of its line; Infinity when it could not run there, or as soon as
   * it is known to be `limit` or more. May be too high a guess once the answer is "too dear" anyway.
   */
  insertion(option: number, position: number, limit: number): number {
    this.evaluations++;
    const { problem } = this;
    const { options, lines, setups } = problem;
    const line = options.line[option]!;
    let free = this.freeBefore(line, position);
    let setup = this.setupBefore(line, position);
    if (!this.simulate(free, setup, option, 0)) return Infinity;
    let delta = this.money;
    if (delta >= limit) return Infinity;
    const mould = setups.mould[options.setup[option]!]!;
    if (mould >= 0 && this.mouldRuns.isScarce(mould, line)) {
      for (let tries = 0; ; tries++) {
        const behind = this.mouldRuns.takenUntil(mould, line, [this.runStart, this.runEnd]);
        if (behind === 0) break;
        if (tries === 4 || !this.simulate(free, setup, option, behind)) return Infinity;
      }
      delta = this.money;
      if (delta >= limit) return Infinity;
    }
    free = this.runEnd;
    setup = options.setup[option]!;
    const row = this.sequences.at[line]!;
    const length = this.sequences.length[line]!;
    const frees = this.free[line]!;
    const setups_ = this.setup[line]!;
    const costs = this.cost[line]!;
    const rates = this.lateRate[line]!;
    for (let p = position; p < length; p++) {
      const next = row[p]!;
      if (this.simulate(free, setup, next, 0)) {
        free = this.runEnd;
        setup = options.setup[next]!;
      }
      delta += this.money - costs[p]!;
      const shift = free - frees[p]!;
      if (shift === 0 && setup === setups_[p]) return delta;
      if (delta + shift * rates[p + 1]! >= limit && shift > 0) return Infinity;
    }
    if (problem.makespanPrice > 0) {
      const before = length === 0 ? lines.freeAt[line]! : frees[length - 1]!;
      delta += problem.makespanPrice * (free - before) * 0.5;
    }
    return delta;
  }
}
