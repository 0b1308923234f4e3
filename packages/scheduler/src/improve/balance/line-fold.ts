import type { Blink } from "./blinks.ts";
import type { LineTimes } from "./line-times.ts";
import type { ParallelLines } from "./parallel-lines.ts";
import type { SmoothedEnds } from "./smoothed-ends.ts";

/**
 * Lines on which orders wait for their time. What one more order would do to an end is known in O(1): the end as a function of
 * the instant t at which a position is reached is max(t + sum, floor), so each position keeps that pair for all that follows it.
 */
export class LineFold implements LineTimes {
  readonly length: Int32Array;
  readonly end: Int32Array;
  judged = 0;
  placeLine = -1;
  placePosition = 0;
  private readonly lines: ParallelLines;
  private readonly smoothed: SmoothedEnds;
  private readonly blink: Blink;
  private readonly rows: readonly Int32Array[];
  private readonly keptRows: readonly Int32Array[];
  private readonly keptLength: Int32Array;
  /** [line][position] instant at which the position is reached */
  private readonly reached: readonly Int32Array[];
  /** [line][position] s from the end of the change before the order there to the line's end, and the least end */
  private readonly sum: readonly Int32Array[];
  private readonly floor: readonly Int32Array[];
  /** position found by the last `shortestOn` */
  private shortestAt = -1;

  constructor(lines: ParallelLines, smoothed: SmoothedEnds, blink: Blink) {
    const rows = (): Int32Array[] => Array.from({ length: lines.m }, () => new Int32Array(lines.n + 1));
    this.lines = lines;
    this.smoothed = smoothed;
    this.blink = blink;
    this.rows = rows();
    this.keptRows = rows();
    this.reached = rows();
    this.sum = rows();
    this.floor = rows();
    this.keptLength = new Int32Array(lines.m);
    this.length = new Int32Array(lines.m);
    this.end = Int32Array.from(lines.freeAt);
    for (let line = 0; line < lines.m; line++) this.refresh(line);
  }

  orderAt(line: number, position: number): number {
    return this.rows[line]![position]!;
  }

  findPlace(order: number): void {
    const { lines, smoothed, end } = this;
    let least = Infinity;
    this.placeLine = -1;
    for (let line = 0; line < lines.m; line++) {
      if (lines.run[line * lines.n + order]! < 0) continue;
      const latest = end[line]! + smoothed.room(line, least);
      const shortest = this.shortestOn(line, order, latest);
      if (shortest >= latest) continue;
      const growth = smoothed.costOf(shortest) - smoothed.cost[line]!;
      if (growth >= least) continue;
      least = growth;
      this.placeLine = line;
      this.placePosition = this.shortestAt;
    }
  }

  /** The earliest end of the line with one more order, if that is before `latest`, else `latest`; its place is then in `shortestAt`. */
  private shortestOn(line: number, order: number, latest: number): number {
    const { n, change, run, opens, release } = this.lines;
    const row = this.rows[line]!;
    const reached = this.reached[line]!;
    const sum = this.sum[line]!;
    const floor = this.floor[line]!;
    const length = this.length[line]!;
    const ownRun = run[line * n + order]!;
    const ownOpens = opens[line * n + order]!;
    const ownRelease = release[order]!;
    const base = line * (n + 1) * n;
    let before = n;
    let shortest = latest;
    this.judged += length + 1;
    for (let p = 0; p <= length; p++) {
      const t = reached[p]!;
      const changed = (t > ownOpens ? t : ownOpens) + change[base + before * n + order]!;
      let end = (changed > ownRelease ? changed : ownRelease) + ownRun;
      if (end + sum[p]! >= shortest) {
        before = row[p]!;
        continue;
      }
      if (p < length) {
        const next = row[p]!;
        const nextOpens = opens[line * n + next]!;
        end = (end > nextOpens ? end : nextOpens) + change[base + order * n + next]! + sum[p]!;
        if (floor[p]! > end) end = floor[p]!;
        before = next;
      }
      if (end >= shortest || this.blink()) continue;
      shortest = end;
      this.shortestAt = p;
    }
    return shortest;
  }

  insert(line: number, position: number, order: number): void {
    const row = this.rows[line]!;
    row.copyWithin(position + 1, position, this.length[line]);
    row[position] = order;
    this.length[line]!++;
    this.refresh(line);
  }

  remove(line: number, position: number, count: number): void {
    this.rows[line]!.copyWithin(position, position + count, this.length[line]);
    this.length[line]! -= count;
    this.refresh(line);
  }

  shorten(line: number): void {
    // as a rule the third round finds nothing
    for (let round = 0; round < 3; round++) if (!this.moveSingles(line)) return;
  }

  /** Moves each order of a line to its best place there; whether any moved. */
  private moveSingles(line: number): boolean {
    let moved = false;
    for (let p = 0; p < this.length[line]!; p++) {
      const before = this.end[line]!;
      const order = this.orderAt(line, p);
      this.remove(line, p, 1);
      const gains = this.shortestOn(line, order, before) < before;
      this.insert(line, gains ? this.shortestAt : p, order);
      if (gains) moved = true;
    }
    return moved;
  }

  keep(line: number): void {
    const row = this.rows[line]!;
    const kept = this.keptRows[line]!;
    for (let p = this.length[line]! - 1; p >= 0; p--) kept[p] = row[p]!;
    this.keptLength[line] = this.length[line]!;
  }

  restore(line: number): void {
    const row = this.rows[line]!;
    const kept = this.keptRows[line]!;
    this.length[line] = this.keptLength[line]!;
    for (let p = this.length[line] - 1; p >= 0; p--) row[p] = kept[p]!;
    this.refresh(line);
  }

  /** Times a line anew. O(length). */
  private refresh(line: number): void {
    const { n, run, change, opens, release, freeAt } = this.lines;
    const row = this.rows[line]!;
    const length = this.length[line]!;
    const reached = this.reached[line]!;
    const base = line * (n + 1) * n;
    let t = freeAt[line]!;
    let before = n;
    for (let p = 0; p < length; p++) {
      reached[p] = t;
      const order = row[p]!;
      const cell = line * n + order;
      const changed = (t > opens[cell]! ? t : opens[cell]!) + change[base + before * n + order]!;
      t = (changed > release[order]! ? changed : release[order]!) + run[cell]!;
      before = order;
    }
    reached[length] = t;
    this.end[line] = t;
    const sum = this.sum[line]!;
    const floor = this.floor[line]!;
    sum[length] = 0;
    floor[length] = 0;
    // from the changed state before order p: max(t, release) + run, then the next change from no earlier than it opens
    let followSum = 0;
    let followFloor = 0;
    for (let p = length - 1; p >= 0; p--) {
      const order = row[p]!;
      const cell = line * n + order;
      const ownRun = run[cell]!;
      sum[p] = ownRun + followSum;
      const leastEnd = release[order]! + sum[p]!;
      floor[p] = leastEnd > followFloor ? leastEnd : followFloor;
      const step = change[base + (p === 0 ? n : row[p - 1]!) * n + order]!;
      followSum = step + sum[p]!;
      const openedEnd = opens[cell]! + followSum;
      followFloor = openedEnd > floor[p]! ? openedEnd : floor[p]!;
    }
  }
}
