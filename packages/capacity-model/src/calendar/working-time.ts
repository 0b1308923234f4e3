/**
 * Working time compiled for arithmetic: sorted, disjoint, half-open spells [start, end) of integer seconds since the
 * epoch, UTC, with running totals. Touching spells are merged. An empty record never opens.
 */
export interface WorkingTime {
  readonly starts: readonly number[];
  readonly ends: readonly number[];
  /** workedBefore[i] = seconds of work in spells 0 … i-1. Same length as `starts`. */
  readonly workedBefore: readonly number[];
}

/** Builds working time from sorted or unsorted, possibly overlapping [start, end) spells; empty spells vanish. O(n log n). */
export function workingTimeOf(spells: Iterable<readonly [start: number, end: number]>): WorkingTime {
  const sorted = [...spells].filter(([start, end]) => end > start).sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  const starts: number[] = [];
  const ends: number[] = [];
  const workedBefore: number[] = [];
  let worked = 0;
  for (const [start, end] of sorted) {
    const last = ends.length - 1;
    const lastEnd = ends[last];
    if (lastEnd !== undefined && start <= lastEnd) {
      if (end > lastEnd) {
        worked += end - lastEnd;
        ends[last] = end;
      }
      continue;
    }
    starts.push(start);
    ends.push(end);
    workedBefore.push(worked);
    worked += end - start;
  }
  return { starts, ends, workedBefore };
}

/** Index of the last spell that starts at or before `at`, or -1. O(log n). */
function spellAtOrBefore(time: WorkingTime, at: number): number {
  let low = 0;
  let high = time.starts.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((time.starts[middle] as number) <= at) low = middle + 1;
    else high = middle;
  }
  return low - 1;
}

/** Seconds of work in (-∞, at). O(log n). */
export function workedUntil(time: WorkingTime, at: number): number {
  const index = spellAtOrBefore(time, at);
  if (index < 0) return 0;
  const start = time.starts[index] as number;
  const end = time.ends[index] as number;
  return (time.workedBefore[index] as number) + Math.min(at, end) - start;
}

/** Seconds of work in [from, to); 0 when `to` is not after `from`. O(log n). */
export function workingBetween(time: WorkingTime, from: number, to: number): number {
  return to <= from ? 0 : workedUntil(time, to) - workedUntil(time, from);
}

/** First instant at or after `at` that lies in working time; null when it never opens again. O(log n). */
export function nextOpening(time: WorkingTime, at: number): number | null {
  const index = spellAtOrBefore(time, at);
  if (index >= 0 && at < (time.ends[index] as number)) return at;
  return time.starts[index + 1] ?? null;
}

/** True when `at` lies in working time. O(log n). */
export function isOpen(time: WorkingTime, at: number): boolean {
  return nextOpening(time, at) === at;
}

/**
 * Earliest instant by which `seconds` of work have passed since `from`; `from` itself when `seconds` is 0; null when the
 * working time runs out first. The result is an end: it may coincide with the end of a spell. O(log n).
 */
export function addWorking(time: WorkingTime, from: number, seconds: number): number | null {
  if (seconds <= 0) return from;
  const target = workedUntil(time, from) + seconds;
  let low = 0;
  let high = time.starts.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((time.workedBefore[middle] as number) < target) low = middle + 1;
    else high = middle;
  }
  const index = low - 1;
  if (index < 0) return null;
  const end = (time.starts[index] as number) + target - (time.workedBefore[index] as number);
  return end <= (time.ends[index] as number) ? end : null;
}
