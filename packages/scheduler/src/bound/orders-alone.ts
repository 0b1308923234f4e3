import { addWork, NEVER, nextOpen } from "../problem/calendar.ts";
import { runSeconds } from "../problem/compile-jobs.ts";
import type { CompiledProblem } from "../problem/compiled-problem.ts";
import type { Work } from "../work/work.ts";

/** Options looked at between two pauses. */
const OPTIONS_PER_PAUSE = 2000;

/** What an order could do if the plant were empty but for what hangs on the lines. */
export interface OrdersAlone {
  /** [option] s of running in the largest lot of its order, at the least */
  readonly seconds: Int32Array;
  /** [job] start that the largest lot must have, or -1 */
  readonly exactStart: Int32Array;
  /**
   * [option] s: no run of it can start before; NEVER where none can start by its order's latest start and end within the horizon,
   * and for all but one lot of an order
   */
  readonly earliestStart: Int32Array;
  /** [job] s: no run of it can end before; NEVER where the order cannot be planned */
  readonly earliestEnd: Float64Array;
}

/** Distinct specs of the changes into a set-up from another one, for one class; [-1] when one needs no change. */
function specsInto(problem: CompiledProblem, changeClass: number, setup: number): readonly number[] {
  const { matrix, setupCount } = problem.changes;
  const specs = new Set<number>();
  for (let from = 0; from < setupCount; from++) {
    if (from !== setup) specs.add(matrix[(changeClass * setupCount + from) * setupCount + setup]!);
  }
  return specs.has(-1) ? [-1] : [...specs];
}

/** End of a change that begins at or after `from`, were every team free; s or NEVER. */
function changeEnd(problem: CompiledProblem, line: number, spec: number, from: number): number {
  if (spec < 0) return from;
  const { changes, anyTeam, lines } = problem;
  const teamWork = changes.teamWork[spec]!;
  const tailFrom = teamWork === 0 ? from : addWork(anyTeam, nextOpen(anyTeam, from), teamWork);
  return tailFrom >= NEVER ? NEVER : addWork(lines.calendar[line]!, tailFrom, changes.tail[spec]!);
}

/** [line × set-ups + set-up] s: the line cannot hold the set-up, ready to run, before. Worked out where it is asked for. */
class SetupsReady {
  private readonly ready = new Map<number, number>();
  private readonly specs = new Map<number, readonly number[]>();
  private readonly problem: CompiledProblem;

  constructor(problem: CompiledProblem) {
    this.problem = problem;
  }

  at(line: number, setup: number): number {
    const { lines, setups } = this.problem;
    const initial = lines.initialSetup[line]!;
    if (initial < 0 || initial === setup) return lines.freeAt[line]!;
    const key = line * setups.count + setup;
    const known = this.ready.get(key);
    if (known !== undefined) return known;
    // whatever stood there before, one change into the set-up comes at or after the line is free
    const ends = this.specsInto(line, setup).map((spec) =>
      changeEnd(this.problem, line, spec, lines.freeAt[line]!),
    );
    const ready = Math.min(NEVER, ...ends);
    this.ready.set(key, ready);
    return ready;
  }

  private specsInto(line: number, setup: number): readonly number[] {
    const { lines, setups } = this.problem;
    const changeClass = lines.changeClass[line]!;
    const key = changeClass * setups.count + setup;
    const known = this.specs.get(key);
    if (known !== undefined) return known;
    const specs = specsInto(this.problem, changeClass, setup);
    this.specs.set(key, specs);
    return specs;
  }
}

function hasNoCopy(problem: CompiledProblem, option: number): boolean {
  const { moulds, setups, options } = problem;
  const mould = setups.mould[options.setup[option]!]!;
  return mould >= 0 && moulds.firstCopy[mould] === moulds.firstCopy[mould + 1];
}

/** Pieces in the largest lot of a job, at the least: the others can have no more. */
function leastOfLargest({ jobs, lots }: CompiledProblem, job: number): number {
  return Math.ceil(jobs.pieces[job]! / (lots.firstLot[job + 1]! - lots.firstLot[job]!));
}

/**
 * Each order by itself, by its largest lot alone, which ends no later than the order: competition for lines, moulds and setters is left
 * out. O(options + classes × set-ups²).
 */
export function* ordersAlone(problem: CompiledProblem): Work<OrdersAlone> {
  const { jobs, lots, options, lines } = problem;
  const setupsReady = new SetupsReady(problem);
  const earliestStart = new Int32Array(options.count).fill(NEVER);
  const earliestEnd = new Float64Array(jobs.count).fill(NEVER);
  const seconds = new Int32Array(options.count);
  // an exact start is that of the first lot, which need not be the largest
  const exactStart = jobs.fixedStart.map((start, job) =>
    lots.firstLot[job + 1]! - lots.firstLot[job]! > 1 ? -1 : start,
  );
  for (let option = 0; option < options.count; option++) {
    if (option % OPTIONS_PER_PAUSE === 0) yield;
    const job = options.job[option]!;
    if (hasNoCopy(problem, option) || options.lot[option] !== lots.firstLot[job]) continue;
    const perPiece = options.secondsPerPiece[option]!;
    seconds[option] = Math.min(NEVER, runSeconds(leastOfLargest(problem, job), perPiece));
    const line = options.line[option]!;
    const ready = setupsReady.at(line, options.setup[option]!);
    const fixed = exactStart[job]!;
    const wanted = Math.max(jobs.release[job]!, fixed, options.availableFrom[option]!);
    if (Math.max(ready, wanted) >= NEVER || (fixed >= 0 && ready > fixed)) continue;
    const start = nextOpen(lines.runCalendar[line]!, Math.max(ready, wanted));
    if (start > jobs.latestStart[job]! || (fixed >= 0 && start !== fixed)) continue;
    // a lot that is not the largest may find room where the largest does not
    const calendar = lines.runCalendar[line]!;
    if (addWork(calendar, start, runSeconds(lots.leastPieces[job]!, perPiece)) >= NEVER) continue;
    earliestStart[option] = start;
    // warm-ups are left out: a run may begin after the stop that calls for one
    const end = addWork(calendar, start, seconds[option]!);
    if (end < earliestEnd[job]!) earliestEnd[job] = end;
  }
  for (let option = 0; option < options.count; option++) {
    if (earliestEnd[options.job[option]!]! >= NEVER) earliestStart[option] = NEVER;
  }
  return { seconds, exactStart, earliestStart, earliestEnd };
}
