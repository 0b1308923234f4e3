import type { ZoneClock } from "./zone-clock.ts";

/** An instant of the wire ("2026-11-30T05:00:00Z") as the wall clock of a zone shows it: "2026-11-30T06:00". */
export function wallText(clock: ZoneClock, instant: string): string {
  const { year, month, day, hour, minute } = clock.wallTimeAt(Date.parse(instant) / 1000);
  return `${padded(year, 4)}-${padded(month, 2)}-${padded(day, 2)}T${padded(hour, 2)}:${padded(minute, 2)}`;
}

/** The instant of a wall clock's text; null where the text names no day and time that exist. */
export function instantOfWallText(clock: ZoneClock, text: string): string | null {
  const parts = /^(\d{4})-(\d{2})-(\d{2})T(\d{2}):(\d{2})/.exec(text);
  if (parts === null || Number.isNaN(Date.parse(`${parts[0]}Z`))) return null;
  const [year = 0, month = 0, day = 0, hour = 0, minute = 0] = parts.slice(1).map(Number);
  if (new Date(Date.UTC(year, month - 1, day)).getUTCDate() !== day) return null;
  return instantText(clock.instantOf(year, month, day, hour * 60 + minute));
}

/** The same time of day so many calendar days later, also over a change of the clocks; earlier for less than none. */
export function daysLater(clock: ZoneClock, instant: string, days: number): string {
  const at = Date.parse(instant) / 1000;
  const { year, month, day, hour, minute } = clock.wallTimeAt(at);
  return instantText(clock.instantOf(year, month, day + days, hour * 60 + minute) + (at % 60));
}

function instantText(seconds: number): string {
  return new Date(seconds * 1000).toISOString().replace(".000Z", "Z");
}

function padded(value: number, digits: number): string {
  return String(value).padStart(digits, "0");
}
