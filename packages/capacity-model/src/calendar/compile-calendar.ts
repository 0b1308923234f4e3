import type { ExtraShift, ShiftBreak, WeeklyShift, WorkCalendar } from "../plant/work-calendar.ts";
import { SECONDS_PER_DAY, isoWeekday, localDateText, parseLocalDate, parseLocalTime } from "./civil-date.ts";
import { instantOfLocalText, instantOfWall, localDayAt } from "./time-zone.ts";
import {
  NEVER_OPEN,
  clipWorkingTime,
  spellsOf,
  subtractWorkingTime,
  uniteWorkingTimes,
} from "./working-sets.ts";
import { workingTimeOf } from "./working-time.ts";
import type { WorkingTime } from "./working-time.ts";

/** A span of instants, half-open [start, end). */
export interface TimeWindow {
  readonly start: number;
  readonly end: number;
}

/** One shift on one date: for shading a board and for shift sheets. `end` is after `start`. */
export interface ShiftInstance {
  readonly name: string;
  readonly kind: "weekly" | "extra";
  /** Local date on which it starts, "YYYY-MM-DD". */
  readonly date: string;
  readonly start: number;
  readonly end: number;
  /** Working seconds that are left of it after breaks and closures. */
  readonly workingSeconds: number;
}

/** A calendar in one window: its working time, cut to the window, and the shifts that reach into it, uncut, by start. */
export interface CompiledCalendar {
  readonly workingTime: WorkingTime;
  /** The part of the working time that is there only because of extra shifts. */
  readonly overtime: WorkingTime;
  readonly shifts: readonly ShiftInstance[];
}

export interface CalendarRequest {
  readonly calendar: WorkCalendar;
  /** IANA zone in which the calendar's clock times are read; must be known. */
  readonly timeZone: string;
  readonly window: TimeWindow;
}

interface PlacedShift {
  readonly name: string;
  readonly kind: "weekly" | "extra";
  readonly dayNumber: number;
  readonly start: number;
  readonly end: number;
  readonly spells: WorkingTime;
}

/**
 * Compiles a calendar for a window of instants. Shifts are placed by the wall clock, so a 22:00–06:00 night has 7 or 9
 * hours when the clocks change. Closures take working time away from weekly shifts; extra shifts win over closures.
 * A shift that a clock change swallows whole vanishes. An empty calendar or window gives no working time.
 */
export function compileCalendar({ calendar, timeZone, window }: CalendarRequest): CompiledCalendar {
  if (window.end <= window.start) return { workingTime: NEVER_OPEN, overtime: NEVER_OPEN, shifts: [] };
  const weekly = calendar.shifts.flatMap((shift) => placeWeekly(shift, timeZone, window));
  const extra = calendar.extraShifts.flatMap((shift) => placeExtra(shift, timeZone, window));
  const closed = closedTime(calendar, timeZone);
  const regular = subtractWorkingTime(uniteWorkingTimes(...weekly.map((shift) => shift.spells)), closed);
  const whole = uniteWorkingTimes(regular, ...extra.map((shift) => shift.spells));
  const shifts = [
    ...weekly.map((shift) => instanceOf(shift, subtractWorkingTime(shift.spells, closed))),
    ...extra.map((shift) => instanceOf(shift, shift.spells)),
  ].sort((a, b) => a.start - b.start || a.end - b.end || (a.name < b.name ? -1 : a.name > b.name ? 1 : 0));
  return {
    workingTime: clipWorkingTime(whole, window.start, window.end),
    overtime: clipWorkingTime(subtractWorkingTime(whole, regular), window.start, window.end),
    shifts,
  };
}

/** An added shift on its day, uncut: from when to when, and its working time without the breaks. Empty where the date is none. */
export function addedShiftSpan(
  shift: ShiftClock & { readonly date: string },
  timeZone: string,
): TimeWindow & { readonly workingTime: WorkingTime } {
  const dayNumber = parseLocalDate(shift.date);
  if (dayNumber === null) return { start: 0, end: 0, workingTime: NEVER_OPEN };
  const { start, end, spells } = placeShift(shift, dayNumber, timeZone);
  return { start, end, workingTime: spells };
}

