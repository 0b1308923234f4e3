import type { CompiledProblem } from "../problem/compiled-problem.ts";
import type { MovedRun } from "./promise.ts";
import type { RunTimes } from "./standing.ts";

/** Lots that run in both plans, but not at the same time; by start. The problem is that of the later plan, whose first lots are the earlier's. */
export function movedRuns(problem: CompiledProblem, before: RunTimes, after: RunTimes): readonly MovedRun[] {
  const { data, lots, options, origin } = problem;
  const moved: MovedRun[] = [];
  for (let lot = 0; lot < before.option.length; lot++) {
    if (before.option[lot]! < 0 || after.option[lot]! < 0) continue;
    if (before.start[lot] === after.start[lot] && before.end[lot] === after.end[lot]) continue;
    const job = lots.job[lot]!;
    moved.push({
      orderId: data.jobs[job]!.orderId,
      lot: lot - lots.firstLot[job]!,
      lineId: data.lines[options.line[after.option[lot]!]!]!.id,
      startBefore: origin + before.start[lot]!,
      start: origin + after.start[lot]!,
      endBefore: origin + before.end[lot]!,
      end: origin + after.end[lot]!,
    });
  }
  return moved.sort(
    (a, b) => a.start - b.start || (a.orderId < b.orderId ? -1 : a.orderId > b.orderId ? 1 : a.lot - b.lot),
  );
}
