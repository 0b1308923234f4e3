import type { CompiledProblem } from "../problem/compiled-problem.ts";
import type { Hosting } from "./hosting.ts";
import type { SetupGroup } from "./setup-groups.ts";
import type { Work } from "../work/work.ts";

/** Set-ups of lines looked into between two pauses. */
const SETUPS_PER_PAUSE = 100;

/** [set-up] 1 where the orders of one group alone run in it. */
function setupsOfOneGroup(problem: CompiledProblem, groups: readonly SetupGroup[]): Uint8Array {
  const users = new Int32Array(problem.setups.count);
  for (const { setups } of groups) for (const setup of setups) users[setup]!++;
  return Uint8Array.from(users, (count) => (count === 1 ? 1 : 0));
}

/** Least seconds of a change into `setup` from anything else that the line may hold. */
function leastSecondsInto(
  problem: CompiledProblem,
  hosted: Iterable<number>,
  ask: { line: number; setup: number },
): number {
  const { changes, lines, setups } = problem;
  const initial = lines.initialSetup[ask.line]!;
  if (initial < 0 || initial === ask.setup) return 0;
  const base = lines.changeClass[ask.line]! * changes.setupCount;
  let least = Infinity;
  const look = (from: number): void => {
    if (from === ask.setup) return;
    const spec = changes.matrix[(base + from) * changes.setupCount + ask.setup]!;
    least = Math.min(least, spec < 0 ? 0 : changes.total[spec]!);
  };
  for (const from of [initial, ...hosted]) {
    look(from);
    look(setups.stripped[from]!);
  }
  return least;
}

/**
 * [option] s of line time that a change takes at least before the first run of the order's group, if it runs there; 0 where the
 * line may hold the set-up for other reasons.
 */
export function* leastChangeSeconds(
  problem: CompiledProblem,
  groups: readonly SetupGroup[],
  hosting: Hosting,
): Work<Float64Array> {
  const { options, setups } = problem;
  const isOwn = setupsOfOneGroup(problem, groups);
  const known = new Map<number, number>();
  const least = new Float64Array(options.count);
  for (let option = 0; option < options.count; option++) {
    const line = options.line[option]!;
    const setup = options.setup[option]!;
    if (isOwn[setup] === 0) continue;
    const key = line * setups.count + setup;
    let seconds = known.get(key);
    if (seconds === undefined) {
      if (known.size % SETUPS_PER_PAUSE === 0) yield;
      seconds = leastSecondsInto(problem, hosting[line]!, { line, setup });
      known.set(key, seconds);
    }
    least[option] = seconds;
  }
  return least;
}
