import { openEdits, whyIdle, type IdleGap, type Plan, type ProblemData } from "@formweek/scheduler";
import type { BoardPlan } from "../kernels/board-plan.ts";
import { planOfDocument } from "./plan-of-document.ts";

/** A spell of a line without a segment, as the board shows it. */
export interface ShownGap {
  readonly lineId: string;
  readonly start: number;
  readonly end: number;
}

/** Plans timed by the engine, once for each problem: clicking from gap to gap costs nothing more. */
const timed = new WeakMap<ProblemData, Plan>();

function timedPlan(standing: BoardPlan, problem: ProblemData): Plan | null {
  const known = timed.get(problem);
  if (known !== undefined) return known;
  const opened = openEdits(problem, planOfDocument(standing.document));
  if (!opened.ok) return null;
  timed.set(problem, opened.value.plan);
  return opened.value.plan;
}

/** What a line waits for in a gap; null where the inputs have changed since the plan was made, so that the gap is no longer there. */
export function idleGap(standing: BoardPlan, problem: ProblemData, gap: ShownGap): IdleGap | null {
  const plan = timedPlan(standing, problem);
  const gaps = plan === null ? [] : whyIdle(problem, plan, gap.lineId);
  // the last gap goes on to the horizon's end, which the board does not show
  return gaps.find(({ from, to, next }) => from === gap.start && (to === gap.end || next === null)) ?? null;
}
