import type { OneLine } from "./one-line.ts";

/** Longest of the two blocks that change places, orders. */
const LONGEST_BLOCK = 13;
/** Money below which a gain is rounding. */
const LEAST_GAIN = 1e-7;

/**
 * Local search on one line: two neighbouring blocks change places (which moves a block anywhere), and two short blocks trade
 * places over a middle. Tardiness is convex in a shift, so block money + shift × late rate bounds a block's new money from
 * below in O(1); only moves whose bound promises a gain are worked out in full.
 */
export class BlockMoves {
  readonly sequence: Int32Array;
  money = 0;
  evaluations = 0;
  private readonly line: OneLine;
  /** [position] end of the order there */
  private readonly end: Float64Array;
  /** [position] money of tardiness, and money per second of late orders, of all before it */
  private readonly moneyBefore: Float64Array;
  private readonly rateBefore: Float64Array;
  private readonly scratch: Int32Array;
  /** Changes that cost money are not in the bound, so it must not refuse then. */
  private readonly changesCost: boolean;

  constructor(line: OneLine) {
    this.line = line;
    this.sequence = new Int32Array(line.n);
    this.end = new Float64Array(line.n);
    this.moneyBefore = new Float64Array(line.n + 1);
    this.rateBefore = new Float64Array(line.n + 1);
    this.scratch = new Int32Array(line.n);
    this.changesCost = line.changeMoney.some((money) => money > 0);
  }

  /** Takes over a sequence and times it. */
  load(sequence: Int32Array): void {
    this.sequence.set(sequence);
    this.time(0);
  }

  private time(from: number): void {
    const { n, freeAt, step, due, rate, changeMoney } = this.line;
    const { sequence, end, moneyBefore, rateBefore } = this;
    let at = from === 0 ? freeAt : end[from - 1]!;
    let before = from === 0 ? n : sequence[from - 1]!;
    let money = from === 0 ? 0 : moneyBefore[from]!;
    let late = from === 0 ? 0 : rateBefore[from]!;
    moneyBefore[0] = 0;
    rateBefore[0] = 0;
    for (let p = from; p < n; p++) {
      const order = sequence[p]!;
      at += step[before * n + order]!;
      money += changeMoney[before * n + order]!;
      end[p] = at;
      const tardy = at - due[order]!;
      if (tardy > 0) {
        money += tardy * rate[order]!;
        late += rate[order]!;
      }
      moneyBefore[p + 1] = money;
      rateBefore[p + 1] = late;
      before = order;
    }
    this.money = money;
  }

  /** Moves blocks until none gains. The sequence's first position to look at is given, so that runs differ. */
  descend(first: number): void {
    const { n } = this.line;
    let quiet = 0;
    for (let i = first; quiet < n; i = i + 1 < n ? i + 1 : 0) {
      if (this.improveAt(i)) quiet = 0;
      else quiet++;
    }
  }

  /** Tries all moves whose first block begins at i; true when one was made. */
  private improveAt(i: number): boolean {
    const { n } = this.line;
    for (let j = i + 1; j < n; j++) {
      const lastEnd = j - i <= LONGEST_BLOCK ? n : Math.min(n, j + LONGEST_BLOCK);
      for (let k = j + 1; k <= lastEnd; k++) if (this.tryExchange(i, j, j, k)) return true;
    }
    for (let a = 1; a <= 3 && i + a < n; a++) {
      for (let j = i + a + 1; j < n; j++) {
        for (let b = 1; b <= 3 && j + b <= n; b++) if (this.tryExchange(i, i + a, j, j + b)) return true;
      }
    }
    return false;
  }

  /** Exchanges [i, a) and [j, k) around the middle [a, j) when that gains. */
  private tryExchange(i: number, a: number, j: number, k: number): boolean {
    this.evaluations++;
    const { n, freeAt, step } = this.line;
    const { sequence, end, rateBefore } = this;
    const before = i === 0 ? n : sequence[i - 1]!;
    const atI = i === 0 ? freeAt : end[i - 1]!;
    const firstOfB = sequence[j]!;
    const lastOfB = sequence[k - 1]!;
    const firstOfA = sequence[i]!;
    const lastOfA = sequence[a - 1]!;
    // the second block comes first: how much earlier does it end
    const shiftB = atI + step[before * n + firstOfB]! - end[j]!;
    let at = end[k - 1]! + shiftB;
    let bound = shiftB * (rateBefore[k]! - rateBefore[j]!);
    let last = lastOfB;
    if (j > a) {
      const shiftM = at + step[last * n + sequence[a]!]! - end[a]!;
      bound += shiftM * (rateBefore[j]! - rateBefore[a]!);
      at = end[j - 1]! + shiftM;
      last = sequence[j - 1]!;
    }
    const shiftA = at + step[last * n + firstOfA]! - end[i]!;
    bound += shiftA * (rateBefore[a]! - rateBefore[i]!);
    at = end[a - 1]! + shiftA;
    if (k < n) {
      const shiftS = at + step[lastOfA * n + sequence[k]!]! - end[k]!;
      bound += shiftS * (rateBefore[n]! - rateBefore[k]!);
    }
    if (bound >= -LEAST_GAIN && !this.changesCost) return false;
    return this.exchangeIfBetter(i, a, j, k);
  }

  private exchangeIfBetter(i: number, a: number, j: number, k: number): boolean {
    const { n, freeAt, step, due, rate, changeMoney } = this.line;
    const { sequence, scratch, end, moneyBefore } = this;
    let size = 0;
    for (let p = j; p < k; p++) scratch[size++] = sequence[p]!;
    for (let p = a; p < j; p++) scratch[size++] = sequence[p]!;
    for (let p = i; p < a; p++) scratch[size++] = sequence[p]!;
    let at = i === 0 ? freeAt : end[i - 1]!;
    let before = i === 0 ? n : sequence[i - 1]!;
    let money = moneyBefore[i]!;
    const limit = this.money - LEAST_GAIN;
    for (let p = 0; p < size; p++) {
      const order = scratch[p]!;
      at += step[before * n + order]!;
      money += changeMoney[before * n + order]!;
      const tardy = at - due[order]!;
      if (tardy > 0) money += tardy * rate[order]!;
      if (money >= limit) return false;
      before = order;
    }
    if (k < n) {
      const next = sequence[k]!;
      const shift = at + step[before * n + next]! - end[k]!;
      if (shift === 0) {
        money +=
          this.money -
          moneyBefore[k]! +
          changeMoney[before * n + next]! -
          changeMoney[sequence[k - 1]! * n + next]!;
        if (money >= limit) return false;
      }
      for (let p = k; shift !== 0 && p < n; p++) {
        const order = sequence[p]!;
        money += changeMoney[before * n + order]!;
        const tardy = end[p]! + shift - due[order]!;
        if (tardy > 0) money += tardy * rate[order]!;
        if (money >= limit) return false;
        before = order;
      }
    }
    for (let p = 0; p < size; p++) sequence[i + p] = scratch[p]!;
    this.time(i);
    return true;
  }
}
