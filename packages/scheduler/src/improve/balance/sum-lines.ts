import type { Blink } from "./blinks.ts";
import type { LineTimes } from "./line-times.ts";
import { orderArcsOf, type OrderArcs } from "./order-arcs.ts";
import type { ParallelLines } from "./parallel-lines.ts";
import type { SmoothedEnds } from "./smoothed-ends.ts";

/**
 * Lines on which no order waits for its time. Ends are plain sums, so a place is judged by two look-ups and the change that is there
 * now; lines and places that could not be the best are ruled out by the least seconds of the order there.
 */
export class SumLines implements LineTimes {
  readonly length: Int32Array;
  readonly end: Int32Array;
  judged = 0;
  placeLine = -1;
  placePosition = 0;
  private readonly lines: ParallelLines;
  private readonly arcs: OrderArcs;
  private readonly smoothed: SmoothedEnds;
  private readonly blink: Blink;
  /** between the starts of two lines in `rows` and `gaps` */
  private readonly stride: number;
  /** [line × stride + 1 + position] order; n, "none", before the first and after the last */
  private readonly rows: Int32Array;
  /** [line × stride + 1 + position] s of the change before the order there; 0 after the last */
  private readonly gaps: Int32Array;
  /** [line] no less than any gap on it */
  private readonly mostGap: Int32Array;
  private readonly keptRows: Int32Array;
  private readonly keptGaps: Int32Array;
  private readonly keptLength: Int32Array;
  private readonly keptEnd: Int32Array;

  constructor(lines: ParallelLines, smoothed: SmoothedEnds, blink: Blink) {
    const { m, n } = lines;
    this.lines = lines;
    this.arcs = orderArcsOf(lines);
    this.smoothed = smoothed;
    this.blink = blink;
    this.stride = n + 2;
    this.rows = new Int32Array(m * this.stride).fill(n);
    this.gaps = new Int32Array(m * this.stride);
    this.mostGap = new Int32Array(m);
    this.length = new Int32Array(m);
    this.end = Int32Array.from(lines.freeAt);
    this.keptRows = new Int32Array(m * this.stride);
    this.keptGaps = new Int32Array(m * this.stride);
    this.keptLength = new Int32Array(m);
    this.keptEnd = new Int32Array(m);
  }

  orderAt(line: number, position: number): number {
    return this.rows[line * this.stride + 1 + position]!;
  }

  findPlace(order: number): void {
    const { rows, gaps, mostGap, smoothed, end } = this;
    const { m, n } = this.lines;
    const { seconds, choices, choiceCount } = this.arcs;
    const first = 3 * order * m;
    const afterLast = first + 3 * choiceCount[order]!;
    let least = Infinity;
    this.placeLine = -1;
    for (let choice = first; choice < afterLast; choice += 3) {
      const line = choices[choice]!;
      const leastInto = choices[choice + 1]!;
      const leastSum = leastInto + choices[choice + 2]!;
      let shortest = smoothed.room(line, least);
      // after the last order there is no change to leave out, elsewhere at most the longest
      if (leastInto >= shortest && leastSum - mostGap[line]! >= shortest) continue;
      const base = 2 * (order * m + line) * (n + 1);
      const start = line * this.stride + 1;
      const stop = start + this.length[line]!;
      let at = -1;
      for (let p = start; p < stop; p++) {
        const gap = gaps[p]!;
        if (leastSum - gap >= shortest) continue;
        const added = (seconds[base + 2 * rows[p - 1]!]! + seconds[base + 2 * rows[p]! + 1]! - gap) | 0;
        if (added >= shortest || this.blink()) continue;
        shortest = added;
        at = p;
      }
      const appended = seconds[base + 2 * rows[stop - 1]!]!;
      if (appended < shortest && !this.blink()) {
        shortest = appended;
        at = stop;
      }
      this.judged += stop - start + 1;
      if (at < 0) continue;
      const growth = smoothed.costOf(end[line]! + shortest) - smoothed.cost[line]!;
      if (growth >= least) continue;
      least = growth;
      this.placeLine = line;
      this.placePosition = at - start;
    }
  }

