import { NearPlaces } from "./near-places.ts";
import { changesMatter, type OneLine } from "./one-line.ts";

/** Longest of the two blocks that change places, orders. */
const LONGEST_BLOCK = 10;
/** Money below which a gain is rounding. */
const LEAST_GAIN = 1e-7;

/** An order's lateness passes its due date, one way or the other. */
function crossesDue(late: number, moved: number): boolean {
  return late > 0 ? moved < 0 : moved > 0;
}

/**
 * Local search on one line: two neighbouring blocks change places (which moves a block anywhere), and two single orders
 * trade places over a middle. All orders of a block shift by the same time, and tardiness is convex in a shift: block money + shift
 * × late rate bounds its new money from below in O(1), and only orders that cross their due date add to that bound. So most
 * moves are refused by the bound, and the others as soon as the crossings have eaten the promised gain. Times are whole
 * seconds, so sums of them are exact in any order. The loops over moves call nothing that is not inlined: it is measurably
 * faster so.
 */
export class BlockMoves {
  readonly sequence: Int32Array;
  money = 0;
  evaluations = 0;
  private readonly line: OneLine;
  /** [position] end of the order there, its lateness (negative: slack), its money per second late */
  private readonly end: Float64Array;
  private readonly lateness: Float64Array;
  private readonly rate: Float64Array;
  /** [position] money per second of late orders before it */
  private readonly rateBefore: Float64Array;
  /** [position after the i of `improveAt`] s by which the order at i ends later when it follows the order there */
  private readonly delayAfter: Float64Array;
  private readonly scratch: Int32Array;
  private readonly near: NearPlaces;

  constructor(line: OneLine) {
    this.line = line;
    this.sequence = new Int32Array(line.n);
    this.end = new Float64Array(line.n);
    this.lateness = new Float64Array(line.n);
    this.rate = new Float64Array(line.n);
    this.rateBefore = new Float64Array(line.n + 1);
    this.delayAfter = new Float64Array(line.n);
    this.scratch = new Int32Array(line.n);
    this.near = new NearPlaces(line.n, !changesMatter(line));
  }

  /** Takes over a sequence and times it. */
  load(sequence: Int32Array): void {
    this.sequence.set(sequence);
    this.time();
  }

  private time(): void {
    const { n, freeAt, step, due, rate, changeMoney } = this.line;
    const { sequence, end, lateness, rateBefore } = this;
    let at = freeAt;
    let before = n;
    let money = 0;
    let late = 0;
    for (let p = 0; p < n; p++) {
      const order = sequence[p]!;
      at += step[before * n + order]!;
      money += changeMoney[before * n + order]!;
      end[p] = at;
      const tardy = at - due[order]!;
      lateness[p] = tardy;
      this.rate[p] = rate[order]!;
      if (tardy > 0) {
        money += tardy * rate[order]!;
        late += rate[order]!;
      }
      rateBefore[p + 1] = late;
      before = order;
    }
    this.money = money;
  }

  /** Moves blocks until none gains. The first position to look at is given, so that runs differ. */
  descend(first: number): void {
    const { n } = this.line;
    let quiet = 0;
    for (let i = first; quiet < n; i = i + 1 < n ? i + 1 : 0) {
      if (this.improveAt(i)) quiet = 0;
      else quiet++;
    }
  }

  /**
   * Moves blocks that begin in or near [from, to) or near a move made since. Much quicker than `descend` after a small change of
   * a sequence that was at rest, at the price that a gain far away may be left.
   */
  descendNear(from: number, to: number): void {
    const { n } = this.line;
    const { awake } = this.near;
    this.near.begin(from, to);
    let quiet = 0;
    for (let i = from; quiet < n; i = i + 1 < n ? i + 1 : 0) {
      if (awake[i] === 1 && this.improveAt(i)) {
        quiet = 0;
      } else {
        awake[i] = 0;
        quiet++;
      }
    }
  }

  /** Tries all moves whose first block begins at i; true when one was made. */
  private improveAt(i: number): boolean {
    const { n, changesCost } = this.line;
    // with nothing late from here on and free changes there is nothing to gain
    if (!changesCost && this.rateBefore[n] === this.rateBefore[i]) return false;
    this.findDelays(i);
    for (let j = i + 1; j < n; j++) if (this.tryNeighbours(i, j)) return true;
    return this.tryTrades(i);
  }

  private findDelays(i: number): void {
    const { n, step } = this.line;
    const { sequence, end, delayAfter } = this;
    const a = sequence[i]!;
    for (let p = i + 1; p < n; p++) delayAfter[p] = end[p]! - end[i]! + step[sequence[p]! * n + a]!;
  }

