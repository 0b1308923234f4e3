import { NEVER } from "../problem/calendar.ts";
import type { CompiledProblem } from "../problem/compiled-problem.ts";
import { noChangeTimes, timeChange, type ChangeAsk, type ChangeTimes } from "./change-timing.ts";
import type { PlantLedger } from "./plant-ledger.ts";
import { leavesItsMould, nextOption, type Turns } from "./turns.ts";

/** The copy of a mould that a line gets. */
export interface CopyChoice {
  /** copy or -1 when none can be had */
  copy: number;
  /** s at which mounting may begin */
  readyAt: number;
  /** idle line from which it must be stripped first, or -1 */
  holder: number;
  readonly strip: ChangeTimes;
  /** line whose next step comes first, because it goes on with the mould at once or takes it out; -1 for none */
  yieldTo: number;
  /** that step takes the mould out: its change is not to wait for its run */
  atOnce: boolean;
}

export function noCopyChoice(): CopyChoice {
  return { copy: -1, readyAt: 0, holder: -1, strip: noChangeTimes(), yieldTo: -1, atOnce: false };
}

export interface ChoosingState extends Turns {
  readonly ask: ChangeAsk;
}

/** A line keeps an idle mould for its own next order when that may start within this time, s. */
const HOLD_SECONDS = 8 * 3600;

function goesOnWithIt(state: ChoosingState, holder: number, mould: number): boolean {
  const { problem, ledger } = state;
  const option = nextOption(state, holder);
  if (option < 0 || leavesItsMould(state, option)) return false;
  if (problem.setups.mould[problem.options.setup[option]!] !== mould) return false;
  const job = problem.options.job[option]!;
  const wanted = Math.max(
    problem.jobs.release[job]!,
    problem.lots.fixedStart[problem.options.lot[option]!]!,
    problem.options.availableFrom[option]!,
  );
  return wanted <= ledger.lineFree[holder]! + HOLD_SECONDS;
}

/** Whether the holder's next step changes to a mould in store, or to none: then the mould comes out without a stripping. */
function takesItOut(state: ChoosingState, holder: number, mould: number): boolean {
  const { problem, ledger } = state;
  const option = nextOption(state, holder);
  if (option < 0 || leavesItsMould(state, option)) return false;
  const setup = problem.options.setup[option]!;
  const other = problem.setups.mould[setup]!;
  if (other === mould) return false;
  const { changes, lines, moulds } = problem;
  const row =
    (lines.changeClass[holder]! * changes.setupCount + ledger.lineSetup[holder]!) * changes.setupCount;
  if (changes.matrix[row + setup]! < 0) return false;
  if (other < 0) return true;
  for (let copy = moulds.firstCopy[other]!; copy < moulds.firstCopy[other + 1]!; copy++)
    if (ledger.copyLine[copy]! < 0) return true;
  return false;
}

/** Spec of the change that takes the mould out of a line as it stands. */
export function strippingSpec(problem: CompiledProblem, ledger: PlantLedger, line: number): number {
  const { changes, lines, setups } = problem;
  const setup = ledger.lineSetup[line]!;
  const row = (lines.changeClass[line]! * changes.setupCount + setup) * changes.setupCount;
  return changes.matrix[row + setups.stripped[setup]!]!;
}

/** Trolley that takes the mould away from a line, or -1. */
function strippingTrolley(problem: CompiledProblem, ledger: PlantLedger, line: number): number {
  const { changes, lines } = problem;
  return changes.usesTrolley[strippingSpec(problem, ledger, line)] === 1 ? lines.trolley[line]! : -1;
}

/** Times the stripping of an idle line, at the earliest. */
export function timeStripping(
  { problem, ledger, sequences, ask }: ChoosingState,
  line: number,
  out: ChangeTimes,
): void {
  ask.line = line;
  ask.spec = strippingSpec(problem, ledger, line);
  ask.from = ledger.lineFree[line]!;
  ask.mouldAt = 0;
  ask.neededAt = 0;
  ask.stretch = sequences.drawn === null ? 1 : sequences.drawn.stripping[line]!;
  timeChange(problem, ledger, ask, out);
}