  insert(line: number, position: number, order: number): void {
    const { m, n, run } = this.lines;
    const { rows, gaps, mostGap } = this;
    const { seconds } = this.arcs;
    const p = line * this.stride + 1 + position;
    const base = 2 * (order * m + line) * (n + 1);
    const into = seconds[base + 2 * rows[p - 1]!]!;
    const before = into - run[line * n + order]!;
    const after = seconds[base + 2 * rows[p]! + 1]!;
    this.end[line] = this.end[line]! + into + after - gaps[p]!;
    for (let q = line * this.stride + 1 + ++this.length[line]!; q > p; q--) {
      rows[q] = rows[q - 1]!;
      gaps[q] = gaps[q - 1]!;
    }
    rows[p] = order;
    gaps[p] = before;
    gaps[p + 1] = after;
    if (before > mostGap[line]!) mostGap[line] = before;
    if (after > mostGap[line]!) mostGap[line] = after;
  }

  remove(line: number, position: number, count: number): void {
    const { n, run } = this.lines;
    const { rows, gaps } = this;
    const start = line * this.stride + 1;
    const p = start + position;
    let gone = gaps[p + count]!;
    for (let q = p; q < p + count; q++) gone += gaps[q]! + run[line * n + rows[q]!]!;
    const length = this.length[line]! - count;
    for (let q = p; q <= start + length; q++) {
      rows[q] = rows[q + count]!;
      gaps[q] = gaps[q + count]!;
    }
    this.length[line] = length;
    gaps[p] = this.changeBetween(line, rows[p - 1]!, rows[p]!);
    this.end[line] = this.end[line]! + gaps[p] - gone;
    this.measureGaps(line);
  }

  shorten(line: number): void {
    // as a rule the third round finds nothing
    for (let round = 0; round < 3; round++) if (!this.moveSingles(line)) return;
  }

  /** Moves each order of a line to its best place there; whether any moved. */
  private moveSingles(line: number): boolean {
    const { m, n, run } = this.lines;
    const { rows, gaps } = this;
    const { seconds } = this.arcs;
    const start = line * this.stride + 1;
    const stop = start + this.length[line]!;
    let moved = false;
    for (let p = start; p < stop; p++) {
      const order = rows[p]!;
      const base = 2 * (order * m + line) * (n + 1);
      const freed = gaps[p]! + gaps[p + 1]! + run[line * n + order]!;
      let least = (freed - this.changeBetween(line, rows[p - 1]!, rows[p + 1]!)) | 0;
      let at = -1;
      for (let q = start; q <= stop; q++) {
        if (q === p || q === p + 1) continue;
        const added = (seconds[base + 2 * rows[q - 1]!]! + seconds[base + 2 * rows[q]! + 1]! - gaps[q]!) | 0;
        if (added >= least) continue;
        least = added;
        at = q - start;
      }
      this.judged += stop - start;
      if (at < 0) continue;
      this.remove(line, p - start, 1);
      this.insert(line, at > p - start ? at - 1 : at, order);
      moved = true;
    }
    return moved;
  }

  keep(line: number): void {
    const { rows, gaps, keptRows, keptGaps } = this;
    const start = line * this.stride + 1;
    // a loop: for a few numbers quicker than copying by the built-in ways
    for (let p = start + this.length[line]!; p >= start; p--) {
      keptRows[p] = rows[p]!;
      keptGaps[p] = gaps[p]!;
    }
    this.keptLength[line] = this.length[line]!;
    this.keptEnd[line] = this.end[line]!;
  }

  restore(line: number): void {
    const { rows, gaps, keptRows, keptGaps } = this;
    const start = line * this.stride + 1;
    this.length[line] = this.keptLength[line]!;
    this.end[line] = this.keptEnd[line]!;
    for (let p = start + this.length[line]; p >= start; p--) {
      rows[p] = keptRows[p]!;
      gaps[p] = keptGaps[p]!;
    }
    this.measureGaps(line);
  }

  /** s of the change between two neighbours; n is none. */
  private changeBetween(line: number, before: number, next: number): number {
    const { m, n, run } = this.lines;
    if (next === n) return 0;
    return this.arcs.seconds[2 * ((next * m + line) * (n + 1) + before)]! - run[line * n + next]!;
  }

  private measureGaps(line: number): void {
    const { gaps } = this;
    const start = line * this.stride + 1;
    let most = 0;
    for (let p = start + this.length[line]! - 1; p >= start; p--) if (gaps[p]! > most) most = gaps[p]!;
    this.mostGap[line] = most;
  }
}
