import { NEVER } from "../problem/calendar.ts";
import type { CompiledProblem } from "../problem/compiled-problem.ts";
import type { OrdersAlone } from "./orders-alone.ts";

/** The last run's end in any plan of all orders, s after the horizon's start: the longest order, and the mean load of the lines. */
export function lastEndBound(problem: CompiledProblem, alone: OrdersAlone): number {
  const { jobs, options, lines } = problem;
  let lastEnd = 0;
  let work = 0;
  for (let job = 0; job < jobs.count; job++) {
    if (alone.earliestEnd[job]! >= NEVER) continue;
    let least = NEVER;
    for (let option = jobs.firstOption[job]!; option < jobs.firstOption[job + 1]!; option++) {
      if (alone.earliestStart[option]! < NEVER) least = Math.min(least, options.seconds[option]!);
    }
    work += least;
    lastEnd = Math.max(lastEnd, alone.earliestEnd[job]!);
  }
  return Math.max(lastEnd, Math.ceil(work / Math.max(1, lines.count)));
}
