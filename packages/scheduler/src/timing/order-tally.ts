import { NEVER } from "../problem/calendar.ts";
import type { CompiledProblem } from "../problem/compiled-problem.ts";
import type { CostSums } from "./cost-sums.ts";
import type { Sequences } from "./sequences.ts";

/** What a plan under way does to each order: when its last lot ends, and whether all of its lots run. */
export class OrderTally {
  private readonly problem: CompiledProblem;
  /** [job] s, end of the last of its lots so far; -1 for none */
  private readonly end: Int32Array;
  /** [job] lots that run */
  private readonly lotsRun: Int32Array;
  /** [job] s, first start of its lots; 1 where one of them is on another line than published */
  private readonly start: Int32Array;
  private readonly changedLine: Int32Array;

  constructor(problem: CompiledProblem) {
    this.problem = problem;
    this.end = new Int32Array(problem.jobs.count);
    this.lotsRun = new Int32Array(problem.jobs.count);
    this.start = new Int32Array(problem.jobs.count);
    this.changedLine = new Int32Array(problem.jobs.count);
  }

  /** All that is known so far. */
  get columns(): readonly Int32Array[] {
    return [this.end, this.lotsRun, this.start, this.changedLine];
  }

  clear(): void {
    this.end.fill(-1);
    this.lotsRun.fill(0);
    if (this.problem.terms.stability) {
      this.start.fill(NEVER);
      this.changedLine.fill(0);
    }
  }

  /** Notes where and when a lot of the job starts: the order's distance from the published plan. */
  noteStart(job: number, line: number, start: number): void {
    if (start < this.start[job]!) this.start[job] = start;
    if (!this.problem.jobs.publishedLines[job]!.includes(line)) this.changedLine[job] = 1;
  }

  /** Counts a lot of the job that ends at `end`: an order is late by its last lot. */
  countRun(job: number, end: number, sums: CostSums): void {
    const { due, weight } = this.problem.jobs;
    const before = this.end[job]!;
    this.lotsRun[job]!++;
    if (end > sums.lastEnd) sums.lastEnd = end;
    if (end <= before) return;
    this.end[job] = end;
    const late = end - due[job]!;
    if (late <= 0) return;
    const lateBefore = before < 0 ? 0 : Math.max(0, before - due[job]!);
    sums.lateWeightSeconds += (late - lateBefore) * weight[job]!;
    if (lateBefore > 0) return;
    sums.lateWeight += weight[job]!;
    sums.lateOrders++;
  }

  /** What is known of each order only when all is timed: left out, early, moved. */
  countOrders(sums: CostSums): void {
    const { terms, jobs } = this.problem;
    for (let job = 0; job < jobs.count; job++) {
      if (this.lotsRun[job] === 0) sums.unplannedWeight += jobs.weight[job]!;
      else if (terms.earliness && jobs.earlyPerSecond[job]! > 0) {
        const early = jobs.due[job]! - this.end[job]!;
        if (early > 0) sums.earlyWeightSeconds += early * jobs.holdingWeight[job]!;
      }
      if (terms.stability && this.lotsRun[job]! > 0 && jobs.publishedLines[job]!.length > 0) {
        sums.linesChanged += this.changedLine[job]!;
        sums.startsMovedSeconds += Math.abs(this.start[job]! - jobs.publishedStart[job]!);
      }
    }
  }

  /** True when some lots of an order run and others do not. */
  isTorn({ pieces }: Sequences): boolean {
    const { jobs, lots } = this.problem;
    if (lots.count === jobs.count) return false;
    for (let job = 0; job < jobs.count; job++) {
      if (this.lotsRun[job] === 0) continue;
      let used = 0;
      for (let lot = lots.firstLot[job]!; lot < lots.firstLot[job + 1]!; lot++) if (pieces[lot]! > 0) used++;
      if (this.lotsRun[job]! < used) return true;
    }
    return false;
  }
}
