import type { ZoneClock } from "./zone-clock.ts";

/** Start of a local day; `longShort` tells days of 23 or 25 hours. */
export interface DayMark {
  readonly at: number;
  readonly year: number;
  readonly month: number;
  readonly day: number;
  readonly weekday: number;
  readonly lengthSeconds: number;
}

/** A named instant within a day, such as the start of a shift. */
export interface TimeMark {
  readonly at: number;
  readonly label: string;
}

/** A weekly shift as the axis needs it. Weekdays are ISO, `start` is "HH:MM". */
export interface ShiftPattern {
  readonly name: string;
  readonly weekdays: readonly number[];
  readonly start: string;
}

const secondsPerDay = 86_400;
const secondsPerHalfHour = 1800;

/** Every local day that touches [startAt, endAt), in order; at most 800. */
export function dayMarks(clock: ZoneClock, startAt: number, endAt: number): readonly DayMark[] {
  const marks: DayMark[] = [];
  const first = clock.wallTimeAt(startAt);
  for (let step = 0; step < 800; step += 1) {
    const date = new Date(Date.UTC(first.year, first.month - 1, first.day + step));
    const [year, month, day] = [date.getUTCFullYear(), date.getUTCMonth() + 1, date.getUTCDate()];
    const at = clock.instantOf(year, month, day, 0);
    if (at >= endAt) break;
    const next = new Date(Date.UTC(year, month - 1, day + 1));
    const nextAt = clock.instantOf(next.getUTCFullYear(), next.getUTCMonth() + 1, next.getUTCDate(), 0);
    marks.push({
      at,
      year,
      month,
      day,
      weekday: ((date.getUTCDay() + 6) % 7) + 1,
      lengthSeconds: nextAt - at,
    });
  }
  return marks;
}

/** Starts of the given shifts on the given days, in order of time. */
export function shiftMarks(
  clock: ZoneClock,
  days: readonly DayMark[],
  shifts: readonly ShiftPattern[],
): readonly TimeMark[] {
  const marks: TimeMark[] = [];
  for (const day of days) {
    for (const shift of shifts) {
      if (!shift.weekdays.includes(day.weekday)) continue;
      marks.push({
        at: clock.instantOf(day.year, day.month, day.day, minuteOfDay(shift.start)),
        label: shift.name,
      });
    }
  }
  return marks.sort((a, b) => a.at - b.at || (a.label < b.label ? -1 : a.label > b.label ? 1 : 0));
}

/**
 * Every `stepHours`-th full hour that the clock shows on the given days (midnight left out), labelled "HH:MM": where the
 * clock goes forward the skipped hour has no mark, where it goes back the repeated one has two.
 */
export function hourMarks(
  clock: ZoneClock,
  days: readonly DayMark[],
  stepHours: number,
): readonly TimeMark[] {
  return days.flatMap((day) =>
    day.lengthSeconds === secondsPerDay ? plainHours(day, stepHours) : hoursShown(clock, day, stepHours),
  );
}

function plainHours(day: DayMark, stepHours: number): readonly TimeMark[] {
  const marks: TimeMark[] = [];
  for (let hour = stepHours; hour < 24; hour += stepHours)
    marks.push({ at: day.at + hour * 3600, label: hourLabel(hour) });
  return marks;
}

/** Asks the clock itself, every half hour: some zones change by so much. */
function hoursShown(clock: ZoneClock, day: DayMark, stepHours: number): readonly TimeMark[] {
  const marks: TimeMark[] = [];
  for (let at = day.at + secondsPerHalfHour; at < day.at + day.lengthSeconds; at += secondsPerHalfHour) {
    const { hour, minute } = clock.wallTimeAt(at);
    if (minute === 0 && hour > 0 && hour % stepHours === 0) marks.push({ at, label: hourLabel(hour) });
  }
  return marks;
}

function hourLabel(hour: number): string {
  return `${String(hour).padStart(2, "0")}:00`;
}

/** Both lists in order of time; marks of one instant become one, "06:00 early". */
export function mergeMarks(hours: readonly TimeMark[], shifts: readonly TimeMark[]): readonly TimeMark[] {
  const labels = new Map(hours.map((mark) => [mark.at, mark.label]));
  for (const shift of shifts) {
    const hour = labels.get(shift.at);
    labels.set(shift.at, hour === undefined ? shift.label : `${hour} ${shift.label}`);
  }
  return [...labels].map(([at, label]) => ({ at, label })).sort((a, b) => a.at - b.at);
}

/** The part of marks sorted by `at` that lies in [from, to), one before included so that its label can reach in. */
export function marksBetween<Mark extends { readonly at: number }>(
  marks: readonly Mark[],
  from: number,
  to: number,
): readonly Mark[] {
  const first = Math.max(0, firstAtOrAfter(marks, from) - 1);
  return marks.slice(first, firstAtOrAfter(marks, to));
}

/** ISO 8601 week number of a local date. */
export function isoWeek(year: number, month: number, day: number): number {
  const date = new Date(Date.UTC(year, month - 1, day));
  const weekday = ((date.getUTCDay() + 6) % 7) + 1;
  const thursday = new Date(Date.UTC(year, month - 1, day + 4 - weekday));
  const firstDay = Date.UTC(thursday.getUTCFullYear(), 0, 1);
  return Math.floor((thursday.getTime() - firstDay) / (7 * 86_400_000)) + 1;
}

function minuteOfDay(text: string): number {
  return Number(text.slice(0, 2)) * 60 + Number(text.slice(3, 5));
}

function firstAtOrAfter(marks: readonly { readonly at: number }[], instant: number): number {
  let low = 0;
  let high = marks.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((marks[middle]?.at ?? Infinity) < instant) low = middle + 1;
    else high = middle;
  }
  return low;
}
