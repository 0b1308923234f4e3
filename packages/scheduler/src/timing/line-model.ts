import { addWork, NEVER, nextOpen } from "../problem/calendar.ts";
import type { CompiledProblem } from "../problem/compiled-problem.ts";
import type { Decoder } from "./decoder.ts";
import { hoursIn } from "./line-hours.ts";
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
  readonly gap: LineTimes["gap"];
  readonly cost: LineTimes["cost"];
  readonly lateRate: LineTimes["lateRate"];
  /** [lot] s before which the rest of the plant does not let it start */
  readonly ready: Int32Array;
  readonly lateness: SplitLateness;
  /** [mould × line] runs of the mould there */
  private readonly mouldRuns: Int32Array;
  /** What `learn` left behind, for `restore`. */
  private readonly saved: LineTimes;
  private readonly savedReady: Int32Array;
  private readonly savedRuns: Int32Array;
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
    this.gap = times.gap;
    this.cost = times.cost;
    this.lateRate = times.lateRate;
    this.ready = new Int32Array(problem.lots.count);
    this.lateness = new SplitLateness(problem);
    this.mouldRuns = new Int32Array(problem.moulds.count * problem.lines.count);
    this.saved = createTimes(sequences);
    this.savedReady = new Int32Array(this.ready.length);
    this.savedRuns = new Int32Array(this.mouldRuns.length);
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
    this.gap[line]![p] = this.start[line]![p]! - this.couldStart(line, p);
    this.free[line]![p] = free;
    this.setup[line]![p] = setup;
    this.cost[line]![p] = this.money;
  }

  /** Instant at which the run at a position could start if nothing but its line and the work of its change mattered. */
  private couldStart(line: number, p: number): number {
    const { options, changes, lines } = this.problem;
    const before = this.setupBefore(line, p);
    const free = this.freeBefore(line, p);
    if (before < 0) return free;
    const setup = options.setup[this.sequences.at[line]![p]!]!;
    const row = (lines.changeClass[line]! * changes.setupCount + before) * changes.setupCount;
    const spec = changes.matrix[row + setup]!;
    return spec < 0 ? free : free + changes.total[spec]!;
  }

  /** Takes the times of a full decode for all lines, and learns what each run had to wait for beyond its line. */
  learn(decoder: Decoder): void {
    const { problem, ready } = this;
    const { options, moulds, setups, lines } = problem;
    this.lateness.learn(decoder);
    this.mouldRuns.fill(0);
    for (let line = 0; line < lines.count; line++) {
      const row = this.sequences.at[line]!;
      const length = this.sequences.length[line]!;
      let free = lines.freeAt[line]!;
      let setup = lines.initialSetup[line]!;
      for (let p = 0; p < length; p++) {
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
        const mould = setups.mould[options.setup[option]!]!;
        if (mould >= 0 && moulds.count > 0) this.mouldRuns[mould * lines.count + line]!++;
      }
      this.sumLateRates(line);
    }
    for (let line = 0; line < lines.count; line++) {
      copyTimes(this, this.saved, line, this.sequences.length[line]!);
    }
    this.savedReady.set(ready);
    this.savedRuns.set(this.mouldRuns);
  }

  /** Goes back to what `learn` left behind on the lines that were touched since (`from[line]` >= 0); the caller restores the sequences. */
  restore(from: Int32Array): void {
    for (let line = 0; line < from.length; line++) {
      if (from[line]! >= 0) copyTimes(this.saved, this, line, this.sequences.length[line]!);
    }
    this.ready.set(this.savedReady);
    this.lateness.restore();
    this.mouldRuns.set(this.savedRuns);
  }

  /** Counts the runs of every mould on a line anew, after runs were taken out of it. */
  recountMoulds(line: number): void {
    const { moulds, lines, options, setups } = this.problem;
    for (let mould = 0; mould < moulds.count; mould++) this.mouldRuns[mould * lines.count + line] = 0;
    const row = this.sequences.at[line]!;
    const length = this.sequences.length[line]!;
    for (let p = 0; p < length; p++) {
      const mould = setups.mould[options.setup[row[p]!]!]!;
      if (mould >= 0) this.mouldRuns[mould * lines.count + line]!++;
    }
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

  /** Keeps the count of a mould's runs per line when a run is taken out (-1) or put in (+1). */
  countMould(option: number, change: 1 | -1): void {
    const { options, setups, lines } = this.problem;
    const mould = setups.mould[options.setup[option]!]!;
    if (mould >= 0) this.mouldRuns[mould * lines.count + options.line[option]!]! += change;
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
    if (mould >= 0 && this.mouldIsScarce(mould, line)) {
      for (let tries = 0; ; tries++) {
        const behind = this.mouldTakenUntil(mould, line, this.runStart, this.runEnd);
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

  /** True when fewer copies than lines would use the mould. */
  private mouldIsScarce(mould: number, line: number): boolean {
    const { moulds, lines } = this.problem;
    const copies = moulds.firstCopy[mould + 1]! - moulds.firstCopy[mould]!;
    let others = 0;
    const base = mould * lines.count;
    for (let l = 0; l < lines.count; l++) if (l !== line && this.mouldRuns[base + l]! > 0) others++;
    return others >= copies;
  }

  /** 0 when a copy is free during [from, to) as far as the other lines' runs tell; else when the first of them is free again. */
  private mouldTakenUntil(mould: number, line: number, from: number, to: number): number {
    const { moulds, lines, options, setups } = this.problem;
    const copies = moulds.firstCopy[mould + 1]! - moulds.firstCopy[mould]!;
    const base = mould * lines.count;
    let taken = 0;
    let soonest = NEVER;
    for (let l = 0; l < lines.count; l++) {
      if (l === line || this.mouldRuns[base + l] === 0) continue;
      const row = this.sequences.at[l]!;
      const length = this.sequences.length[l]!;
      for (let p = 0; p < length; p++) {
        if (this.start[l]![p]! >= to) break;
        if (this.free[l]![p]! <= from || setups.mould[options.setup[row[p]!]!] !== mould) continue;
        taken++;
        if (this.free[l]![p]! < soonest) soonest = this.free[l]![p]!;
        break;
      }
    }
    return taken < copies ? 0 : soonest + moulds.carrying[mould]! + 1;
  }
}
