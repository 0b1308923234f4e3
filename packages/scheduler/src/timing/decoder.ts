import { NEVER } from "../problem/calendar.ts";
import { gramsOf } from "../problem/compile-jobs.ts";
import type { CompiledProblem } from "../problem/compiled-problem.ts";
import { bookChange, bookStripping } from "./change-booking.ts";
import { createChangeLog, type ChangeLog } from "./change-log.ts";
import { noChangeTimes, type ChangeAsk, type ChangeTimes } from "./change-timing.ts";
import { clearSums, moneyOf, zeroSums, type CostSums } from "./cost-sums.ts";
import { copyState, takeState, type DecoderState, type Stops } from "./decoder-state.ts";
import { takeHeads } from "./head-ledger.ts";
import { chooseCopy, noCopyChoice, timeChangeInTime, type CopyChoice } from "./mould-choice.ts";
import { countCycles, serviceBefore } from "./mould-service.ts";
import { mouldSpells } from "./mould-spells.ts";
import { PlanTally } from "./plan-tally.ts";
import { createLedger, releaseCopy, resetLedger, sheetInstant, type PlantLedger } from "./plant-ledger.ts";
import { runEnd, runStart, runStretches, worthwhileStart, type Stretch } from "./run-timing.ts";
import { lotSeconds, type Sequences } from "./sequences.ts";

/** How often polled costs are compared with the limit: every so many steps. */
const LIMIT_STRIDE = 16;

/**
 * Times a whole plan from its sequences, under every rule: an event-ordered list schedule. The line whose next step can
 * begin first goes first (lower number on a tie); a step is one order with all that it needs: stripping the mould from an
 * idle line, the change, the run. Each step ends in finite time, and a mould on an idle line can always be stripped, so lines
 * never wait for each other in a ring. An order that cannot be done as its place demands is passed over and counts as
 * unplanned; a plan with some lots of an order and not the others is none. O(orders × lines) and a little more.
 */
export class Decoder {
  readonly problem: CompiledProblem;
  readonly sums: CostSums = zeroSums();
  readonly log: ChangeLog;
  /** [lot] option that runs or -1; start and end of the run, s after the horizon's start */
  readonly option: Int32Array;
  readonly start: Int32Array;
  readonly end: Int32Array;
  /** [lot] copy in use or -1 */
  readonly copy: Int32Array;
  /** [lot] its change in the log or -1 */
  readonly change: Int32Array;
  /** [lot] s at which the service of its mould before it starts, or -1 */
  readonly service: Int32Array;
  /** [lot] stretches of the run; kept only when asked for */
  readonly stretches: (readonly Stretch[])[] = [];
  readonly ledger: PlantLedger;
  readonly tally: PlanTally;
  private readonly next: Int32Array;
  private readonly key: Int32Array;
  private readonly keepStretches: boolean;
  private sequences: Sequences | null = null;
  // the step under consideration
  private readonly ask: ChangeAsk = { line: 0, spec: -1, from: 0, mouldAt: 0, neededAt: 0 };
  private readonly times: ChangeTimes = noChangeTimes();
  private readonly choice: CopyChoice = noCopyChoice();
  private spec = -1;
  /** The change does not wait until shortly before its run. */
  private changesAtOnce = false;
  /** s at which mounting must be done */
  private mountedBy = NEVER;
  /** The order's latest start is left aside. */
  private startsAtAnyTime = false;
  private serviceFrom = -1;
  private runFrom = 0;
  private runTo = 0;
  private runParts: readonly Stretch[] | null = null;

  constructor(problem: CompiledProblem, keepStretches: boolean) {
    this.problem = problem;
    this.keepStretches = keepStretches;
    const lots = problem.lots.count;
    const lines = problem.lines.count;
    this.log = createChangeLog(2 * lots + lines);
    this.option = new Int32Array(lots);
    this.start = new Int32Array(lots);
    this.end = new Int32Array(lots);
    this.copy = new Int32Array(lots);
    this.change = new Int32Array(lots);
    this.service = new Int32Array(lots);
    this.tally = new PlanTally(problem, this.sums);
    this.next = new Int32Array(lines);
    this.key = new Int32Array(lines);
    this.ledger = createLedger(problem);
  }

