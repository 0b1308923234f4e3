import type { Cell } from "../ports/table.ts";
import { plainText, read, unreadable, usable } from "./cell-text.ts";
import { faultWords } from "./import-words.ts";
import type { Reading } from "./cell-text.ts";

/** Wall-clock date with an optional time of day; `time` null: the day alone was given. */
export interface WallClock {
  /** YYYY-MM-DD */
  readonly date: string;
  /** HH:MM */
  readonly time: string | null;
}

/** First and last serial day that is taken for a date (1954 to 2119), 1900 system of spreadsheets. */
const SERIALS: readonly [number, number] = [20_000, 80_000];

/**
 * A date with or without time: ISO, day.month.year, slashes where only one reading is possible, date cells, and bare
 * spreadsheet serial numbers (with a warning).
 */
export function readWallClock(cell: Cell): Reading<WallClock> {
  const content = usable(cell);
  if (!content.ok) return content;
  const value = content.value;
  if (typeof value === "number") return ofSerial(value);
  if (typeof value === "boolean") return unreadable("no-date");
  return ofText(plainText(value));
}

/** A wall-clock date and time "YYYY-MM-DDTHH:MM"; a day alone means its first minute. */
export function readLocalDateTime(cell: Cell): Reading<string> {
  const clock = readWallClock(cell);
  return clock.ok ? { ...clock, value: `${clock.value.date}T${clock.value.time ?? "00:00"}` } : clock;
}

/** A date "YYYY-MM-DD"; a time of day is refused unless it is midnight. */
export function readLocalDate(cell: Cell): Reading<string> {
  const clock = readWallClock(cell);
  if (!clock.ok) return clock;
  if (clock.value.time !== null && clock.value.time !== "00:00") return unreadable("time-for-day");
  return { ...clock, value: clock.value.date };
}

/** A time of day "HH:MM"; "6:00" and a fraction of a day from a time cell are understood. */
export function readTimeOfDay(cell: Cell): Reading<string> {
  if (typeof cell === "number" && cell >= 0 && cell < 1) return read(ofMinutes(Math.round(cell * 1440)));
  const text = plainText(cell);
  const found = /^(?:\d{4}-\d{2}-\d{2}T)?(\d{1,2}):(\d{2})(?::\d{2})?$/.exec(text);
  const [hour, minute] = [Number(found?.[1]), Number(found?.[2])];
  if (found === null || hour > 23 || minute > 59) return unreadable("no-time-of-day");
  return read(ofMinutes(hour * 60 + minute));
}

function ofText(text: string): Reading<WallClock> {
  const parts =
    /^(\d{4})-(\d{1,2})-(\d{1,2})(?:[T ]+(.*))?$/.exec(text) ??
    reordered(/^(\d{1,2})\.(\d{1,2})\.(\d{4})(?:[ ,T]+(.*))?$/.exec(text), "day first");
  if (parts !== null) return ofParts(parts);
  const slashed = /^(\d{1,2})\/(\d{1,2})\/(\d{4})(?:[ ,T]+(.*))?$/.exec(text);
  if (slashed === null) return unreadable("no-date");
  const [first, second] = [Number(slashed[1]), Number(slashed[2])];
  if (first <= 12 && second <= 12 && first !== second) return unreadable("day-or-month-first");
  return ofParts(reordered(slashed, first > 12 ? "day first" : "month first") ?? []);
}

function reordered(
  found: RegExpExecArray | null,
  order: "day first" | "month first",
): readonly (string | undefined)[] | null {
  if (found === null) return null;
  const [whole, first, second, year, time] = found;
  return order === "day first" ? [whole, year, second, first, time] : [whole, year, first, second, time];
}

function ofParts(parts: readonly (string | undefined)[]): Reading<WallClock> {
  const [year, month, day] = [Number(parts[1]), Number(parts[2]), Number(parts[3])];
  if (month < 1 || month > 12 || day < 1 || day > daysIn(year, month)) return unreadable("no-calendar-day");
  const date = `${String(year).padStart(4, "0")}-${String(month).padStart(2, "0")}-${String(day).padStart(2, "0")}`;
  const rest = parts[4]?.trim() ?? "";
  if (rest === "") return read({ date, time: null });
  const time = readTimeOfDay(rest.replace(/\.\d+$/, ""));
  return time.ok ? read({ date, time: time.value }) : unreadable("time-unreadable");
}

function daysIn(year: number, month: number): number {
  if (month === 2) return (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0 ? 29 : 28;
  return [4, 6, 9, 11].includes(month) ? 30 : 31;
}

function ofSerial(serial: number): Reading<WallClock> {
  if (serial < SERIALS[0] || serial >= SERIALS[1]) return unreadable("number-for-date");
  const minutes = Math.round(serial * 1440);
  const day = new Date(Date.UTC(1899, 11, 30) + Math.floor(minutes / 1440) * 86_400_000)
    .toISOString()
    .slice(0, 10);
  const time = minutes % 1440 === 0 ? null : ofMinutes(minutes % 1440);
  return { ok: true, value: { date: day, time }, warning: faultWords("read-as-date", { day }) };
}

function ofMinutes(minutes: number): string {
  return `${String(Math.floor(minutes / 60) % 24).padStart(2, "0")}:${String(minutes % 60).padStart(2, "0")}`;
}