function instanceOf(shift: PlacedShift, left: WorkingTime): ShiftInstance {
  return {
    name: shift.name,
    kind: shift.kind,
    date: localDateText(shift.dayNumber),
    start: shift.start,
    end: shift.end,
    workingSeconds: spellsOf(left).reduce((sum, [start, end]) => sum + end - start, 0),
  };
}

/** Closures as one working time "of being closed"; a closure that ends before it starts closes nothing. */
function closedTime(calendar: WorkCalendar, timeZone: string): WorkingTime {
  return workingTimeOf(
    calendar.closures.map((closure): [number, number] => [
      instantOfLocalText(timeZone, closure.from) ?? 0,
      instantOfLocalText(timeZone, closure.to) ?? 0,
    ]),
  );
}

function placeWeekly(shift: WeeklyShift, timeZone: string, window: TimeWindow): readonly PlacedShift[] {
  const weekdays = new Set(shift.weekdays);
  // A shift lasts at most a day and a break with it, so a start two days before the window is early enough.
  const firstDay = localDayAt(timeZone, window.start) - 2;
  const lastDay = localDayAt(timeZone, window.end);
  const placed: PlacedShift[] = [];
  for (let dayNumber = firstDay; dayNumber <= lastDay; dayNumber += 1) {
    if (!weekdays.has(isoWeekday(dayNumber))) continue;
    const instance = placeShift(shift, dayNumber, timeZone);
    if (reaches(instance, window)) placed.push({ ...instance, name: shift.name, kind: "weekly" });
  }
  return placed;
}

function placeExtra(shift: ExtraShift, timeZone: string, window: TimeWindow): readonly PlacedShift[] {
  const dayNumber = parseLocalDate(shift.date);
  if (dayNumber === null) return [];
  const instance = placeShift(shift, dayNumber, timeZone);
  return reaches(instance, window) ? [{ ...instance, name: shift.name, kind: "extra" }] : [];
}

function reaches(shift: TimeWindow, window: TimeWindow): boolean {
  return shift.start < shift.end && shift.start < window.end && shift.end > window.start;
}

interface ShiftClock {
  readonly start: string;
  readonly end: string;
  readonly breaks: readonly ShiftBreak[];
}

function placeShift(
  shift: ShiftClock,
  dayNumber: number,
  timeZone: string,
): Omit<PlacedShift, "kind" | "name"> {
  const startClock = parseLocalTime(shift.start) ?? 0;
  const endClock = parseLocalTime(shift.end) ?? 0;
  const wallStart = dayNumber * SECONDS_PER_DAY + startClock;
  const wallEnd = dayNumber * SECONDS_PER_DAY + endClock + (endClock <= startClock ? SECONDS_PER_DAY : 0);
  const start = instantOfWall(timeZone, wallStart);
  const end = instantOfWall(timeZone, wallEnd);
  const pauses = shift.breaks.map((pause): [number, number] => {
    const from = dayNumber * SECONDS_PER_DAY + clockAtOrAfter(startClock, pause.start);
    const length =
      (clockAtOrAfter(0, pause.end) - clockAtOrAfter(0, pause.start) + SECONDS_PER_DAY) % SECONDS_PER_DAY;
    return [instantOfWall(timeZone, from), instantOfWall(timeZone, from + length)];
  });
  const spells = subtractWorkingTime(workingTimeOf([[start, end]]), workingTimeOf(pauses));
  return { dayNumber, start, end, spells };
}

/** Seconds since the shift's midnight at which a clock time comes round, at or after the shift's start. */
function clockAtOrAfter(startClock: number, text: string): number {
  const clock = parseLocalTime(text) ?? 0;
  return clock < startClock ? clock + SECONDS_PER_DAY : clock;
}