  /** Money of the plan, lateness taken `lateScale` times; Infinity as soon as it exceeds `limit`, and where an order is torn. */
  decode(sequences: Sequences, lateScale = 1, limit = Infinity): number {
    this.begin(sequences);
    if (!this.run({ lateScale, limit, latestEnd: null, mostSteps: Infinity })) return Infinity;
    if (!this.tally.finish(sequences)) return Infinity;
    const money = moneyOf(this.problem, this.sums, lateScale);
    return money > limit ? Infinity : money;
  }

  /** Times a plan and keeps the state before its first step and after every `stride` steps, in order. */
  decodeKeeping(sequences: Sequences, stride: number): DecoderState[] {
    this.begin(sequences);
    const states: DecoderState[] = [];
    do states.push(copyState(this.problem, this.state()));
    while (!this.run({ lateScale: 1, limit: Infinity, latestEnd: null, mostSteps: stride }));
    return states;
  }

  /**
   * Times sequences from a state on that `decodeKeeping` kept. Up to the next run of every line, that one included, they must be
   * those it was kept for; from the first state on they may be any. False as soon as a lot ends after `latestEnd[lot]`, s, or is
   * passed over while that is before NEVER. Changes of the log that are older than the state are not restored.
   */
  decodeFrom(state: DecoderState, sequences: Sequences, latestEnd: Float64Array): boolean {
    this.sequences = sequences;
    takeState(state, this.state());
    this.log.count = state.logged;
    for (let line = 0; line < this.key.length; line++) {
      const isNew = state.key[line] === NEVER && this.next[line]! < sequences.length[line]!;
      if (isNew) this.key[line] = Math.min(NEVER - 1, this.ledger.lineFree[line]!);
    }
    return this.run({ lateScale: 1, limit: Infinity, latestEnd, mostSteps: Infinity });
  }

  /** Steps on; true when nothing is left to do, false when `mostSteps` are done or what is asked for cannot be had any more. */
  private run({ lateScale, limit, latestEnd, mostSteps }: Stops): boolean {
    const { key, next, ledger } = this;
    const sequences = this.sequences!;
    const lines = key.length;
    for (let steps = 0; ;) {
      let line = -1;
      let least = NEVER;
      let second = NEVER;
      for (let l = 0; l < lines; l++) {
        const value = key[l]!;
        if (value < least) {
          second = least;
          least = value;
          line = l;
        } else if (value < second) second = value;
      }
      if (line < 0) return true;
      let option = sequences.at[line]![next[line]!]!;
      let at = this.propose(line, option);
      if (this.choice.yieldTo >= 0) {
        // the mould hangs on a line that goes on with it at once, or takes it out anyhow: that step comes first
        line = this.choice.yieldTo;
        option = sequences.at[line]![next[line]!]!;
        this.changesAtOnce = this.choice.atOnce;
        at = this.propose(line, option);
        this.changesAtOnce = false;
      } else if (at < NEVER && at > second) {
        key[line] = at;
        continue;
      }
      if (at < NEVER) this.commit(line, option);
      else this.option[this.problem.options.lot[option]!] = -1;
      next[line]!++;
      key[line] = next[line]! < sequences.length[line]! ? Math.max(least, ledger.lineFree[line]!) : NEVER;
      if (latestEnd !== null) {
        const end = at < NEVER ? this.runTo : NEVER;
        if (end > latestEnd[this.problem.options.lot[option]!]!) return false;
      }
      if (++steps % LIMIT_STRIDE === 0 && moneyOf(this.problem, this.sums, lateScale) > limit) return false;
      if (steps >= mostSteps) return false;
    }
  }

