import type { OneLine } from "./one-line.ts";

/** Longest of the two blocks that change places, orders. */
const LONGEST_BLOCK = 13;
/** Longest blocks that trade places over a middle, orders. */
const LONGEST_TRADE = 3;
/** Money below which a gain is rounding. */
const LEAST_GAIN = 1e-7;

/**
 * Local search on one line: two neighbouring blocks change places (which moves a block anywhere), and two short blocks trade
 * places over a middle. All orders of a block shift by the same time, and tardiness is convex in a shift: block money + shift
 * × late rate bounds its new money from below in O(1), and only orders that cross their due date add to that bound. So most
 * moves are refused by the bound, and the others as soon as the crossings have eaten the promised gain.
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
  private readonly scratch: Int32Array;

  constructor(line: OneLine) {
    this.line = line;
    this.sequence = new Int32Array(line.n);
    this.end = new Float64Array(line.n);
    this.lateness = new Float64Array(line.n);
    this.rate = new Float64Array(line.n);
    this.rateBefore = new Float64Array(line.n + 1);
    this.scratch = new Int32Array(line.n);
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

  /** Tries all moves whose first block begins at i; true when one was made. */
  private improveAt(i: number): boolean {
    const { n } = this.line;
    for (let j = i + 1; j < n; j++) if (this.tryNeighbours(i, j)) return true;
    for (let a = i + 1; a <= i + LONGEST_TRADE && a < n; a++) if (this.tryTrades(i, a)) return true;
    return false;
  }

  /** Blocks [i, j) and [j, k) change places, for every k that keeps one of them short. */
  private tryNeighbours(i: number, j: number): boolean {
    const { n, freeAt, step, changeMoney, changesCost } = this.line;
    const { sequence, end, rateBefore } = this;
    const lastEnd = j - i <= LONGEST_BLOCK ? n : Math.min(n, j + LONGEST_BLOCK);
    const before = (i === 0 ? n : sequence[i - 1]!) * n;
    const firstOfA = sequence[i]!;
    const firstOfB = sequence[j]!;
    const afterA = sequence[j - 1]! * n;
    const shiftB = (i === 0 ? freeAt : end[i - 1]!) + step[before + firstOfB]! - end[j]!;
    const fromA = end[i]!;
    const sizeA = end[j - 1]! - fromA;
    const rateJ = rateBefore[j]!;
    const rateA = rateJ - rateBefore[i]!;
    const rateAll = rateBefore[n]!;
    const joinMoney = changesCost
      ? changeMoney[before + firstOfB]! - changeMoney[before + firstOfA]! - changeMoney[afterA + firstOfB]!
      : 0;
    this.evaluations += lastEnd - j;
    for (let k = j + 1; k <= lastEnd; k++) {
      const afterB = sequence[k - 1]! * n;
      const shiftA = end[k - 1]! + shiftB + step[afterB + firstOfA]! - fromA;
      let bound = shiftB * (rateBefore[k]! - rateJ) + shiftA * rateA;
      let shiftS = 0;
      if (k < n) {
        shiftS = fromA + shiftA + sizeA + step[afterA + sequence[k]!]! - end[k]!;
        bound += shiftS * (rateAll - rateBefore[k]!);
      }
      if (changesCost) {
        bound += joinMoney + changeMoney[afterB + firstOfA]!;
        if (k < n) bound += changeMoney[afterA + sequence[k]!]! - changeMoney[afterB + sequence[k]!]!;
      }
      if (bound >= -LEAST_GAIN) continue;
      let gain = this.lessCrossings(i, j, shiftA, -bound);
      if (gain > LEAST_GAIN) gain = this.lessCrossings(j, k, shiftB, gain);
      if (gain > LEAST_GAIN) gain = this.lessCrossings(k, n, shiftS, gain);
      if (gain <= LEAST_GAIN) continue;
      this.exchange(i, j, j, k);
      return true;
    }
    return false;
  }

  /** Blocks [i, a) and [j, k) of a few orders trade places over the middle [a, j). */
  private tryTrades(i: number, a: number): boolean {
    const { n, freeAt, step, changeMoney, changesCost } = this.line;
    const { sequence, end, rateBefore } = this;
    const before = (i === 0 ? n : sequence[i - 1]!) * n;
    const atI = i === 0 ? freeAt : end[i - 1]!;
    const firstOfA = sequence[i]!;
    const firstOfM = sequence[a]!;
    const afterA = sequence[a - 1]! * n;
    const sizeA = end[a - 1]! - end[i]!;
    const rateA = rateBefore[a]! - rateBefore[i]!;
    const rateAll = rateBefore[n]!;
    for (let j = a + 1; j < n; j++) {
      const firstOfB = sequence[j]!;
      const afterM = sequence[j - 1]! * n;
      const shiftB = atI + step[before + firstOfB]! - end[j]!;
      const rateM = rateBefore[j]! - rateBefore[a]!;
      const sizeM = end[j - 1]! - end[a]!;
      const toA = step[afterM + firstOfA]!;
      const joinMoney = changesCost
        ? changeMoney[before + firstOfB]! -
          changeMoney[before + firstOfA]! +
          changeMoney[afterM + firstOfA]! -
          changeMoney[afterM + firstOfB]! -
          changeMoney[afterA + firstOfM]!
        : 0;
      const last = Math.min(n, j + LONGEST_TRADE);
      this.evaluations += last - j;
      for (let k = j + 1; k <= last; k++) {
        const afterB = sequence[k - 1]! * n;
        const shiftM = end[k - 1]! + shiftB + step[afterB + firstOfM]! - end[a]!;
        const shiftA = end[a]! + shiftM + sizeM + toA - end[i]!;
        let bound = shiftB * (rateBefore[k]! - rateBefore[j]!) + shiftM * rateM + shiftA * rateA;
        let shiftS = 0;
        if (k < n) {
          shiftS = end[i]! + shiftA + sizeA + step[afterA + sequence[k]!]! - end[k]!;
          bound += shiftS * (rateAll - rateBefore[k]!);
        }
        if (changesCost) {
          bound += joinMoney + changeMoney[afterB + firstOfM]!;
          if (k < n) bound += changeMoney[afterA + sequence[k]!]! - changeMoney[afterB + sequence[k]!]!;
        }
        if (bound >= -LEAST_GAIN) continue;
        let gain = this.lessCrossings(i, a, shiftA, -bound);
        if (gain > LEAST_GAIN) gain = this.lessCrossings(a, j, shiftM, gain);
        if (gain > LEAST_GAIN) gain = this.lessCrossings(j, k, shiftB, gain);
        if (gain > LEAST_GAIN) gain = this.lessCrossings(k, n, shiftS, gain);
        if (gain <= LEAST_GAIN) continue;
        this.exchange(i, a, j, k);
        return true;
      }
    }
    return false;
  }

  /** What is left of a promised gain when the orders in [from, to) shift; some value <= 0 once it is used up. */
  private lessCrossings(from: number, to: number, shift: number, gain: number): number {
    if (shift === 0) return gain;
    const { lateness, rate } = this;
    let left = gain;
    if (shift > 0) {
      // orders in time that become late
      for (let p = from; p < to; p++) {
        const late = lateness[p]!;
        if (late <= 0 && late + shift > 0) {
          left -= (late + shift) * rate[p]!;
          if (left <= 0) return left;
        }
      }
      return left;
    }
    for (let p = from; p < to; p++) {
      const late = lateness[p]!;
      if (late > 0 && late + shift < 0) {
        left += (late + shift) * rate[p]!;
        if (left <= 0) return left;
      }
    }
    return left;
  }

  private exchange(i: number, a: number, j: number, k: number): void {
    const { sequence, scratch } = this;
    let size = 0;
    for (let p = j; p < k; p++) scratch[size++] = sequence[p]!;
    for (let p = a; p < j; p++) scratch[size++] = sequence[p]!;
    for (let p = i; p < a; p++) scratch[size++] = sequence[p]!;
    for (let p = 0; p < size; p++) sequence[i + p] = scratch[p]!;
    this.time();
  }
}
