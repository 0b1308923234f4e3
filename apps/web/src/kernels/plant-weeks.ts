import type { BoardPlan } from "./board-plan.ts";
import { isoWeek } from "./time-marks.ts";
import type { ZoneClock } from "./zone-clock.ts";

/** A calendar week of the plant's zone, Monday 00:00 to Monday 00:00: 167 or 169 hours where the clock changes. */
export interface PlantWeek {
  /** ISO 8601 name, "2026-W49". */
  readonly key: string;
  /** ISO 8601 week-numbering year. */
  readonly year: number;
  readonly number: number;
  /** Seconds since the epoch, half-open. */
  readonly startAt: number;
  readonly endAt: number;
}

/** Every week from the plan's first work to its last, in order; none when nothing runs. */
export function plantWeeks(clock: ZoneClock, plan: BoardPlan): readonly PlantWeek[] {
  let first = Infinity;
  let last = -Infinity;
  for (const { start, end } of plan.segments) {
    first = Math.min(first, start);
    last = Math.max(last, end);
  }
  const weeks: PlantWeek[] = [];
  if (first >= last) return weeks;
  for (let week = weekAt(clock, first); ; week = weekAt(clock, week.endAt)) {
    if (week.startAt >= last) return weeks;
    weeks.push(week);
  }
}

/** The calendar week that holds an instant. */
export function weekAt(clock: ZoneClock, instant: number): PlantWeek {
  const { year, month, day, weekday } = clock.wallTimeAt(instant);
  return weekFrom(clock, new Date(Date.UTC(year, month - 1, day - weekday + 1)));
}

function weekFrom(clock: ZoneClock, monday: Date): PlantWeek {
  const thursday = dayAfter(monday, 3);
  const number = isoWeek(monday.getUTCFullYear(), monday.getUTCMonth() + 1, monday.getUTCDate());
  const year = thursday.getUTCFullYear();
  return {
    key: `${year}-W${String(number).padStart(2, "0")}`,
    year,
    number,
    startAt: midnightOf(clock, monday),
    endAt: midnightOf(clock, dayAfter(monday, 7)),
  };
}

function dayAfter(date: Date, days: number): Date {
  return new Date(Date.UTC(date.getUTCFullYear(), date.getUTCMonth(), date.getUTCDate() + days));
}

function midnightOf(clock: ZoneClock, date: Date): number {
  return clock.instantOf(date.getUTCFullYear(), date.getUTCMonth() + 1, date.getUTCDate(), 0);
}

/** An instant of the week's Sunday. */
export function lastDayOf(week: PlantWeek): number {
  return week.endAt - 1;
}
