import type { CompiledProblem } from "../problem/compiled-problem.ts";
import { emptySequences, insertOption, type Sequences } from "../timing/sequences.ts";
import { createAnnealing, type Annealing } from "./annealing.ts";
import { LineFold } from "./balance/line-fold.ts";
import { parallelLinesOf, type ParallelLines } from "./balance/parallel-lines.ts";
import { shortenLine } from "./balance/shorten-line.ts";
import { allAlwaysFit, linesArePlain } from "./plain-lines.ts";
import type { Search, SearchContext, SearchMethod } from "./search-method.ts";

/** One place in so many is not looked at. */
const BLINK = 100;
/** Temperature at the start and the end, in mean run times. */
const HOT = 0.7;
const COLD = 0.05;

/**
 * Parallel plain lines, last end as early as possible: ruin and recreate by strings on a few lines (Christiaens and Vanden
 * Berghe 2020), annealed on a smoothed last end, Σ (T ÷ 10)(C ÷ T)^10 with T just below the best known, which also rewards
 * relief of the lines that are not last.
 */
class BalanceSearch implements Search {
  readonly stepsPerLook = 16;
  private readonly context: SearchContext;
  private readonly lines: ParallelLines;
  private readonly fold: LineFold;
  private readonly annealing: Annealing;
  private readonly bestRows: Int32Array[];
  private bestEnd = Infinity;
  private target = 1;
  private currentSmooth = Infinity;
  private readonly lineOf: Int32Array;
  private readonly removed: number[] = [];
  private readonly touched: number[] = [];
  private readonly isTouched: Uint8Array;
  /** rows of touched lines before the step */
  private readonly keptRows: readonly Int32Array[];
  private readonly keptLength: Int32Array;
  private judged = 0;

  constructor(context: SearchContext) {
    const { problem, random, start } = context;
    this.context = context;
    this.lines = parallelLinesOf(problem);
    this.fold = new LineFold(this.lines);
    const { m, n } = this.lines;
    this.lineOf = new Int32Array(n).fill(-1);
    this.isTouched = new Uint8Array(m);
    this.keptRows = Array.from({ length: m }, () => new Int32Array(n + 1));
    this.keptLength = new Int32Array(m);
    for (let line = 0; line < m; line++) {
      for (let p = 0; p < start.length[line]!; p++) {
        const order = problem.options.job[start.at[line]![p]!]!;
        this.fold.insert(line, p, order);
        this.lineOf[order] = line;
      }
    }
    for (let order = 0; order < n; order++) if (this.lineOf[order]! < 0) this.insertAtBest(order);
    this.bestRows = Array.from({ length: m }, () => new Int32Array(0));
    this.keepBest();
    const scale = Math.max(1, (this.bestEnd * m) / n);
    this.annealing = createAnnealing(random, HOT * scale, COLD * scale);
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
    return this.judged;
  }

  step(share: number): void {
    if (this.lines.n === 0) return;
    this.annealing.cool(share);
    this.ruin();
    this.recreate();
    for (const line of this.touched) this.judged += shortenLine(this.fold, line);
    const smooth = this.smoothAll();
    if (smooth > this.currentSmooth + this.annealing.tolerance()) {
      this.undo();
      return;
    }
    this.currentSmooth = smooth;
    this.release();
    if (this.lastEnd() < this.bestEnd) this.keepBest();
  }

  private lastEnd(): number {
    let last = 0;
    for (const end of this.fold.end) if (end > last) last = end;
    return last;
  }

  /** (T ÷ 10)(C ÷ T)^10, by products alone. */
  private smooth(end: number): number {
    const ratio = end / this.target;
    const square = ratio * ratio;
    const fourth = square * square;
    return (this.target / 10) * fourth * fourth * square;
  }

  private smoothAll(): number {
    let sum = 0;
    for (const end of this.fold.end) sum += this.smooth(end);
    return sum;
  }

  private keepBest(): void {
    const { fold, lines } = this;
    this.bestEnd = this.lastEnd();
    for (let line = 0; line < lines.m; line++)
      this.bestRows[line] = fold.rows[line]!.slice(0, fold.length[line]);
    this.target = Math.max(1, this.bestEnd - 1);
    this.currentSmooth = this.smoothAll();
  }

  private touch(line: number): void {
    if (this.isTouched[line] === 1) return;
    this.isTouched[line] = 1;
    this.touched.push(line);
    const length = this.fold.length[line]!;
    const row = this.fold.rows[line]!;
    const kept = this.keptRows[line]!;
    for (let p = 0; p < length; p++) kept[p] = row[p]!;
    this.keptLength[line] = length;
  }

  private release(): void {
    for (const line of this.touched) this.isTouched[line] = 0;
    this.touched.length = 0;
  }

  private undo(): void {
    for (const line of this.touched) {
      const length = this.keptLength[line]!;
      const row = this.fold.rows[line]!;
      const kept = this.keptRows[line]!;
      for (let p = 0; p < length; p++) {
        row[p] = kept[p]!;
        this.lineOf[kept[p]!] = line;
      }
      this.fold.length[line] = length;
      this.fold.refresh(line);
    }
    this.release();
  }

  private lastLine(): number {
    const { end } = this.fold;
    let last = 0;
    for (let line = 1; line < end.length; line++) if (end[line]! > end[last]!) last = line;
    return last;
  }

  private ruin(): void {
    const { random } = this.context;
    const { m } = this.lines;
    this.removed.length = 0;
    const count = Math.min(m, 2 + random.below(3));
    for (let i = 0; i < count; i++) {
      const line = i === 0 && random.below(2) === 0 ? this.lastLine() : random.below(m);
      if (this.isTouched[line] === 0) this.removeString(line);
    }
  }

  private removeString(line: number): void {
    const { random } = this.context;
    const { fold } = this;
    const length = fold.length[line]!;
    if (length === 0) return;
    const size = 1 + random.below(Math.min(length, 5));
    const from = random.below(length - size + 1);
    this.touch(line);
    const row = fold.rows[line]!;
    for (let p = from; p < from + size; p++) {
      this.removed.push(row[p]!);
      this.lineOf[row[p]!] = -1;
    }
    row.copyWithin(from, from + size, length);
    fold.length[line]! -= size;
    fold.refresh(line);
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
  }

  private insertAtBest(order: number): void {
    const { random } = this.context;
    const { fold, lines } = this;
    let bestLine = -1;
    let bestPosition = 0;
    let least = Infinity;
    // counts down to the next place that is not looked at
    let blink = random.below(2 * BLINK);
    for (let line = 0; line < lines.m; line++) {
      if (lines.run[line * lines.n + order]! < 0) continue;
      const length = fold.length[line]!;
      let shortest = NEVER_END;
      let at = -1;
      for (let position = 0; position <= length; position++) {
        if (--blink < 0) {
          blink = random.below(2 * BLINK);
          continue;
        }
        const end = fold.endWith(line, position, order);
        if (end < shortest) {
          shortest = end;
          at = position;
        }
      }
      this.judged += length + 1;
      if (at < 0) continue;
      const growth = this.smooth(shortest) - this.smooth(fold.end[line]!);
      if (growth >= least) continue;
      least = growth;
      bestLine = line;
      bestPosition = at;
    }
    if (bestLine < 0) {
      this.insertAtBest(order);
      return;
    }
    this.touch(bestLine);
    fold.insert(bestLine, bestPosition, order);
    this.lineOf[order] = bestLine;
  }
}

/** Beyond every end, s. */
const NEVER_END = 2_000_000_000;

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
  begin: (context) => new BalanceSearch(context),
};
