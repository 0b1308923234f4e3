import type { CompiledProblem } from "../problem/compiled-problem.ts";
import { emptySequences, insertOption, type Sequences } from "../timing/sequences.ts";
import { createAnnealing, type Annealing } from "./annealing.ts";
import { createBlink } from "./balance/blinks.ts";
import { LineFold } from "./balance/line-fold.ts";
import type { LineTimes } from "./balance/line-times.ts";
import { parallelLinesOf, type ParallelLines } from "./balance/parallel-lines.ts";
import { SmoothedEnds } from "./balance/smoothed-ends.ts";
import { SumLines } from "./balance/sum-lines.ts";
import { allAlwaysFit, linesArePlain } from "./plain-lines.ts";
import type { Search, SearchContext, SearchMethod } from "./search-method.ts";

/** One place in so many is not looked at. */
const BLINK = 100;
/** Temperature at the start and the end, in mean line time per order. */
const HOT = 0.4;
const COLD = 0.04;
/** Neighbours that are taken out of a line at the most: a third of a mean line, within these. */
const LONGEST_STRING = { least: 3, most: 5 };

/**
 * Parallel plain lines, last end as early as possible: ruin and recreate by strings on a few lines (Christiaens and Vanden
 * Berghe 2020), annealed on a smoothed last end that aims just below the best known.
 */
class BalanceSearch implements Search {
  readonly stepsPerLook = 16;
  private readonly context: SearchContext;
  private readonly lines: ParallelLines;
  private readonly smoothed: SmoothedEnds;
  private readonly times: LineTimes;
  private readonly annealing: Annealing;
  private readonly longestString: number;
  private bestRows: readonly Int32Array[] = [];
  private bestEnd = Infinity;
  private readonly removed: number[] = [];
  private readonly touched: number[] = [];
  private readonly isTouched: Uint8Array;
  /** [line] smoothed cost of touched lines before the step */
  private readonly keptCost: Float64Array;

  constructor(context: SearchContext) {
    const { problem, random } = context;
    this.context = context;
    this.lines = parallelLinesOf(problem);
    const { m, n, waits } = this.lines;
    this.smoothed = new SmoothedEnds(m);
    const blink = createBlink(random, BLINK);
    this.times = waits
      ? new LineFold(this.lines, this.smoothed, blink)
      : new SumLines(this.lines, this.smoothed, blink);
    const { least, most } = LONGEST_STRING;
    this.longestString = Math.min(most, Math.max(least, Math.round(n / m / 3)));
    this.isTouched = new Uint8Array(m);
    this.keptCost = new Float64Array(m);
    this.adopt(context.start);
    const scale = Math.max(1, (this.bestEnd * m) / Math.max(1, n));
    this.annealing = createAnnealing(random, HOT * context.strategy.heat * scale, COLD * scale);
  }

  /** Goes on from the given sequences; orders that they leave out are put where they fit best. */
  adopt(sequences: Sequences): void {
    const { times, lines } = this;
    const left = new Set(Array.from({ length: lines.n }, (_, order) => order));
    for (let line = 0; line < lines.m; line++) {
      times.remove(line, 0, times.length[line]!);
      for (let p = 0; p < sequences.length[line]!; p++) {
        const order = this.context.problem.options.job[sequences.at[line]![p]!]!;
        times.insert(line, p, order);
        left.delete(order);
      }
    }
    this.aim(Math.min(this.bestEnd, this.lastEnd()));
    for (const order of left) this.insertAtBest(order);
    this.release();
    if (this.lastEnd() < this.bestEnd) this.keepBest();
  }

  best(): Sequences {
    const sequences = emptySequences(this.context.problem);
    this.bestRows.forEach((row, line) => {
      row.forEach((order, p) => {
        insertOption(sequences, line, p, this.lines.option[line * this.lines.n + order]!);
      });
    });
    return sequences;
  }

  bestMoney(): number {
    return (this.bestEnd * this.context.problem.data.objective.makespanPerHour) / 3600;
  }

  evaluations(): number {
    return this.times.judged;
  }

