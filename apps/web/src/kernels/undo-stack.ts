import type { WorkingPlanStep } from "@formweek/contracts";

/** The steps that undo would take back and redo would do again; null where that lies before what is known, or there is none. */
export interface NextSteps {
  readonly undo: WorkingPlanStep | null;
  readonly redo: WorkingPlanStep | null;
}

/** Reads from the steps of a working plan, newest first, what undo and redo would do. */
export function nextSteps(steps: readonly WorkingPlanStep[]): NextSteps {
  const done: WorkingPlanStep[] = [];
  const undone: WorkingPlanStep[] = [];
  for (const step of steps.toReversed()) {
    if (step.kind === "publish") continue;
    // nothing goes back over what was promised to a customer
    if (step.kind === "hold") {
      done.length = 0;
      undone.length = 0;
      continue;
    }
    const [from, to] = step.kind === "undo" ? [done, undone] : [undone, done];
    if (step.kind === "undo" || step.kind === "redo") {
      const moved = from.pop();
      if (moved !== undefined) to.push(moved);
    } else {
      done.push(step);
      undone.length = 0;
    }
  }
  return { undo: done.at(-1) ?? null, redo: undone.at(-1) ?? null };
}
