/**
 * Dates and wall-clock times as plain integers, without a clock or a zone: days and seconds are counted from 1970-01-01
 * in the proleptic Gregorian calendar (ISO 8601), as if the wall clock ran in UTC.
 */

export const SECONDS_PER_DAY = 86_400;

/** A date of the Gregorian calendar; `month` 1–12, `day` 1–31. */
export interface CivilDate {
  readonly year: number;
  readonly month: number;
  readonly day: number;
}

/** A week of ISO 8601: `year` is the week's year, `week` 1–53, `weekday` 1 Monday … 7 Sunday. */
export interface IsoWeekDate {
  readonly year: number;
  readonly week: number;
  readonly weekday: number;
}

/**
 * Days from 1970-01-01 to a date. A day past the month's end runs over into the next month.
 * Source: days-from-civil, H. Hinnant, "chrono-compatible low-level date algorithms" (from memory).
 */
export function dayNumberOf(date: CivilDate): number {
  const year = date.month <= 2 ? date.year - 1 : date.year;
  const era = Math.floor(year / 400);
  const yearOfEra = year - era * 400;
  const dayOfYear = Math.floor((153 * (date.month + (date.month > 2 ? -3 : 9)) + 2) / 5) + date.day - 1;
  const dayOfEra = yearOfEra * 365 + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100) + dayOfYear;
  return era * 146_097 + dayOfEra - 719_468;
}

/** Date of a day number; the inverse of `dayNumberOf`. */
export function civilDateOf(dayNumber: number): CivilDate {
  const shifted = dayNumber + 719_468;
  const era = Math.floor(shifted / 146_097);
  const dayOfEra = shifted - era * 146_097;
  const yearOfEra = Math.floor(
    (dayOfEra -
      Math.floor(dayOfEra / 1460) +
      Math.floor(dayOfEra / 36_524) -
      Math.floor(dayOfEra / 146_096)) /
      365,
  );
  const dayOfYear = dayOfEra - (365 * yearOfEra + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100));
  const shiftedMonth = Math.floor((5 * dayOfYear + 2) / 153);
  const month = shiftedMonth + (shiftedMonth < 10 ? 3 : -9);
  return {
    year: yearOfEra + era * 400 + (month <= 2 ? 1 : 0),
    month,
    day: dayOfYear - Math.floor((153 * shiftedMonth + 2) / 5) + 1,
  };
}

/** ISO weekday of a day number: 1 Monday … 7 Sunday. */
export function isoWeekday(dayNumber: number): number {
  return ((((dayNumber + 3) % 7) + 7) % 7) + 1;
}

/** ISO 8601 week of a day number: the week belongs to the year that holds its Thursday. */
export function isoWeekDateOf(dayNumber: number): IsoWeekDate {
  const weekday = isoWeekday(dayNumber);
  const thursday = dayNumber - weekday + 4;
  const { year } = civilDateOf(thursday);
  const week = Math.floor((thursday - dayNumberOf({ year, month: 1, day: 1 })) / 7) + 1;
  return { year, week, weekday };
}

/** "2026-W53", or "2026-W53-4" when the weekday is wanted. */
export function isoWeekText(week: IsoWeekDate, withWeekday = false): string {
  const text = `${padded(week.year, 4)}-W${padded(week.week, 2)}`;
  return withWeekday ? `${text}-${week.weekday}` : text;
}

/** Day number of "YYYY-MM-DD" (anything after it is ignored); null when the text is no date of the calendar. */
export function parseLocalDate(text: string): number | null {
  const match = /^(\d{4})-(\d{2})-(\d{2})/.exec(text);
  if (match === null) return null;
  const date = { year: Number(match[1]), month: Number(match[2]), day: Number(match[3]) };
  if (date.month < 1 || date.month > 12) return null;
  const dayNumber = dayNumberOf(date);
  const back = civilDateOf(dayNumber);
  return back.month === date.month && back.day === date.day ? dayNumber : null;
}

/** Seconds since midnight of "HH:MM" or "HH:MM:SS"; null when the text is no time of day. */
export function parseLocalTime(text: string): number | null {
  const match = /^([01]\d|2[0-3]):([0-5]\d)(?::([0-5]\d))?$/.exec(text);
  return match === null ? null : Number(match[1]) * 3600 + Number(match[2]) * 60 + Number(match[3] ?? 0);
}

/** Wall-clock seconds of "YYYY-MM-DDTHH:MM" (seconds allowed); null when the text is no such time. */
export function parseLocalDateTime(text: string): number | null {
  const dayNumber = parseLocalDate(text);
  const seconds = text[10] === "T" || text[10] === " " ? parseLocalTime(text.slice(11)) : null;
  return dayNumber === null || seconds === null ? null : dayNumber * SECONDS_PER_DAY + seconds;
}

/** "YYYY-MM-DD" of a day number. */
export function localDateText(dayNumber: number): string {
  const { year, month, day } = civilDateOf(dayNumber);
  return `${padded(year, 4)}-${padded(month, 2)}-${padded(day, 2)}`;
}

/** "YYYY-MM-DDTHH:MM" of wall-clock seconds, with ":SS" only where they are not zero. */
export function localDateTimeText(wallSeconds: number): string {
  const dayNumber = Math.floor(wallSeconds / SECONDS_PER_DAY);
  const rest = wallSeconds - dayNumber * SECONDS_PER_DAY;
  const minutes = Math.floor(rest / 60);
  const seconds = rest % 60;
  const clock = `${padded(Math.floor(minutes / 60), 2)}:${padded(minutes % 60, 2)}`;
  return `${localDateText(dayNumber)}T${clock}${seconds === 0 ? "" : `:${padded(seconds, 2)}`}`;
}

function padded(value: number, width: number): string {
  return String(value).padStart(width, "0");
}
