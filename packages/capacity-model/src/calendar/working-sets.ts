import { workingTimeOf } from "./working-time.ts";
import type { WorkingTime } from "./working-time.ts";

/** Working time that never opens. */
export const NEVER_OPEN: WorkingTime = { starts: [], ends: [], workedBefore: [] };

/** The spells [start, end) of a working time, in order. */
export function spellsOf(time: WorkingTime): readonly (readonly [start: number, end: number])[] {
  return time.starts.map((start, index) => [start, time.ends[index] as number] as const);
}

/** Seconds of work in all. */
export function totalWorking(time: WorkingTime): number {
  const last = time.starts.length - 1;
  return last < 0
    ? 0
    : (time.workedBefore[last] as number) + (time.ends[last] as number) - (time.starts[last] as number);
}

/** Open where any of them is; never where none is given. */
export function uniteWorkingTimes(...times: readonly WorkingTime[]): WorkingTime {
  return workingTimeOf(times.flatMap(spellsOf));
}

/** Open where both are. O(n + m). */
export function intersectWorkingTimes(one: WorkingTime, other: WorkingTime): WorkingTime {
  const spells: [number, number][] = [];
  let i = 0;
  let j = 0;
  while (i < one.starts.length && j < other.starts.length) {
    const oneEnd = one.ends[i] as number;
    const otherEnd = other.ends[j] as number;
    const start = Math.max(one.starts[i] as number, other.starts[j] as number);
    const end = Math.min(oneEnd, otherEnd);
    if (start < end) spells.push([start, end]);
    if (oneEnd <= otherEnd) i += 1;
    else j += 1;
  }
  return workingTimeOf(spells);
}

/** Open where `from` is and `taken` is not. O(n + m). */
export function subtractWorkingTime(from: WorkingTime, taken: WorkingTime): WorkingTime {
  if (taken.starts.length === 0) return from;
  const spells: [number, number][] = [];
  let j = 0;
  for (const [start, end] of spellsOf(from)) {
    let at = start;
    while (j < taken.starts.length && (taken.ends[j] as number) <= at) j += 1;
    for (let k = j; k < taken.starts.length && (taken.starts[k] as number) < end; k += 1) {
      spells.push([at, taken.starts[k] as number]);
      at = Math.max(at, taken.ends[k] as number);
    }
    if (at < end) spells.push([at, end]);
  }
  return workingTimeOf(spells);
}

/** The part of a working time that lies in [start, end). */
export function clipWorkingTime(time: WorkingTime, start: number, end: number): WorkingTime {
  return intersectWorkingTimes(time, workingTimeOf([[start, end]]));
}
