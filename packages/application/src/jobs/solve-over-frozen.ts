import { type Pin, type SolveResult, openEdits } from "@formweek/scheduler";
import { aheadOf } from "../planning/frozen-pins.ts";
import type { FrozenPlan } from "../planning/frozen-plan.ts";
import { leavesOutFrozen, weighFrozen } from "../planning/weigh-frozen.ts";
import type { SolveRunner, SolveTask } from "../ports/solve-runner.ts";

/** What was given out, and the pins on it that can hold all together. */
interface Frozen {
  readonly given: FrozenPlan | null;
  readonly pins: readonly Pin[];
}

export interface SolvedOverFrozen {
  readonly result: SolveResult;
  /** The plan's cost is at other prices than the task's problem has. */
  readonly isWeighed: boolean;
}

/**
 * Solves, and where the prices make it cheaper to leave out an order that is frozen, solves again with frozen orders that no
 * price speaks against. Only then, since such weights blur the search for everybody else; a stop keeps the first plan.
 */
export async function solveOverFrozen(
  solver: SolveRunner,
  task: SolveTask,
  { given, pins }: Frozen,
): Promise<SolvedOverFrozen> {
  const result = await solver.solve(task);
  const first: SolvedOverFrozen = { result, isWeighed: false };
  if (given === null || result.status !== "planned" || !leavesOutFrozen(result.plan, pins)) return first;
  if (task.signal.aborted) return first;
  const opened = openEdits(task.problem, aheadOf(task.problem, given.document));
  if (!opened.ok) return first;
  const standing = opened.value.plan;
  const problem = weighFrozen(task.problem, standing, pins);
  const again = await solver.solve({ ...task, problem, params: { ...task.params, startFrom: standing } });
  return again.status === "planned" && !leavesOutFrozen(again.plan, pins)
    ? { result: again, isWeighed: true }
    : first;
}