  step(share: number): void {
    this.annealing.cool(share);
    this.ruin();
    this.recreate();
    let growth = 0;
    for (const line of this.touched) {
      this.times.shorten(line);
      this.measure(line);
      growth += this.smoothed.cost[line]! - this.keptCost[line]!;
    }
    if (growth > this.annealing.tolerance()) {
      this.undo();
      return;
    }
    this.release();
    if (this.lastEnd() < this.bestEnd) this.keepBest();
  }

  private lastEnd(): number {
    let last = 0;
    for (const end of this.times.end) if (end > last) last = end;
    return last;
  }

  private lastLine(): number {
    const { end } = this.times;
    let last = 0;
    for (let line = 1; line < end.length; line++) if (end[line]! > end[last]!) last = line;
    return last;
  }

  private keepBest(): void {
    const { times } = this;
    this.bestEnd = this.lastEnd();
    this.bestRows = Array.from(times.length, (length, line) =>
      Int32Array.from({ length }, (_, position) => times.orderAt(line, position)),
    );
    this.aim(this.bestEnd);
  }

  /** Lets the smoothed ends aim just below an end. */
  private aim(end: number): void {
    this.smoothed.aimAt(end - 1);
    for (let line = 0; line < this.lines.m; line++) this.measure(line);
  }

  private measure(line: number): void {
    this.smoothed.measure(line, this.times.end[line]!);
  }

  private touch(line: number): void {
    if (this.isTouched[line] === 1) return;
    this.isTouched[line] = 1;
    this.touched.push(line);
    this.times.keep(line);
    this.keptCost[line] = this.smoothed.cost[line]!;
  }

  private release(): void {
    for (const line of this.touched) this.isTouched[line] = 0;
    this.touched.length = 0;
  }

  private undo(): void {
    for (const line of this.touched) {
      this.times.restore(line);
      this.measure(line);
    }
    this.release();
  }

  private ruin(): void {
    const { random } = this.context;
    const { m } = this.lines;
    const count = Math.min(m, 2 + random.below(3));
    for (let i = 0; i < count; i++) {
      const line = i === 0 && random.below(2) === 0 ? this.lastLine() : random.below(m);
      if (this.isTouched[line] === 0) this.removeString(line);
    }
  }

  private removeString(line: number): void {
    const { random } = this.context;
    const { times } = this;
    const length = times.length[line]!;
    if (length === 0) return;
    const size = 1 + random.below(Math.min(length, this.longestString));
    const from = random.below(length - size + 1);
    this.touch(line);
    for (let p = from; p < from + size; p++) this.removed.push(times.orderAt(line, p));
    times.remove(line, from, size);
    this.measure(line);
  }

  private recreate(): void {
    const { random } = this.context;
    const { removed } = this;
    for (let i = removed.length - 1; i > 0; i--) {
      const other = random.below(i + 1);
      const order = removed[i]!;
      removed[i] = removed[other]!;
      removed[other] = order;
    }
    for (const order of removed) this.insertAtBest(order);
    removed.length = 0;
  }

  private insertAtBest(order: number): void {
    const { times } = this;
    // every place can have been blinked at
    do times.findPlace(order);
    while (times.placeLine < 0);
    this.touch(times.placeLine);
    times.insert(times.placeLine, times.placePosition, order);
    this.measure(times.placeLine);
  }
}

function supports(problem: CompiledProblem): boolean {
  const { jobs, changes, lines, makespanPrice } = problem;
  if (makespanPrice <= 0 || jobs.count === 0 || jobs.count * jobs.count * lines.count > 30_000_000)
    return false;
  if (jobs.latePerSecond.some((money) => money > 0) || jobs.lateOnce.some((money) => money > 0)) return false;
  if (changes.cost.some((money) => money > 0) || !linesArePlain(problem)) return false;
  return allAlwaysFit(problem);
}

export const balanceSearch: SearchMethod = {
  name: "balance of parallel lines",
  supports,
  *begin(context) {
    yield;
    return new BalanceSearch(context);
  },
};
