import type { CompiledProblem } from "../problem/compiled-problem.ts";
import type { BookedRun } from "./booked-run.ts";
import type { CostSums } from "./cost-sums.ts";
import { LineHours } from "./line-hours.ts";
import { OrderTally } from "./order-tally.ts";
import type { Sequences } from "./sequences.ts";

/** Counts what a plan under way comes to, by order and by line; terms without a price are not looked at. */
export class PlanTally {
  readonly sums: CostSums;
  private readonly problem: CompiledProblem;
  private readonly orders: OrderTally;
  private readonly hours: LineHours;

  constructor(problem: CompiledProblem, sums: CostSums) {
    this.problem = problem;
    this.sums = sums;
    this.orders = new OrderTally(problem);
    this.hours = new LineHours(problem);
  }

  /** All that is known so far beside the sums. */
  get columns(): readonly Int32Array[] {
    return [...this.orders.columns, this.hours.busy];
  }

  clear(): void {
    this.orders.clear();
    this.hours.clear();
  }

  countRun(run: BookedRun): void {
    const { terms } = this.problem;
    this.orders.countRun(run.job, run.to, this.sums);
    if (terms.stability) this.orders.noteStart(run.job, run.line, run.from);
    if (terms.overtime || terms.balance) this.hours.countRun(run, this.sums);
  }

  /** A change by its spec, on a line from one instant to another. */
  countChange(spec: number, line: number, span: { readonly from: number; readonly to: number }): void {
    const { terms, changes } = this.problem;
    if (terms.overtime || terms.balance) this.hours.countChange(line, changes.total[spec]!, span, this.sums);
    this.sums.changeSeconds += changes.total[spec]!;
    this.sums.teamSeconds += changes.teamWork[spec]!;
    this.sums.scrapKg += changes.scrapKg[spec]!;
  }

  /** Counts what is known only when all is timed; false where some lots of an order run and others do not. */
  finish(sequences: Sequences): boolean {
    if (this.orders.isTorn(sequences)) return false;
    this.orders.countOrders(this.sums);
    this.hours.countBalance(this.sums);
    return true;
  }
}