  /**
   * Instant (s) at which an option would start behind all that its line runs in the plan timed last, its order's latest start
   * left aside; NEVER where another rule forbids it. The plan stays as it is.
   */
  startBehind(option: number): number {
    this.startsAtAnyTime = true;
    const at = this.propose(this.problem.options.line[option]!, option);
    this.startsAtAnyTime = false;
    return at >= NEVER ? NEVER : this.runFrom;
  }

  /** Pieces of a lot in the plan timed last. */
  piecesOf(lot: number): number {
    return this.sequences!.pieces[lot]!;
  }

  /** All that a decode under way changes, but for the log's rows and the stretches. */
  private state(): DecoderState {
    const { ledger, next, key, sums, tally, option, start, end, copy, change, service } = this;
    const columns = [option, start, end, copy, change, service, ...tally.columns];
    return { ledger, next, key, columns, sums, logged: this.log.count };
  }

  private begin(sequences: Sequences): void {
    this.sequences = sequences;
    resetLedger(this.problem, this.ledger);
    clearSums(this.sums);
    this.log.count = 0;
    this.option.fill(-1);
    this.tally.clear();
    this.next.fill(0);
    this.stretches.length = 0;
    for (let line = 0; line < this.key.length; line++) {
      this.key[line] = sequences.length[line]! > 0 ? Math.min(NEVER - 1, this.ledger.lineFree[line]!) : NEVER;
    }
  }

  /** Works out the next step of a line; its instant, or NEVER when it cannot be done. */
  private propose(line: number, option: number): number {
    const { problem, ledger, choice } = this;
    const setup = problem.options.setup[option]!;
    const mould = problem.setups.mould[setup]!;
    const from = ledger.lineSetup[line]!;
    const { matrix, setupCount } = problem.changes;
    this.spec =
      from < 0 ? -1 : matrix[(problem.lines.changeClass[line]! * setupCount + from) * setupCount + setup]!;
    choice.holder = -1;
    choice.yieldTo = -1;
    choice.copy = -1;
    if (mould < 0) return this.attempt(line, option, 0, 0);
    const held = ledger.lineCopy[line]!;
    if (held >= 0 && problem.moulds.mouldOfCopy[held] === mould) choice.copy = held;
    else {
      chooseCopy(
        { problem, ledger, sequences: this.sequences!, next: this.next, ask: this.ask },
        line,
        mould,
        choice,
      );
      if (choice.yieldTo >= 0 || choice.copy < 0) return NEVER;
    }
    const isHeld = choice.copy === held;
    const service = problem.moulds.service[choice.copy]!;
    const mouldAt = isHeld ? 0 : choice.readyAt;
    if (service === null) return this.attempt(line, option, mouldAt, 0);
    for (const spells of mouldSpells(service, isHeld, this.spec >= 0)) {
      const from = Math.max(mouldAt, spells.mountFrom);
      if (from >= spells.mountedBy) continue;
      this.mountedBy = spells.mountedBy;
      const at = this.attempt(line, option, from, spells.runFrom);
      this.mountedBy = NEVER;
      if (at < NEVER && this.runTo <= spells.runBy) return at;
    }
    return NEVER;
  }

