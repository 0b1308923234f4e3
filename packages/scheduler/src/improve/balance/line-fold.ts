import type { ParallelLines } from "./parallel-lines.ts";

/**
 * Ends of the lines and what one more order would do to them, in O(1): the end of a line as a function of the instant t at
 * which a position is reached is max(t + sum, floor), so each position keeps the pair (sum, floor) of all that follows it.
 */
export class LineFold {
  readonly rows: readonly Int32Array[];
  readonly length: Int32Array;
  /** [line] s */
  readonly end: Int32Array;
  private readonly lines: ParallelLines;
  /** [line][position] instant after the order there */
  private readonly after: readonly Int32Array[];
  /** [line][position] sum and floor from the order there to the line's end, its change not counted */
  private readonly sum: readonly Int32Array[];
  private readonly floor: readonly Int32Array[];

  constructor(lines: ParallelLines) {
    this.lines = lines;
    const rows = (): Int32Array[] => Array.from({ length: lines.m }, () => new Int32Array(lines.n + 1));
    this.rows = rows();
    this.after = rows();
    this.sum = rows();
    this.floor = rows();
    this.length = new Int32Array(lines.m);
    this.end = Int32Array.from(lines.freeAt);
  }

  /** Instant after `order` when it follows `before` on a line that reaches it at t. */
  private pass(line: number, t: number, before: number, order: number): number {
    const { n, change, run, opens, release } = this.lines;
    const cell = line * n + order;
    const opened = t > opens[cell]! ? t : opens[cell]!;
    const changed = opened + change[(line * (n + 1) + before) * n + order]!;
    return (changed > release[order]! ? changed : release[order]!) + run[cell]!;
  }

  /** Times a line anew. O(length). */
  refresh(line: number): void {
    const { n, run, change, opens, release, freeAt, waits } = this.lines;
    const row = this.rows[line]!;
    const length = this.length[line]!;
    const after = this.after[line]!;
    let t = freeAt[line]!;
    let before = n;
    for (let p = 0; p < length; p++) {
      t = this.pass(line, t, before, row[p]!);
      after[p] = t;
      before = row[p]!;
    }
    this.end[line] = t;
    if (!waits) return;
    // what follows position p, as a function of the instant reached after it: max(t + sum, floor)
    const sum = this.sum[line]!;
    const floor = this.floor[line]!;
    sum[length] = 0;
    floor[length] = 0;
    for (let p = length - 1; p >= 0; p--) {
      const order = row[p]!;
      const cell = line * n + order;
      const previous = p === 0 ? n : row[p - 1]!;
      const step = change[(line * (n + 1) + previous) * n + order]!;
      // t -> max(max(t, opens) + step, release) + run, then what follows
      const least = Math.max(opens[cell]! + step, release[order]!) + run[cell]!;
      sum[p] = step + run[cell]! + sum[p + 1]!;
      floor[p] = Math.max(least + sum[p + 1]!, floor[p + 1]!);
    }
  }

  /** End of the line if `order` were put at a position. O(1). */
  endWith(line: number, position: number, order: number): number {
    const { n, change, run, waits } = this.lines;
    const row = this.rows[line]!;
    const length = this.length[line]!;
    const before = position === 0 ? n : row[position - 1]!;
    const base = line * (n + 1) * n;
    if (!waits) {
      const added = change[base + before * n + order]! + run[line * n + order]!;
      if (position === length) return this.end[line]! + added;
      const next = row[position]!;
      return this.end[line]! + added + change[base + order * n + next]! - change[base + before * n + next]!;
    }
    const t = this.pass(
      line,
      position === 0 ? this.lines.freeAt[line]! : this.after[line]![position - 1]!,
      before,
      order,
    );
    if (position === length) return t;
    const reached = this.pass(line, t, order, row[position]!);
    return Math.max(reached + this.sum[line]![position + 1]!, this.floor[line]![position + 1]!);
  }

  insert(line: number, position: number, order: number): void {
    const row = this.rows[line]!;
    row.copyWithin(position + 1, position, this.length[line]);
    row[position] = order;
    this.length[line]!++;
    this.refresh(line);
  }

  remove(line: number, position: number): void {
    const row = this.rows[line]!;
    row.copyWithin(position, position + 1, this.length[line]);
    this.length[line]!--;
    this.refresh(line);
  }
}
