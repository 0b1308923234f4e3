import { NEVER } from "../problem/calendar.ts";
import type { CompiledProblem } from "../problem/compiled-problem.ts";
import { noChangeTimes, type ChangeAsk, type ChangeTimes } from "./change-timing.ts";
import {
  chooseCopy,
  noCopyChoice,
  timeChangeInTime,
  timeStripping,
  type ChoosingState,
  type CopyChoice,
} from "./mould-choice.ts";
import { serviceBefore } from "./mould-service.ts";
import { mouldSpells, type MouldSpells } from "./mould-spells.ts";
import { sheetInstant, type PlantLedger } from "./plant-ledger.ts";
import { runEnd, runStart, runStretches, worthwhileStart, type Stretch } from "./run-timing.ts";
import { lotSeconds } from "./sequences.ts";
import type { Turns } from "./turns.ts";

/**
 * One step of a line, timed but not booked: its mould's copy, a stripping elsewhere, its change, the service of its mould and its
 * run. Used over and over by a decode.
 */
export class StepProposal {
  readonly times: ChangeTimes = noChangeTimes();
  readonly choice: CopyChoice = noCopyChoice();
  /** change spec or -1 */
  spec = -1;
  /** s, or -1 without a service */
  serviceFrom = -1;
  runFrom = 0;
  runTo = 0;
  /** s of running */
  work = 0;
  /** kept where operators may be short, and when asked for */
  runParts: readonly Stretch[] | null = null;
  private readonly problem: CompiledProblem;
  private readonly ledger: PlantLedger;
  readonly keepStretches: boolean;
  private readonly ask: ChangeAsk = { line: 0, spec: -1, from: 0, mouldAt: 0, neededAt: 0, stretch: 1 };
  private choosing: ChoosingState | null = null;
  /** The change does not wait until shortly before its run. */
  private changesAtOnce = false;
  /** The order's latest start is left aside. */
  private startsAtAnyTime = false;
  /** s at which mounting must be done */
  private mountedBy = NEVER;

  constructor(problem: CompiledProblem, ledger: PlantLedger, keepStretches: boolean) {
    this.problem = problem;
    this.ledger = ledger;
    this.keepStretches = keepStretches;
  }

  /** From now on the steps of these turns are asked for. */
  begin(turns: Turns): void {
    this.choosing = { ...turns, ask: this.ask };
  }

  /** Times the stripping of a line's mould in `times`; its instant, or NEVER. */
  proposeStripping(line: number): number {
    timeStripping(this.choosing!, line, this.times);
    return this.times.start;
  }

  /**
   * Works out the next step of a line; its instant, or NEVER when it cannot be done. A change waits until shortly before its run,
   * unless it is to be done at once.
   */
  propose(line: number, option: number, atOnce = false): number {
    this.changesAtOnce = atOnce;
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
      chooseCopy(this.choosing!, line, mould, choice);
      if (choice.yieldTo >= 0 || choice.copy < 0) return NEVER;
    }
    const isHeld = choice.copy === held;
    const service = problem.moulds.service[choice.copy]!;
    const mouldAt = isHeld ? 0 : choice.readyAt;
    if (service === null) return this.attempt(line, option, mouldAt, 0);
    let best: MouldSpells | null = null;
    let bestTo = NEVER;
    for (const spells of mouldSpells(service, isHeld, this.spec >= 0)) {
      if (best !== null && spells.runFrom > best.runFrom) break;
      const at = this.attemptIn(spells, line, option, mouldAt);
      if (at >= NEVER || this.runTo >= bestTo) continue;
      best = spells;
      bestTo = this.runTo;
    }
    return best === null ? NEVER : this.attemptIn(best, line, option, mouldAt);
  }

  /** Instant (s) at which an option would start next on its line, its order's latest start left aside; NEVER where it cannot. */
  startBehind(option: number): number {
    this.startsAtAnyTime = true;
    const at = this.propose(this.problem.options.line[option]!, option);
    this.startsAtAnyTime = false;
    return at >= NEVER ? NEVER : this.runFrom;
  }

  private attemptIn(spells: MouldSpells, line: number, option: number, mouldAt: number): number {
    const from = Math.max(mouldAt, spells.mountFrom);
    if (from >= spells.mountedBy) return NEVER;
    this.mountedBy = spells.mountedBy;
    const at = this.attempt(line, option, from, spells.runFrom);
    this.mountedBy = NEVER;
    return this.runTo <= spells.runBy ? at : NEVER;
  }

  /** Times change and run with the mould there from `mouldAt` on and no run before `runFrom`. */
  private attempt(line: number, option: number, mouldAt: number, runFrom: number): number {
    const { problem, ledger, ask, times, choice } = this;
    const { jobs, lots, options } = problem;
    const job = options.job[option]!;
    const { pieces: piecesOf, drawn } = this.choosing!.sequences;
    const pieces = piecesOf[options.lot[option]!]!;
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
      ask.stretch = drawn === null ? 1 : drawn.change[options.lot[option]!]!;
      timeChangeInTime(this.choosing!, choice, this.mountedBy, times);
      if (times.start >= NEVER) return NEVER;
      ready = times.end;
    } else ready = Math.max(ready, mouldAt);
    this.serviceFrom = service > 0 ? ready : -1;
    ready += service;
    const pool = problem.lines.pool[line]!;
    const heads = pool < 0 ? null : ledger.heads[pool]!;
    const work = lotSeconds(problem, this.choosing!.sequences, option);
    let start = runStart(problem, line, Math.max(ready, wanted), heads);
    if (fixed < 0 && heads === null) start = worthwhileStart(problem, line, { start, work, job });
    if (start >= NEVER || (fixed >= 0 && start !== fixed && drawn === null)) return NEVER;
    if (start > jobs.latestStart[job]! && !this.startsAtAnyTime && drawn === null) return NEVER;
    this.runFrom = start;
    this.work = work;
    if (heads !== null || this.keepStretches) {
      this.runParts = runStretches(problem, { line, start, work }, heads);
      this.runTo = this.runParts === null ? NEVER : this.runParts[this.runParts.length - 1]!.to;
    } else this.runTo = runEnd(problem, line, start, work);
    if (this.runTo >= NEVER) return NEVER;
    return this.spec >= 0 ? times.start : this.takesFrom;
  }

  /** Instant from which the step last proposed has its mould where no change mounts it. */
  get takesFrom(): number {
    return this.serviceFrom >= 0 ? this.serviceFrom : this.runFrom;
  }
}
