import { compile } from "./problem/compile.ts";
import { NEVER, nextOpen } from "./problem/calendar.ts";
import type { CompiledProblem } from "./problem/compiled-problem.ts";
import type { ProblemData } from "./problem/problem-data.ts";
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

/** Money of an order by itself when it is planned; Infinity when it cannot be. */
function moneyAlone(problem: CompiledProblem, job: number): number {
  const end = earliestEnd(problem, job);
  if (end >= NEVER) return Infinity;
  const late = end - problem.jobs.due[job]!;
  return late > 0 ? late * problem.jobs.latePerSecond[job]! + problem.jobs.lateOnce[job]! : 0;
}

/** Set-up that an order needs wherever it runs, or -1 when it has a choice. */
function onlySetup(problem: CompiledProblem, job: number): number {
  const { jobs, options } = problem;
  const first = jobs.firstOption[job]!;
  const end = jobs.firstOption[job + 1]!;
  if (first === end) return -1;
  const setup = options.setup[first]!;
  for (let option = first + 1; option < end; option++) if (options.setup[option] !== setup) return -1;
  return setup;
}

/** Least money of any change into each set-up on the lines that have orders for it; 0 where one holds it from the start. */
function leastChangeInto(problem: CompiledProblem): Float64Array {
  const { changes, lines, options } = problem;
  const n = changes.setupCount;
  const least = new Float64Array(n).fill(Infinity);
  const seen = new Set<number>();
  for (let option = 0; option < options.count; option++) {
    const line = options.line[option]!;
    const setup = options.setup[option]!;
    if (lines.initialSetup[line] === setup) least[setup] = 0;
    const key = lines.changeClass[line]! * n + setup;
    if (seen.has(key)) continue;
    seen.add(key);
    for (let from = 0; from < n; from++) {
      if (from === setup) continue;
      const spec = changes.matrix[(lines.changeClass[line]! * n + from) * n + setup]!;
      least[setup] = Math.min(least[setup]!, spec < 0 ? 0 : changes.cost[spec]!);
    }
  }
  return least;
}

/**
 * Orders and changes: each order by itself at its earliest end, or unplanned if that is cheaper; and each set-up that some
 * order needs wherever it runs must be changed to once, unless all its orders are left out. A line that holds nothing gives
 * one set-up for free.
 */
function ordersAndChanges(problem: CompiledProblem): number {
  const { jobs, lines } = problem;
  const into = leastChangeInto(problem);
  const cheapest = new Map<number, { planned: number; leftOut: number }>();
  let money = 0;
  for (let job = 0; job < jobs.count; job++) {
    const leftOut = jobs.unplanned[job]!;
    const least = Math.min(moneyAlone(problem, job), leftOut);
    const setup = onlySetup(problem, job);
    if (setup < 0) {
      money += least;
      continue;
    }
    const group = cheapest.get(setup) ?? { planned: 0, leftOut: 0 };
    group.planned += least;
    group.leftOut += leftOut;
    cheapest.set(setup, group);
  }
  const extras: number[] = [];
  for (const [setup, { planned, leftOut }] of cheapest) {
    const withChange = Math.min(planned + into[setup]!, leftOut);
    money += planned;
    extras.push(withChange - planned);
  }
  extras.sort((a, b) => b - a);
  const free = lines.initialSetup.reduce((count, setup) => count + (setup < 0 ? 1 : 0), 0);
  return extras.slice(free).reduce((sum, extra) => sum + extra, money);
}

/** Where the last end is priced: no less than the longest order alone and the mean load of the lines. */
function lastEndPart(problem: CompiledProblem): number {
  const { jobs, options, lines, horizon, makespanPrice } = problem;
  if (makespanPrice === 0) return 0;
  let lastEnd = 0;
  let work = 0;
  for (let job = 0; job < jobs.count; job++) {
    const end = earliestEnd(problem, job);
    // leaving an order out must be dearer than any last end, or this part does not hold
    if (end >= NEVER || jobs.unplanned[job]! < makespanPrice * horizon) return 0;
    let least = NEVER;
    for (let option = jobs.firstOption[job]!; option < jobs.firstOption[job + 1]!; option++) {
      least = Math.min(least, options.seconds[option]!);
    }
    work += least;
    lastEnd = Math.max(lastEnd, end);
  }
  return makespanPrice * Math.max(lastEnd, Math.ceil(work / Math.max(1, lines.count)));
}

/**
 * Money that no plan can go below. Ignores every competition between orders for lines, moulds and setters, so it is never
 * above the best plan, but often far below it. O(options + set-ups² × classes).
 */
export function lowerBound(problem: CompiledProblem): number {
  return ordersAndChanges(problem) + lastEndPart(problem);
}

/** The bound of a problem free of faults, money. */
export function boundOf(data: ProblemData): number {
  return lowerBound(compile(data));
}