  /** Times change and run with the mould there from `mouldAt` on and no run before `runFrom`. */
  private attempt(line: number, option: number, mouldAt: number, runFrom: number): number {
    const { problem, ledger, ask, times, choice } = this;
    const { jobs, lots, options } = problem;
    const job = options.job[option]!;
    const pieces = this.sequences!.pieces[options.lot[option]!]!;
    const fixed = lots.fixedStart[options.lot[option]!]!;
    const opens = options.availableFrom[option]!;
    const wanted = Math.max(
      jobs.release[job]!,
      sheetInstant(problem, ledger, { job, pieces }),
      fixed,
      opens,
      runFrom,
    );
    if (wanted >= NEVER) return NEVER;
    const service = serviceBefore(problem, ledger, { copy: choice.copy, option, pieces });
    let ready = ledger.lineFree[line]!;
    if (opens > ready) ready = opens;
    if (problem.changeAwaitsEarliestStart && wanted > ready) ready = wanted;
    if (this.spec >= 0) {
      ask.line = line;
      ask.spec = this.spec;
      ask.from = ready;
      ask.mouldAt = mouldAt;
      ask.neededAt = this.changesAtOnce ? 0 : wanted - service;
      timeChangeInTime({ problem, ledger, ask }, choice, this.mountedBy, times);
      if (times.start >= NEVER) return NEVER;
      ready = times.end;
    } else ready = Math.max(ready, mouldAt);
    this.serviceFrom = service > 0 ? ready : -1;
    ready += service;
    const pool = problem.lines.pool[line]!;
    const heads = pool < 0 ? null : ledger.heads[pool]!;
    const work = lotSeconds(problem, this.sequences!, option);
    let start = runStart(problem, line, Math.max(ready, wanted), heads);
    if (fixed < 0 && heads === null) start = worthwhileStart(problem, line, { start, work, job });
    if (start >= NEVER || (fixed >= 0 && start !== fixed)) return NEVER;
    if (start > jobs.latestStart[job]! && !this.startsAtAnyTime) return NEVER;
    this.runFrom = start;
    if (heads !== null || this.keepStretches) {
      this.runParts = runStretches(problem, { line, start, work }, heads);
      this.runTo = this.runParts === null ? NEVER : this.runParts[this.runParts.length - 1]!.to;
    } else this.runTo = runEnd(problem, line, start, work);
    if (this.runTo >= NEVER) return NEVER;
    return this.spec >= 0 ? times.start : this.takesFrom;
  }

  /** Instant from which the step last proposed has its mould where no change mounts it. */
  private get takesFrom(): number {
    return this.serviceFrom >= 0 ? this.serviceFrom : this.runFrom;
  }

  /** Books the step last proposed. */
  private commit(line: number, option: number): void {
    const { problem, ledger, choice, times } = this;
    const { jobs, options, setups } = problem;
    const lot = options.lot[option]!;
    const job = options.job[option]!;
    const setup = options.setup[option]!;
    if (choice.holder >= 0) bookStripping(this, choice.holder, choice.strip);
    const held = ledger.lineCopy[line]!;
    const mounts = choice.copy >= 0 && choice.copy !== held;
    const leaves = held >= 0 && (mounts || setups.mould[setup]! < 0);
    this.change[lot] = -1;
    if (this.spec >= 0) {
      this.change[lot] = this.log.count;
      bookChange(
        this,
        {
          line,
          to: setup,
          spec: this.spec,
          copyOut: leaves ? held : -1,
          copyIn: mounts ? choice.copy : -1,
          stripping: false,
        },
        times,
      );
    }
    if (leaves) releaseCopy(ledger, held, line, this.spec >= 0 ? times.mountStart : this.takesFrom);
    if (leaves) ledger.lineCopy[line] = -1;
    if (mounts) {
      ledger.lineCopy[line] = choice.copy;
      ledger.copyLine[choice.copy] = line;
    }
    ledger.lineSetup[line] = setup;
    ledger.lineFree[line] = this.runTo;
    const sheet = jobs.sheet[job]!;
    if (sheet >= 0)
      ledger.gramsTaken[sheet]! += gramsOf(this.sequences!.pieces[lot]!, jobs.gramsPerPiece[job]!);
    const pool = problem.lines.pool[line]!;
    if (pool >= 0) {
      for (const part of this.runParts!)
        takeHeads(ledger.heads[pool]!, [part.from, part.to], problem.lines.heads[line]!);
    }
    this.option[lot] = option;
    this.start[lot] = this.runFrom;
    this.end[lot] = this.runTo;
    this.copy[lot] = choice.copy;
    this.service[lot] = this.serviceFrom;
    const made = { copy: choice.copy, option, pieces: this.sequences!.pieces[lot]! };
    countCycles(problem, ledger, made, this.serviceFrom >= 0);
    if (this.keepStretches) this.stretches[lot] = this.runParts!;
    const work = lotSeconds(problem, this.sequences!, option);
    this.tally.countRun({ line, job, from: this.runFrom, to: this.runTo, work, parts: this.runParts });
  }
}
