import { isoWeekDateOf, isoWeekText, isoWeekday, localDateText } from "../calendar/civil-date.ts";
import type { ShiftInstance, TimeWindow } from "../calendar/compile-calendar.ts";
import { localDayAt, startOfLocalDay } from "../calendar/time-zone.ts";

/** A stretch of time over which load is added up, half-open [start, end), with a label for people. */
export interface Bucket {
  readonly label: string;
  readonly start: number;
  readonly end: number;
}

/** The local days that the window touches, whole: 23, 24 or 25 hours long. An empty window has none. */
export function dayBuckets(timeZone: string, window: TimeWindow): readonly Bucket[] {
  if (window.end <= window.start) return [];
  const first = localDayAt(timeZone, window.start);
  const last = localDayAt(timeZone, window.end - 1);
  return bucketsFrom(timeZone, first, last, 1);
}

/**
 * The local weeks that the window touches, whole, from the plant's first weekday (ISO, 1 Monday … 7 Sunday). The label is the
 * ISO week of the week's fourth day, which is the ISO week itself where weeks start on Monday.
 */
export function weekBuckets(timeZone: string, window: TimeWindow, firstWeekday: number): readonly Bucket[] {
  if (window.end <= window.start) return [];
  const day = localDayAt(timeZone, window.start);
  const first = day - ((isoWeekday(day) - firstWeekday + 7) % 7);
  const last = localDayAt(timeZone, window.end - 1);
  return bucketsFrom(timeZone, first, last, 7);
}

/**
 * One bucket per shift of a calendar that reaches into the window, and one without a name ("2026-06-08") for each gap between
 * them, so that no time is lost. Where shifts overlap, the later one begins a new bucket. Buckets are cut to the window.
 */
export function shiftBuckets(
  timeZone: string,
  shifts: readonly ShiftInstance[],
  window: TimeWindow,
): readonly Bucket[] {
  const buckets: Bucket[] = [];
  const gap = (start: number, end: number): void => {
    if (start < end) buckets.push({ label: localDateText(localDayAt(timeZone, start)), start, end });
  };
  const inWindow = shifts
    .filter(({ start, end }) => start < window.end && end > window.start)
    .sort((a, b) => a.start - b.start || a.end - b.end);
  let reached = window.start;
  inWindow.forEach(({ date, name, start, end }, index) => {
    const from = Math.max(start, reached);
    const to = Math.min(end, inWindow[index + 1]?.start ?? end, window.end);
    if (from >= to) return;
    gap(reached, from);
    buckets.push({ label: `${date} ${name}`, start: from, end: to });
    reached = to;
  });
  gap(reached, window.end);
  return buckets;
}

function bucketsFrom(timeZone: string, first: number, last: number, days: 1 | 7): readonly Bucket[] {
  const buckets: Bucket[] = [];
  for (let day = first; day <= last; day += days) {
    const start = startOfLocalDay(timeZone, day);
    const end = startOfLocalDay(timeZone, day + days);
    const label = days === 1 ? localDateText(day) : isoWeekText(isoWeekDateOf(day + 3));
    // A day that the zone skipped (it moved across the date line) has no length.
    if (start < end) buckets.push({ label, start, end });
  }
  return buckets;
}
