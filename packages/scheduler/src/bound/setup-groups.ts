import { NEVER } from "../problem/calendar.ts";
import type { CompiledProblem } from "../problem/compiled-problem.ts";
import type { OrdersAlone } from "./orders-alone.ts";

/** Orders that may be made in the same set-ups: at least one of these must be set up for them. */
export interface SetupGroup {
  /** sorted */
  readonly setups: readonly number[];
  readonly jobs: readonly number[];
}

/** Set-ups in which an order could run, sorted. */
function setupsOf(problem: CompiledProblem, alone: OrdersAlone, job: number): number[] {
  const { jobs, options } = problem;
  const setups = new Set<number>();
  for (let option = jobs.firstOption[job]!; option < jobs.firstOption[job + 1]!; option++) {
    if (alone.earliestStart[option]! < NEVER) setups.add(options.setup[option]!);
  }
  return [...setups].sort((a, b) => a - b);
}

/** Groups of the orders that can be planned, in the order of their first job. */
export function setupGroups(problem: CompiledProblem, alone: OrdersAlone): readonly SetupGroup[] {
  const byKey = new Map<string, { setups: number[]; jobs: number[] }>();
  for (let job = 0; job < problem.jobs.count; job++) {
    const setups = setupsOf(problem, alone, job);
    if (setups.length === 0) continue;
    const key = setups.join(" ");
    const group = byKey.get(key);
    if (group === undefined) byKey.set(key, { setups, jobs: [job] });
    else group.jobs.push(job);
  }
  return [...byKey.values()];
}

/** The groups that hold no other one's set-ups: whoever serves these may have served the rest in passing. */
export function leastGroups(groups: readonly SetupGroup[]): readonly SetupGroup[] {
  const singles = new Set(groups.filter(({ setups }) => setups.length === 1).map(({ setups }) => setups[0]!));
  const wide = groups.filter(({ setups }) => setups.length > 1);
  const holds = (group: SetupGroup, other: SetupGroup): boolean => {
    const own = new Set(group.setups);
    return other !== group && other.setups.every((setup) => own.has(setup));
  };
  return groups.filter(
    (group) =>
      group.setups.length === 1 ||
      (!group.setups.some((setup) => singles.has(setup)) && !wide.some((other) => holds(group, other))),
  );
}
