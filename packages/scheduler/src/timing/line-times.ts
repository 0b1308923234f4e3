import type { Sequences } from "./sequences.ts";

/** Times of all lines, position by position. */
export interface LineTimes {
  /** [line][position] s from which the line is free after it; set-up it then holds */
  readonly free: readonly Int32Array[];
  readonly setup: readonly Int32Array[];
  /** [line][position] start of the run; NEVER when it is passed over */
  readonly start: readonly Int32Array[];
  /** [line][position] spec of the change before the run, or -1 */
  readonly change: readonly Int32Array[];
  /** [line][position] s by which the run starts later than its line and the work of its change would let it */
  readonly gap: readonly Int32Array[];
  /** [line][position] money of lateness (or of being unplanned) and of its change */
  readonly cost: readonly Float64Array[];
  /** [line][position] money per second of all late orders from there on */
  readonly lateRate: readonly Float64Array[];
}

export function createTimes({ at }: Sequences): LineTimes {
  const ints = (): Int32Array[] => at.map((row) => new Int32Array(row.length));
  const floats = (): Float64Array[] => at.map((row) => new Float64Array(row.length + 1));
  return {
    free: ints(),
    setup: ints(),
    start: ints(),
    change: ints(),
    gap: ints(),
    cost: floats(),
    lateRate: floats(),
  };
}

/** Copies a line's times from a position on. */
export function copyTimes(
  from: LineTimes,
  into: LineTimes,
  line: number,
  [first, length]: readonly [number, number],
): void {
  for (let p = first; p < length; p++) {
    into.free[line]![p] = from.free[line]![p]!;
    into.setup[line]![p] = from.setup[line]![p]!;
    into.start[line]![p] = from.start[line]![p]!;
    into.change[line]![p] = from.change[line]![p]!;
    into.gap[line]![p] = from.gap[line]![p]!;
    into.cost[line]![p] = from.cost[line]![p]!;
  }
  for (let p = 0; p <= length; p++) into.lateRate[line]![p] = from.lateRate[line]![p]!;
}
