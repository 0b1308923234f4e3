import type { ZoneClock } from "./zone-clock.ts";

/** "2026-12-05T06:00" that a clock of the zone shows at an instant, to the whole minute: what a field of day and time holds. */
export function wallText(clock: ZoneClock, instant: number): string {
  const { year, month, day, hour, minute } = clock.wallTimeAt(instant);
  return `${padded(year, 4)}-${padded(month, 2)}-${padded(day, 2)}T${padded(hour, 2)}:${padded(minute, 2)}`;
}

/** Instant of "2026-12-05T06:00" in the zone; null where the text names no day and time that exist. */
export function instantOfWallText(clock: ZoneClock, text: string): number | null {
  const parts = /^(\d{4})-(\d{2})-(\d{2})T(\d{2}):(\d{2})/.exec(text);
  if (parts === null || Number.isNaN(Date.parse(`${parts[0]}Z`))) return null;
  const [year = 0, month = 0, day = 0, hour = 0, minute = 0] = parts.slice(1).map(Number);
  if (new Date(Date.UTC(year, month - 1, day)).getUTCDate() !== day) return null;
  return clock.instantOf(year, month, day, hour * 60 + minute);
}

/** The same time of day so many calendar days later, also over a change of the clocks; earlier for less than none. */
export function daysLater(clock: ZoneClock, instant: number, days: number): number {
  const { year, month, day, hour, minute } = clock.wallTimeAt(instant);
  return clock.instantOf(year, month, day + days, hour * 60 + minute) + (instant % 60);
}

/** An instant as it goes over the wire, "2026-12-05T05:00:00Z". */
export function wireText(instant: number): string {
  return new Date(instant * 1000).toISOString().replace(".000Z", "Z");
}

function padded(value: number, digits: number): string {
  return String(value).padStart(digits, "0");
}
