import { workedBefore, type Calendar } from "../problem/calendar.ts";

/**
 * Working time of one line cut at knots: equal steps of wall-clock time and the ends of its open spells. Between two
 * knots the line is open; at a knot it may be closed for a while. Cell 2k is the closed time at knot k, cell 2k + 1
 * the open time from it to the next knot. Instants in s after the horizon's start.
 */
export interface LineKnots {
  readonly count: number;
  /** [knot] s of working time before it */
  readonly work: Float64Array;
  /** [knot] first and last instant with that much work done */
  readonly from: Float64Array;
  readonly to: Float64Array;
  readonly calendar: Calendar;
}

/** Knots at every `step` seconds before `until` and at the end of each spell that begins before it. */
export function lineKnots(calendar: Calendar, step: number, until: number): LineKnots {
  const knots: [work: number, from: number, to: number][] = [];
  let from = 0;
  // a run begun after the last knot begins in the spell that follows, not in the closed time before it
  let next: number | null = null;
  for (let spell = 0; spell < calendar.starts.length; spell++) {
    const start = calendar.starts[spell]!;
    const end = calendar.ends[spell]!;
    if (start >= until && spell > 0) {
      next = start;
      break;
    }
    const work = calendar.before[spell]!;
    knots.push([work, from, start]);
    for (let at = (Math.floor(start / step) + 1) * step; at < Math.min(end, until); at += step) {
      knots.push([work + at - start, at, at]);
    }
    from = end;
  }
  knots.push([from === 0 ? 0 : workedBefore(calendar, from), from, next ?? from]);
  return {
    count: knots.length,
    work: Float64Array.from(knots, ([work]) => work),
    from: Float64Array.from(knots, ([, first]) => first),
    to: Float64Array.from(knots, ([, , last]) => last),
    calendar,
  };
}

/** Last knot with at most `work` done before it. */
export function knotAt({ work: at, count }: LineKnots, work: number): number {
  let low = 0;
  let high = count - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (at[middle]! <= work) low = middle;
    else high = middle - 1;
  }
  return low;
}
