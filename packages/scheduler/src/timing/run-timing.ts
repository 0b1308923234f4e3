import { addWork, NEVER, nextOpen, spellAt } from "../problem/calendar.ts";
import type { CompiledProblem } from "../problem/compiled-problem.ts";
import { stepAt, type HeadLedger } from "./head-ledger.ts";

/** One unbroken stretch of a run, warm-up included: [from, to), of which the first `warmUp` seconds make nothing. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
  readonly warmUp: number;
}

/** First instant at or after t at which the line is open and, where its pool may be short, enough heads are free. */
export function runStart(
  problem: CompiledProblem,
  line: number,
  t: number,
  heads: HeadLedger | null,
): number {
  const calendar = problem.lines.runCalendar[line]!;
  if (heads === null) return nextOpen(calendar, t);
  const need = problem.lines.heads[line]!;
  for (let at = nextOpen(calendar, t); at < NEVER; at = nextOpen(calendar, at)) {
    let step = stepAt(heads, at);
    if (heads.free[step]! >= need) return at;
    while (step < heads.at.length && heads.free[step]! < need) step++;
    if (step === heads.at.length) return NEVER;
    at = heads.at[step]!;
  }
  return NEVER;
}

/**
 * When a run of a line whose pool is never short had best begin, if it may from the open instant `start` on. Where the line closes
 * before the run has made more than the warm-up after the pause would cost, it begins after the pause and ends earlier, unless its
 * order's latest start lies before.
 */
export function worthwhileStart(
  problem: CompiledProblem,
  line: number,
  { start, work, job }: { readonly start: number; readonly work: number; readonly job: number },
): number {
  const { runCalendar, restartLimit, restartWarmUp } = problem.lines;
  const calendar = runCalendar[line]!;
  const warmUp = restartWarmUp[line]!;
  if (warmUp === 0 || calendar.alwaysOpen || start >= NEVER) return start;
  let at = start;
  for (let spell = spellAt(calendar, at); spell + 1 < calendar.starts.length; spell++) {
    const left = calendar.ends[spell]! - at;
    const opens = calendar.starts[spell + 1]!;
    if (left >= warmUp || left >= work || opens > problem.jobs.latestStart[job]!) return at;
    if (opens - calendar.ends[spell]! <= restartLimit[line]!) return at;
    at = opens;
  }
  return at;
}

/** End of the unbroken stretch that begins at `from`, where the line is open and enough heads are free. */
function stretchEnd(problem: CompiledProblem, line: number, from: number, heads: HeadLedger | null): number {
  const calendar = problem.lines.runCalendar[line]!;
  const spellEnd = calendar.ends[spellAt(calendar, from)]!;
  if (heads === null) return spellEnd;
  const need = problem.lines.heads[line]!;
  let step = stepAt(heads, from);
  while (step < heads.at.length && heads.free[step]! >= need) step++;
  return step === heads.at.length ? spellEnd : Math.min(spellEnd, heads.at[step]!);
}

export interface RunAsk {
  readonly line: number;
  /** an instant that `runStart` gave */
  readonly start: number;
  /** s of running */
  readonly work: number;
}

/** Stretches of a run that stops and restarts; null when it does not end in the horizon. O(stretches). */
export function runStretches(
  problem: CompiledProblem,
  ask: RunAsk,
  heads: HeadLedger | null,
): Stretch[] | null {
  const { line, work } = ask;
  const limit = problem.lines.restartLimit[line]!;
  const warmUpAfterStop = problem.lines.restartWarmUp[line]!;
  const stretches: Stretch[] = [];
  let left = work;
  let warmUp = 0;
  let from = ask.start;
  while (from < NEVER) {
    const end = stretchEnd(problem, line, from, heads);
    const warming = Math.min(warmUp, end - from);
    warmUp -= warming;
    const worked = Math.min(left, end - from - warming);
    left -= worked;
    stretches.push({ from, to: from + warming + worked, warmUp: warming });
    if (left === 0 && warmUp === 0) return stretches;
    const next = runStart(problem, line, end, heads);
    if (next - end > limit) warmUp = warmUpAfterStop;
    from = next;
  }
  return null;
}

/** The same end as the last stretch's, without building them, for lines whose pool is never short. NEVER past the horizon. */
export function runEnd(problem: CompiledProblem, line: number, start: number, work: number): number {
  const { lines } = problem;
  const calendar = lines.runCalendar[line]!;
  const warmUpAfterStop = lines.restartWarmUp[line]!;
  if (warmUpAfterStop === 0 || calendar.alwaysOpen) return addWork(calendar, start, work);
  const { starts, ends } = calendar;
  const limit = lines.restartLimit[line]!;
  let spell = spellAt(calendar, start);
  let left = work;
  let warmUp = 0;
  let from = start;
  for (;;) {
    const end = ends[spell]!;
    const warming = Math.min(warmUp, end - from);
    warmUp -= warming;
    from += warming;
    if (left <= end - from && warmUp === 0) return from + left;
    left -= end - from;
    spell++;
    if (spell >= starts.length) return NEVER;
    from = starts[spell]!;
    if (from - end > limit) warmUp = warmUpAfterStop;
  }
}
