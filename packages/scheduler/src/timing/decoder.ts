import { NEVER } from "../problem/calendar.ts";
import type { CompiledProblem } from "../problem/compiled-problem.ts";
import { bookChange, bookStripping } from "./change-booking.ts";
import { createChangeLog, type ChangeLog } from "./change-log.ts";
import { clearSums, moneyOf, zeroSums, type CostSums } from "./cost-sums.ts";
import { copyState, takeState, type DecoderState, type Stops } from "./decoder-state.ts";
import { takeHeads } from "./head-ledger.ts";
import { LineQueue } from "./line-queue.ts";
import { countCycles } from "./mould-service.ts";
import { PlanTally } from "./plan-tally.ts";
import {
  createLedger,
  mountCopy,
  releaseCopy,
  resetLedger,
  takeSheet,
  type PlantLedger,
} from "./plant-ledger.ts";
import type { Stretch } from "./run-timing.ts";
import type { Sequences } from "./sequences.ts";
import { StepProposal } from "./step-proposal.ts";
import { GIVING_WAY, keyOfNext, Turn, type Turns } from "./turns.ts";

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
  private readonly queue: LineQueue;
  private turns: Turns | null = null;
  /** the step under consideration */
  private readonly step: StepProposal;

  constructor(problem: CompiledProblem, keepStretches: boolean) {
    this.problem = problem;
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
    this.queue = new LineQueue(lines);
    this.ledger = createLedger(problem);
    this.step = new StepProposal(problem, this.ledger, keepStretches);
  }

  /** Money of the plan, lateness taken `lateScale` times; Infinity as soon as it exceeds `limit`, and where an order is torn. */
  decode(sequences: Sequences, lateScale = 1, limit = Infinity): number {
    return this.decodeOn(sequences, null, { lateScale, limit, stride: Infinity }, () => undefined);
  }

  /**
   * As `decode`, but from a state of another plan on, if one is given: see `decodeFrom` for what must be alike. `onState` is shown
   * the state after every `stride` steps, which it must copy to keep.
   */
  decodeOn(
    sequences: Sequences,
    from: DecoderState | null,
    {
      lateScale,
      limit,
      stride,
    }: { readonly lateScale: number; readonly limit: number; readonly stride: number },
    onState: (state: DecoderState) => void,
  ): number {
    if (from === null) this.begin(sequences);
    else this.resume(from, sequences);
    while (!this.run({ lateScale, limit, latestEnd: null, mostSteps: stride })) {
      if (moneyOf(this.problem, this.sums, lateScale) > limit) return Infinity;
      onState(this.state());
    }
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
    this.resume(state, sequences);
    return this.run({ lateScale: 1, limit: Infinity, latestEnd, mostSteps: Infinity });
  }

  private resume(state: DecoderState, sequences: Sequences): void {
    const turns = this.take(sequences);
    takeState(state, this.state());
    this.log.count = state.logged;
    const { key } = this.queue;
    for (let line = 0; line < key.length; line++)
      // another run than the one that was to come last, or none, may be next
      if (state.key[line]! >= GIVING_WAY) key[line] = keyOfNext(turns, line, 0);
  }

  /** Steps on; true when nothing is left to do, false when `mostSteps` are done or what is asked for cannot be had any more. */
  private run({ lateScale, limit, latestEnd, mostSteps }: Stops): boolean {
    const { queue, next, step } = this;
    const { sequences } = this.turns!;
    const { options } = this.problem;
    for (let steps = 0; ;) {
      let line = queue.pick();
      if (line < 0) return true;
      let option = sequences.at[line]![next[line]!]!;
      const turn = sequences.turn[options.lot[option]!]!;
      if (turn === Turn.strippedFirst && this.stripsFirst(line)) continue;
      let at = step.propose(line, option);
      const { yieldTo, atOnce } = step.choice;
      if (yieldTo >= 0) {
        // the mould hangs on a line that goes on with it at once, or takes it out anyhow: that step comes first
        line = yieldTo;
        option = sequences.at[line]![next[line]!]!;
        at = step.propose(line, option, atOnce);
      } else if (at < NEVER && at > queue.second) {
        queue.key[line] = at;
        continue;
      }
      if (at < NEVER) this.commit(line, option);
      else this.option[options.lot[option]!] = -1;
      next[line]!++;
      queue.key[line] = keyOfNext(this.turns!, line, queue.least);
      if (latestEnd !== null) {
        const end = at < NEVER ? step.runTo : NEVER;
        if (end > latestEnd[options.lot[option]!]!) return false;
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
    return this.step.startBehind(option);
  }

  /** Pieces of a lot in the plan timed last, and how it took its turn. */
  piecesOf(lot: number): number {
    return this.turns!.sequences.pieces[lot]!;
  }

  turnOf(lot: number): number {
    return this.turns!.sequences.turn[lot]!;
  }

  /** All that a decode under way changes, but for the log's rows and the stretches. */
  private state(): DecoderState {
    const { ledger, next, queue, sums, tally, option, start, end, copy, change, service } = this;
    const columns = [option, start, end, copy, change, service, ...tally.columns];
    return { ledger, next, key: queue.key, columns, sums, logged: this.log.count };
  }

  private begin(sequences: Sequences): void {
    const turns = this.take(sequences);
    resetLedger(this.problem, this.ledger);
    clearSums(this.sums);
    this.log.count = 0;
    this.option.fill(-1);
    this.tally.clear();
    this.next.fill(0);
    this.stretches.length = 0;
    const { key } = this.queue;
    for (let line = 0; line < key.length; line++) key[line] = keyOfNext(turns, line, 0);
  }

  private take(sequences: Sequences): Turns {
    const { problem, ledger, next } = this;
    this.turns = { problem, ledger, sequences, next };
    this.step.begin(this.turns);
    return this.turns;
  }

  /** Takes the mould out of a line whose next run asks for that, or notes when that can be; false where it is not to be done. */
  private stripsFirst(line: number): boolean {
    const { ledger, queue, step } = this;
    if (ledger.lineCopy[line]! < 0) return false;
    const at = step.proposeStripping(line);
    if (at >= NEVER) return false;
    if (at <= queue.second) bookStripping(this, line, step.times);
    queue.key[line] = Math.max(at, ledger.lineFree[line]!);
    return true;
  }

  /** Books the step last proposed. */
  private commit(line: number, option: number): void {
    const { problem, ledger, step } = this;
    const { choice, times, spec, runParts } = step;
    const { options, setups } = problem;
    const lot = options.lot[option]!;
    const job = options.job[option]!;
    const setup = options.setup[option]!;
    const pieces = this.piecesOf(lot);
    if (choice.holder >= 0) {
      bookStripping(this, choice.holder, choice.strip);
      this.queue.goOn(choice.holder, ledger.lineFree[choice.holder]!);
    }
    const held = ledger.lineCopy[line]!;
    const mounts = choice.copy >= 0 && choice.copy !== held;
    const leaves = held >= 0 && (mounts || setups.mould[setup]! < 0);
    this.change[lot] = -1;
    if (spec >= 0) {
      this.change[lot] = this.log.count;
      bookChange(
        this,
        {
          line,
          to: setup,
          spec,
          copyOut: leaves ? held : -1,
          copyIn: mounts ? choice.copy : -1,
          stripping: false,
        },
        times,
      );
    }
    if (leaves) releaseCopy(ledger, held, line, spec >= 0 ? times.mountStart : step.takesFrom);
    if (mounts) {
      mountCopy(ledger, choice.copy, line);
    }
    ledger.lineSetup[line] = setup;
    ledger.lineFree[line] = step.runTo;
    takeSheet(problem, ledger, { job, pieces });
    const pool = problem.lines.pool[line]!;
    if (pool >= 0) {
      for (const part of runParts!)
        takeHeads(ledger.heads[pool]!, [part.from, part.to], problem.lines.heads[line]!);
    }
    this.option[lot] = option;
    this.start[lot] = step.runFrom;
    this.end[lot] = step.runTo;
    this.copy[lot] = choice.copy;
    this.service[lot] = step.serviceFrom;
    countCycles(problem, ledger, { copy: choice.copy, option, pieces }, step.serviceFrom >= 0);
    if (step.keepStretches) this.stretches[lot] = runParts!;
    this.tally.countRun({ line, job, from: step.runFrom, to: step.runTo, work: step.work, parts: runParts });
  }
}
