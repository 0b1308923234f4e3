import { workedBefore } from "../problem/calendar.ts";
import type { CompiledProblem } from "../problem/compiled-problem.ts";
import type { CostSums } from "./cost-sums.ts";
import type { BookedRun } from "./booked-run.ts";

/** What a plan under way asks of each line: work done, for the balance, and hours of it that are overtime. */
export class LineHours {
  private readonly problem: CompiledProblem;
  /** [line] s of running and of changes */
  readonly busy: Int32Array;

  constructor(problem: CompiledProblem) {
    this.problem = problem;
    this.busy = new Int32Array(problem.lines.count);
  }

  clear(): void {
    this.busy.fill(0);
  }

  countRun({ line, work, parts, from, to }: BookedRun, sums: CostSums): void {
    this.busy[line]! += work;
    const { overtime, mannedOvertime, pool } = this.problem.lines;
    if (overtime[line] === null) return;
    if (pool[line]! < 0) sums.overtimeSeconds += hoursIn(mannedOvertime[line]!, { from, to });
    else for (const part of parts!) sums.overtimeSeconds += hoursIn(overtime[line]!, part);
  }

  countChange(
    line: number,
    work: number,
    span: { readonly from: number; readonly to: number },
    sums: CostSums,
  ): void {
    this.busy[line]! += work;
    sums.overtimeSeconds += hoursIn(this.problem.lines.overtime[line]!, span);
  }

  /** Adds the balance, once all is counted. */
  countBalance(sums: CostSums): void {
    const { busy } = this;
    if (!this.problem.terms.balance || busy.length === 0) return;
    let most = 0;
    let all = 0;
    for (const seconds of busy) {
      all += seconds;
      if (seconds > most) most = seconds;
    }
    sums.imbalanceSeconds = most - all / busy.length;
  }
}

type Hours = CompiledProblem["lines"]["overtime"][number];

/** Seconds of the hours that lie in [from, to). */
export function hoursIn(hours: Hours, { from, to }: { readonly from: number; readonly to: number }): number {
  return hours === null ? 0 : workedBefore(hours, to) - workedBefore(hours, from);
}
