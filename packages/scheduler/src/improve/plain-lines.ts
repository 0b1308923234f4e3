import { NEVER } from "../problem/calendar.ts";
import type { CompiledProblem } from "../problem/compiled-problem.ts";

/**
 * True when a line's times are plain sums: lines independent and always open, one option per order and line, one lot per order,
 * no pins, no latest starts, and no price on overtime, earliness, balance or distance from the published plan.
 * Then a change of place can be judged by arithmetic on whole stretches of a line.
 */
export function linesArePlain(problem: CompiledProblem): boolean {
  const { jobs, lots, lines, options } = problem;
  if (lots.count > jobs.count || Object.values(problem.terms).some(Boolean)) return false;
  if (!problem.linesAreIndependent || problem.changeAwaitsEarliestStart) return false;
  if (jobs.rank.some((rank) => rank >= 0) || jobs.fixedStart.some((start) => start >= 0)) return false;
  if (jobs.latestStart.some((latest) => latest < NEVER - 1)) return false;
  if (lines.runCalendar.some((calendar) => !calendar.alwaysOpen)) return false;
  for (let option = 1; option < options.count; option++) {
    const before = option - 1;
    if (options.job[option] === options.job[before] && options.line[option] === options.line[before])
      return false;
  }
  for (let job = 0; job < jobs.count; job++)
    if (jobs.firstOption[job + 1] === jobs.firstOption[job]) return false;
  return true;
}

/** Seconds that the change to `to` takes on a line that holds `from` (-1: nothing that needs a change). */
export function changeSeconds(problem: CompiledProblem, line: number, from: number, to: number): number {
  const { changes, lines } = problem;
  if (from < 0) return 0;
  const spec =
    changes.matrix[(lines.changeClass[line]! * changes.setupCount + from) * changes.setupCount + to]!;
  return spec < 0 ? 0 : changes.total[spec]!;
}

/**
 * True when the orders would end within the horizon even one after another, each on its slowest line after its longest
 * change: then no sequence passes any of them over. O(orders² × lines).
 */
export function allAlwaysFit(problem: CompiledProblem): boolean {
  const { jobs, lines, options, horizon } = problem;
  const worst = new Float64Array(jobs.count);
  const setupsOf: Set<number>[] = Array.from(lines.initialSetup, (setup) => new Set([setup]));
  for (let option = 0; option < options.count; option++)
    setupsOf[options.line[option]!]!.add(options.setup[option]!);
  for (let option = 0; option < options.count; option++) {
    const line = options.line[option]!;
    let longest = 0;
    for (const from of setupsOf[line]!)
      longest = Math.max(longest, changeSeconds(problem, line, from, options.setup[option]!));
    const job = options.job[option]!;
    worst[job] = Math.max(worst[job]!, longest + options.seconds[option]!);
  }
  let first = 0;
  for (const at of [lines.freeAt, jobs.release, options.availableFrom])
    for (const t of at) first = Math.max(first, t);
  return worst.reduce((sum, seconds) => sum + seconds, first) <= horizon;
}
