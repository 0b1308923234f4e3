import { addWork, NEVER, nextOpen } from "../problem/calendar.ts";
import type { CompiledProblem } from "../problem/compiled-problem.ts";
import type { OrdersAlone } from "./orders-alone.ts";

/** What a plain list schedule by due date comes to; no bound, but a hint of how far one may rise and how long work lasts. */
export interface RoughPlan {
  /** money of lateness */
  readonly lateness: number;
  /** s: its last end */
  readonly lastEnd: number;
}

/** Orders by due date, each where it ends first; lines and mould copies one thing at a time, `changeSeconds` [option] before. */
export function roughPlan(
  problem: CompiledProblem,
  alone: OrdersAlone,
  changeSeconds: Float64Array,
): RoughPlan {
  const { jobs, options, lines, moulds, setups } = problem;
  const lineFree = Float64Array.from(lines.freeAt);
  const lineSetup = Int32Array.from(lines.initialSetup);
  const copyFree = new Float64Array(moulds.copyCount);
  const order = Array.from({ length: jobs.count }, (_, job) => job).sort(
    (a, b) => jobs.due[a]! - jobs.due[b]! || a - b,
  );
  const freeCopy = (mould: number): number => {
    let best = moulds.firstCopy[mould]!;
    for (let copy = best; copy < moulds.firstCopy[mould + 1]!; copy++) {
      if (copyFree[copy]! < copyFree[best]!) best = copy;
    }
    return best;
  };
  let lateness = 0;
  let lastEnd = 0;
  for (const job of order) {
    let best = { end: NEVER, option: -1, copy: -1 };
    for (let option = jobs.firstOption[job]!; option < jobs.firstOption[job + 1]!; option++) {
      if (alone.earliestStart[option]! >= NEVER) continue;
      const line = options.line[option]!;
      const setup = options.setup[option]!;
      const mould = setups.mould[setup]!;
      const copy = mould < 0 ? -1 : freeCopy(mould);
      const change = lineSetup[line]! < 0 || lineSetup[line] === setup ? 0 : changeSeconds[option]!;
      const ready = Math.max(
        alone.earliestStart[option]!,
        lineFree[line]! + change,
        copy < 0 ? 0 : copyFree[copy]!,
      );
      const calendar = lines.runCalendar[line]!;
      const start = nextOpen(calendar, Math.min(NEVER, ready));
      const end = start >= NEVER ? NEVER : addWork(calendar, start, options.seconds[option]!);
      if (end < best.end) best = { end, option, copy };
    }
    if (best.option < 0) continue;
    const line = options.line[best.option]!;
    lineFree[line] = best.end;
    lineSetup[line] = options.setup[best.option]!;
    if (best.copy >= 0) copyFree[best.copy] = best.end;
    const by = best.end - jobs.due[job]!;
    if (by > 0) lateness += by * jobs.latePerSecond[job]! + jobs.lateOnce[job]!;
    lastEnd = Math.max(lastEnd, best.end);
  }
  return { lateness, lastEnd };
}