  /** Blocks [i, j) and [j, k) change places, for every k that keeps one of them short. */
  private tryNeighbours(i: number, j: number): boolean {
    const { n, freeAt, step, changeMoney, changesCost } = this.line;
    const { sequence, end, delayAfter, lateness, rate, rateBefore } = this;
    const lastEnd = j - i <= LONGEST_BLOCK ? n : Math.min(n, j + LONGEST_BLOCK);
    const before = (i === 0 ? n : sequence[i - 1]!) * n;
    const firstOfA = sequence[i]!;
    const firstOfB = sequence[j]!;
    const afterA = sequence[j - 1]! * n;
    const shiftB = (i === 0 ? freeAt : end[i - 1]!) + step[before + firstOfB]! - end[j]!;
    const endOfA = end[j - 1]!;
    const rateJ = rateBefore[j]!;
    const rateA = rateJ - rateBefore[i]!;
    const rateAll = rateBefore[n]!;
    const joinMoney = changesCost
      ? changeMoney[before + firstOfB]! - changeMoney[before + firstOfA]! - changeMoney[afterA + firstOfB]!
      : 0;
    this.evaluations += lastEnd - j;
    for (let k = j + 1; k <= lastEnd; k++) {
      const shiftA = delayAfter[k - 1]! + shiftB;
      const rateK = rateBefore[k]!;
      let bound = shiftB * (rateK - rateJ) + shiftA * rateA;
      let shiftS = 0;
      if (k < n) {
        shiftS = endOfA + shiftA + step[afterA + sequence[k]!]! - end[k]!;
        bound += shiftS * (rateAll - rateK);
      }
      if (changesCost) {
        const afterB = sequence[k - 1]! * n;
        bound += joinMoney + changeMoney[afterB + firstOfA]!;
        if (k < n) bound += changeMoney[afterA + sequence[k]!]! - changeMoney[afterB + sequence[k]!]!;
      }
      if (bound >= -LEAST_GAIN) continue;
      let gain = -bound;
      for (let p = i; p < n; p++) {
        const late = lateness[p]!;
        const moved = late + (p < j ? shiftA : p < k ? shiftB : shiftS);
        if (!crossesDue(late, moved)) continue;
        gain -= Math.abs(moved) * rate[p]!;
        if (gain <= LEAST_GAIN) break;
      }
      if (gain <= LEAST_GAIN) continue;
      this.exchange(i, j, j, k);
      return true;
    }
    return false;
  }

  /** The orders at i and j trade places over the middle between them, for every j. */
  private tryTrades(i: number): boolean {
    const { n, freeAt, step, changeMoney, changesCost } = this.line;
    const { sequence, end, delayAfter, rate, lateness, rateBefore } = this;
    const m = i + 1;
    const before = (i === 0 ? n : sequence[i - 1]!) * n;
    const atI = i === 0 ? freeAt : end[i - 1]!;
    const a = sequence[i]!;
    const rateA = lateness[i]! > 0 ? rate[i]! : 0;
    const rateAll = rateBefore[n]!;
    this.evaluations += Math.max(0, n - m - 1);
    for (let j = m + 1; j < n; j++) {
      const b = sequence[j]!;
      const k = j + 1;
      const firstOfM = sequence[m]!;
      const lastOfM = sequence[j - 1]! * n;
      const shiftB = atI + step[before + b]! - end[j]!;
      const shiftM = end[j]! + shiftB + step[b * n + firstOfM]! - end[m]!;
      const shiftA = delayAfter[j - 1]! + shiftM;
      let bound =
        shiftB * (rateBefore[k]! - rateBefore[j]!) +
        shiftM * (rateBefore[j]! - rateBefore[m]!) +
        shiftA * rateA;
      let shiftS = 0;
      if (k < n) {
        shiftS = end[i]! + shiftA + step[a * n + sequence[k]!]! - end[k]!;
        bound += shiftS * (rateAll - rateBefore[k]!);
      }
      if (changesCost) {
        bound +=
          changeMoney[before + b]! +
          changeMoney[b * n + firstOfM]! +
          changeMoney[lastOfM + a]! -
          changeMoney[before + a]! -
          changeMoney[a * n + firstOfM]! -
          changeMoney[lastOfM + b]!;
        if (k < n) bound += changeMoney[a * n + sequence[k]!]! - changeMoney[b * n + sequence[k]!]!;
      }
      if (bound >= -LEAST_GAIN) continue;
      let gain = -bound;
      for (let p = i; p < n; p++) {
        const late = lateness[p]!;
        const moved = late + (p < m ? shiftA : p < j ? shiftM : p < k ? shiftB : shiftS);
        if (!crossesDue(late, moved)) continue;
        gain -= Math.abs(moved) * rate[p]!;
        if (gain <= LEAST_GAIN) break;
      }
      if (gain <= LEAST_GAIN) continue;
      this.exchange(i, m, j, k);
      return true;
    }
    return false;
  }

  private exchange(i: number, a: number, j: number, k: number): void {
    const { sequence, scratch } = this;
    this.near.wakeMoved(i, a, j, k);
    let size = 0;
    for (let p = j; p < k; p++) scratch[size++] = sequence[p]!;
    for (let p = a; p < j; p++) scratch[size++] = sequence[p]!;
    for (let p = i; p < a; p++) scratch[size++] = sequence[p]!;
    for (let p = 0; p < size; p++) sequence[i + p] = scratch[p]!;
    this.time();
  }
}
