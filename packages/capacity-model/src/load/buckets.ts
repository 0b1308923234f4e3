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

/** One bucket per shift of a calendar that reaches into the window, uncut; overlapping shifts give overlapping buckets. */
export function shiftBuckets(shifts: readonly ShiftInstance[], window: TimeWindow): readonly Bucket[] {
  return shifts
    .filter(({ start, end }) => start < window.end && end > window.start)
    .map(({ date, name, start, end }) => ({ label: `${date} ${name}`, start, end }));
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