function outOfServiceUntil(service: readonly (readonly [number, number])[] | null, at: number): number {
  if (service !== null) for (const [from, to] of service) if (from <= at && at < to) return to;
  return at;
}

/** First instant after `at` from which a copy is out of service. */
function inServiceUntil(service: readonly (readonly [number, number])[] | null, at: number): number {
  if (service !== null) for (const [from] of service) if (from > at) return from;
  return NEVER;
}

/**
 * Picks the copy that is there first: of equals one that need not be stripped, then the one that stays in service longest, then
 * the lowest number.
 */
export function chooseCopy(state: ChoosingState, line: number, mould: number, out: CopyChoice): void {
  const { problem, ledger } = state;
  const { firstCopy, carrying, service } = problem.moulds;
  const free = ledger.lineFree[line]!;
  out.copy = -1;
  out.holder = -1;
  out.yieldTo = -1;
  out.atOnce = false;
  out.readyAt = NEVER;
  let best = NEVER;
  let bestUntil = NEVER;
  let waitsFor = -1;
  const trial: ChangeTimes = { start: 0, mountStart: 0, tailStart: 0, end: 0, team: -1 };
  for (let copy = firstCopy[mould]!; copy < firstCopy[mould + 1]!; copy++) {
    const holder = ledger.copyLine[copy]!;
    let ready: number;
    if (holder < 0) {
      const left = ledger.copyLeft[copy]!;
      ready = ledger.copyFree[copy]! + (left >= 0 && left !== line ? carrying[mould]! : 0);
    } else if (goesOnWithIt(state, holder, mould)) {
      waitsFor = holder;
      continue;
    } else if (takesItOut(state, holder, mould)) {
      waitsFor = holder;
      out.atOnce = true;
      continue;
    } else {
      timeStripping(state, holder, trial);
      if (trial.start >= NEVER) continue;
      ready = trial.mountStart + carrying[mould]!;
    }
    const from = Math.max(free, outOfServiceUntil(service[copy]!, ready));
    if (from > best || (from === best && holder >= 0)) continue;
    const until = inServiceUntil(service[copy]!, from);
    if (from === best && out.holder < 0 && until <= bestUntil) continue;
    best = from;
    bestUntil = until;
    out.copy = copy;
    out.readyAt = ready;
    out.holder = holder;
    if (holder >= 0) Object.assign(out.strip, trial);
  }
  if (out.copy < 0) out.yieldTo = waitsFor;
}

/**
 * Times the change for which the choice was made, to end by an instant; one that would come too late shortly before its run is
 * done at once. `out.start` is NEVER when it cannot be in time.
 */
export function timeChangeInTime(
  { problem, ledger, ask }: ChoosingState,
  choice: CopyChoice,
  by: number,
  out: ChangeTimes,
): void {
  // a stripping elsewhere takes its team first
  const strip = choice.holder >= 0 && choice.strip.team >= 0 ? choice.strip : null;
  const before = strip === null ? 0 : ledger.teamFree[strip.team]!;
  const trolley = strip === null ? -1 : strippingTrolley(problem, ledger, choice.holder);
  const trolleyBefore = trolley < 0 ? 0 : ledger.trolleyFree[trolley]!;
  if (strip !== null) ledger.teamFree[strip.team] = strip.tailStart;
  if (trolley >= 0) ledger.trolleyFree[trolley] = strip!.tailStart;
  timeChange(problem, ledger, ask, out);
  if (out.end > by && ask.neededAt > 0) {
    ask.neededAt = 0;
    timeChange(problem, ledger, ask, out);
  }
  if (out.end > by) out.start = NEVER;
  if (strip !== null) ledger.teamFree[strip.team] = before;
  if (trolley >= 0) ledger.trolleyFree[trolley] = trolleyBefore;
}
