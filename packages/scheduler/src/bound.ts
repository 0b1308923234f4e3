import { NEVER, nextOpen } from "./problem/calendar.ts";
import type { CompiledProblem } from "./problem/compiled-problem.ts";
import { runEnd } from "./timing/run-timing.ts";

/** Least instant at which an order could end if the plant were empty and no change were needed; NEVER when it cannot. */
function earliestEnd(problem: CompiledProblem, job: number): number {
  const { jobs, options, lines, setups, moulds } = problem;
  let best = NEVER;
  for (let option = jobs.firstOption[job]!; option < jobs.firstOption[job + 1]!; option++) {
    const line = options.line[option]!;
    const mould = setups.mould[options.setup[option]!]!;
    if (mould >= 0 && moulds.firstCopy[mould] === moulds.firstCopy[mould + 1]) continue;
    const from = Math.max(
      lines.freeAt[line]!,
      jobs.release[job]!,
      jobs.fixedStart[job]!,
      options.availableFrom[option]!,
    );
    const start = nextOpen(lines.runCalendar[line]!, from);
    if (start >= NEVER) continue;
    const end = runEnd(problem, line, start, options.seconds[option]!);
    if (end < best) best = end;
  }
  return best;
}

/**
 * Money that no plan can go below: each order by itself at its earliest end (or unplanned, if that is cheaper), and, where
 * the last end is priced, no less than the longest of them and the mean load of the lines. Ignores changes and every
 * competition between orders, so it is never above the best plan, but often far below. O(options).
 */
export function lowerBound(problem: CompiledProblem): number {
  const { jobs, options, lines, horizon } = problem;
  let money = 0;
  let lastEnd = 0;
  let work = 0;
  let allPlanned = true;
  for (let job = 0; job < jobs.count; job++) {
    const end = earliestEnd(problem, job);
    const late = end - jobs.due[job]!;
    const planned =
      end >= NEVER ? Infinity : late > 0 ? late * jobs.latePerSecond[job]! + jobs.lateOnce[job]! : 0;
    money += Math.min(planned, jobs.unplanned[job]!);
    if (end >= NEVER) {
      allPlanned = false;
      continue;
    }
    let least = NEVER;
    for (let option = jobs.firstOption[job]!; option < jobs.firstOption[job + 1]!; option++) {
      least = Math.min(least, options.seconds[option]!);
    }
    work += least;
    lastEnd = Math.max(lastEnd, end);
    // leaving one order out must cost more than any makespan, or the makespan part does not hold
    if (jobs.unplanned[job]! < problem.makespanPrice * horizon) allPlanned = false;
  }
  if (problem.makespanPrice === 0 || !allPlanned) return money;
  return money + problem.makespanPrice * Math.max(lastEnd, Math.ceil(work / Math.max(1, lines.count)));
}
