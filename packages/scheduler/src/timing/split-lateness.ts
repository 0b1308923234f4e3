import type { CompiledProblem } from "../problem/compiled-problem.ts";
import type { Decoder } from "./decoder.ts";

/** Before every due date, even one long past. */
const NONE = -0x8000_0000;

/**
 * What one lot's end costs: an order is late by its last lot, so a lot pays for what it adds to the lateness that the order's
 * other lots already have. Where those end is known from the last full decode.
 */
export class SplitLateness {
  /** Share of its price at which lateness counts. */
  scale = 1;
  private readonly problem: CompiledProblem;
  /** [lot] s at which the other lots of its order are all done; NONE where there are none */
  private readonly othersEnd: Int32Array;
  private readonly saved: Int32Array;
  /** [lot] s, end in the last full decode; NONE where it does not run */
  private readonly lastEnd: Int32Array;

  constructor(problem: CompiledProblem) {
    this.problem = problem;
    this.othersEnd = new Int32Array(problem.lots.count).fill(NONE);
    this.saved = new Int32Array(problem.lots.count).fill(NONE);
    this.lastEnd = new Int32Array(problem.lots.count).fill(NONE);
  }

  /** Money by which a lot of the job that ends then makes its order later than the other lots do; or early, where it is the last. */
  of(lot: number, job: number, end: number): number {
    const { due, latePerSecond, lateOnce, earlyPerSecond } = this.problem.jobs;
    const late = end - due[job]!;
    const others = this.othersEnd[lot]!;
    if (late <= 0) return end <= others ? 0 : -late * earlyPerSecond[job]!;
    if (others <= due[job]!) return (late * latePerSecond[job]! + lateOnce[job]!) * this.scale;
    return end <= others ? 0 : (end - others) * latePerSecond[job]! * this.scale;
  }

  /** Money per second that a lot which ends then costs at the least if it ends later; negative while it is early. */
  rateOf(lot: number, job: number, end: number): number {
    const { due, latePerSecond, earlyPerSecond } = this.problem.jobs;
    if (end <= this.othersEnd[lot]!) return 0;
    return end > due[job]! ? latePerSecond[job]! * this.scale : -earlyPerSecond[job]!;
  }

  /** Takes the ends of a full decode. */
  learn({ option, end }: Decoder): void {
    const { jobs, lots } = this.problem;
    if (lots.count === jobs.count) return;
    this.othersEnd.fill(NONE);
    for (let lot = 0; lot < lots.count; lot++) {
      this.lastEnd[lot] = option[lot]! < 0 ? NONE : end[lot]!;
      if (option[lot]! >= 0) this.noteEnd(lot, end[lot]!, null);
    }
    this.saved.set(this.othersEnd);
  }

  /** Goes back to what `learn` left behind. */
  restore(): void {
    this.othersEnd.set(this.saved);
  }

  /** A lot ends then: the other lots of its order, or of those only the ones that stand on no line, need not end before. */
  noteEnd(lot: number, end: number, lineOf: Int32Array | null): void {
    const { job, firstLot } = this.problem.lots;
    const own = job[lot]!;
    for (let other = firstLot[own]!; other < firstLot[own + 1]!; other++) {
      if (other === lot || (lineOf !== null && lineOf[other]! >= 0)) continue;
      if (end > this.othersEnd[other]!) this.othersEnd[other] = end;
    }
  }

  /**
   * Lots were taken out: each will be judged by those of its order that still stand on a line. The answer is what makes the
   * difference of costs right, money: the lots of one order each saved less than all of them together.
   */
  takeOut(taken: readonly number[], lineOf: Int32Array): number {
    const { jobs, lots } = this.problem;
    if (lots.count === jobs.count) return 0;
    let money = 0;
    for (const job of new Set(taken.map((lot) => lots.job[lot]!))) {
      let last = NONE;
      let standing = NONE;
      for (let lot = lots.firstLot[job]!; lot < lots.firstLot[job + 1]!; lot++) {
        const end = this.lastEnd[lot]!;
        last = Math.max(last, end);
        if (lineOf[lot]! >= 0) standing = Math.max(standing, end);
        else if (end > NONE) money += this.of(lot, job, end);
      }
      money -= this.ofOrder(job, last) - this.ofOrder(job, standing);
      for (let lot = lots.firstLot[job]!; lot < lots.firstLot[job + 1]!; lot++)
        if (lineOf[lot]! < 0) this.othersEnd[lot] = standing;
    }
    return money;
  }

  /** Money of the lateness or earliness of an order that ends then; NONE: it has no lot yet. */
  private ofOrder(job: number, end: number): number {
    if (end === NONE) return 0;
    const { due, latePerSecond, lateOnce, earlyPerSecond } = this.problem.jobs;
    const late = end - due[job]!;
    if (late <= 0) return -late * earlyPerSecond[job]!;
    return (late * latePerSecond[job]! + lateOnce[job]!) * this.scale;
  }
}
