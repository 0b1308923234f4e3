import type { CompiledProblem } from "../problem/compiled-problem.ts";
import type { CostSums } from "./cost-sums.ts";
import type { Sequences } from "./sequences.ts";

/** What a plan under way does to each order: when its last lot ends, and whether all of its lots run. */
export class OrderTally {
  private readonly problem: CompiledProblem;
  /** [job] s, end of the last of its lots so far; -1 for none */
  readonly end: Int32Array;
  /** [job] lots that run */
  readonly lotsRun: Int32Array;

  constructor(problem: CompiledProblem) {
    this.problem = problem;
    this.end = new Int32Array(problem.jobs.count);
    this.lotsRun = new Int32Array(problem.jobs.count);
  }

  clear(): void {
    this.end.fill(-1);
    this.lotsRun.fill(0);
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

  countLeftOver(sums: CostSums): void {
    const { weight } = this.problem.jobs;
    for (let job = 0; job < weight.length; job++)
      if (this.lotsRun[job] === 0) sums.unplannedWeight += weight[job]!;
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
