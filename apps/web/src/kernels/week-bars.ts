/** A stretch of a week as shares of seven days: both from 0 (Monday 00:00) to 1. */
export interface WeekBar {
  readonly from: number;
  readonly to: number;
  readonly label: string;
}

/** A weekly shift by wall clock; `end` at or before `start` runs into the next day. Weekdays are ISO. */
export interface WeeklyHours {
  readonly name: string;
  readonly weekdays: readonly number[];
  readonly start: string;
  readonly end: string;
}

const minutesPerDay = 1440;
const minutesPerWeek = 7 * minutesPerDay;

/** Shifts as bars over a week; one that runs over Sunday midnight comes back on Monday. Breaks are not taken out. */
export function weekBars(shifts: readonly WeeklyHours[]): readonly WeekBar[] {
  const bars: WeekBar[] = [];
  for (const shift of shifts) {
    const start = minuteOf(shift.start);
    const length = ((minuteOf(shift.end) - start + minutesPerDay - 1) % minutesPerDay) + 1;
    for (const weekday of shift.weekdays) {
      const from = (weekday - 1) * minutesPerDay + start;
      const to = from + length;
      bars.push({ from: from / minutesPerWeek, to: Math.min(1, to / minutesPerWeek), label: shift.name });
      if (to > minutesPerWeek)
        bars.push({ from: 0, to: (to - minutesPerWeek) / minutesPerWeek, label: shift.name });
    }
  }
  return bars.sort((a, b) => a.from - b.from || a.to - b.to);
}

/** Hours of a week that at least one bar covers. */
export function weekHours(bars: readonly WeekBar[]): number {
  let covered = 0;
  let reached = 0;
  for (const bar of bars) {
    covered += Math.max(0, bar.to - Math.max(bar.from, reached));
    reached = Math.max(reached, bar.to);
  }
  return covered * 7 * 24;
}

function minuteOf(text: string): number {
  return Number(text.slice(0, 2)) * 60 + Number(text.slice(3, 5));
}
