/** Wall clock of one instant in the plant's zone. `weekday` is ISO: 1 Monday … 7 Sunday. */
export interface WallTime {
  readonly year: number;
  readonly month: number;
  readonly day: number;
  readonly hour: number;
  readonly minute: number;
  readonly weekday: number;
}

/** Reads and finds wall-clock times of one IANA zone; instants are integer seconds since the epoch, UTC. */
export interface ZoneClock {
  readonly timeZone: string;
  readonly wallTimeAt: (instant: number) => WallTime;
  /**
   * Instant of a wall-clock time. A time skipped by a clock change moves on by the skipped hour; one that
   * occurs twice means the first.
   */
  readonly instantOf: (year: number, month: number, day: number, minuteOfDay: number) => number;
}

const secondsPerDay = 86_400;

/** Clock of `timeZone`; an unknown zone falls back to UTC, so that a plan can always be drawn. */
export function zoneClock(timeZone: string): ZoneClock {
  const format = wallFormat(timeZone);
  const offsetAt = (instant: number): number => {
    const parts = wallParts(format, instant);
    return (
      Date.UTC(parts.year, parts.month - 1, parts.day, parts.hour, parts.minute, parts.second) / 1000 -
      instant
    );
  };
  return {
    timeZone: format.resolvedOptions().timeZone,
    wallTimeAt: (instant) => {
      const { year, month, day, hour, minute } = wallParts(format, instant);
      return { year, month, day, hour, minute, weekday: isoWeekday(year, month, day) };
    },
    instantOf: (year, month, day, minuteOfDay) => {
      const asUtc = Date.UTC(year, month - 1, day) / 1000 + minuteOfDay * 60;
      const before = offsetAt(asUtc - secondsPerDay);
      const early = asUtc - before;
      if (offsetAt(early) === before) return early;
      const after = offsetAt(asUtc + secondsPerDay);
      const late = asUtc - after;
      return offsetAt(late) === after ? late : early;
    },
  };
}

function wallFormat(timeZone: string): Intl.DateTimeFormat {
  const options = {
    calendar: "gregory",
    numberingSystem: "latn",
    hourCycle: "h23",
    year: "numeric",
    month: "numeric",
    day: "numeric",
    hour: "numeric",
    minute: "numeric",
    second: "numeric",
  } as const;
  try {
    return new Intl.DateTimeFormat("en", { ...options, timeZone });
  } catch {
    return new Intl.DateTimeFormat("en", { ...options, timeZone: "UTC" });
  }
}

interface WallParts {
  readonly year: number;
  readonly month: number;
  readonly day: number;
  readonly hour: number;
  readonly minute: number;
  readonly second: number;
}

function wallParts(format: Intl.DateTimeFormat, instant: number): WallParts {
  const found = { year: 0, month: 0, day: 0, hour: 0, minute: 0, second: 0 };
  for (const part of format.formatToParts(instant * 1000)) {
    if (part.type in found) found[part.type as keyof typeof found] = Number(part.value);
  }
  return found;
}

function isoWeekday(year: number, month: number, day: number): number {
  return ((new Date(Date.UTC(year, month - 1, day)).getUTCDay() + 6) % 7) + 1;
}
