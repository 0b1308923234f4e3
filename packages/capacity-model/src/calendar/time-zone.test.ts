import fc from "fast-check";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { parseLocalDateTime } from "./civil-date.ts";
import {
  instantOfLocalText,
  isKnownTimeZone,
  isoWeekAt,
  localDayAt,
  offsetSecondsAt,
  startOfLocalDay,
} from "./time-zone.ts";
import type * as timeZones from "./time-zone.ts";

const ZONES = [
  "UTC",
  "Europe/Berlin",
  "Europe/London",
  "Europe/Paris",
  "Europe/Dublin",
  "America/New_York",
  "America/Sao_Paulo",
  "America/St_Johns",
  "America/Caracas",
  "Africa/Casablanca",
  "Africa/Cairo",
  "Asia/Kolkata",
  "Asia/Kathmandu",
  "Asia/Tehran",
  "Asia/Pyongyang",
  "Australia/Lord_Howe",
  "Australia/Adelaide",
  "Antarctica/Troll",
  "Pacific/Apia",
  "Pacific/Chatham",
  "Pacific/Kiritimati",
] as const;

/** Zones of the machine under which the same answers must come out. */
const MACHINE_ZONES = ["UTC", "Europe/Berlin", "America/Sao_Paulo", "Pacific/Apia"] as const;

const originalZone = process.env["TZ"];
afterEach(() => {
  if (originalZone === undefined) delete process.env["TZ"];
  else process.env["TZ"] = originalZone;
});

/** Wall clock as the runtime prints it: an independent reading of the same IANA data. */
function wallByIntl(zone: string, at: number): string {
  const parts = new Intl.DateTimeFormat("en-GB", {
    timeZone: zone,
    hourCycle: "h23",
    year: "numeric",
    month: "2-digit",
    day: "2-digit",
    hour: "2-digit",
    minute: "2-digit",
    second: "2-digit",
  }).formatToParts(new Date(at * 1000));
  const part = (type: string): string => parts.find((candidate) => candidate.type === type)?.value ?? "";
  return `${part("year")}-${part("month")}-${part("day")}T${part("hour")}:${part("minute")}:${part("second")}`;
}

const zone = fc.constantFrom(...ZONES);
// 1990 … 2040; before that some zones had offsets with odd seconds, which no plant needs.
const instant = fc.integer({ min: 631_152_000, max: 2_208_988_800 });

describe.each(MACHINE_ZONES)("time zones on a machine set to %s", (machineZone) => {
  const seed = MACHINE_ZONES.indexOf(machineZone) + 1;
  let fresh: typeof timeZones;

  beforeEach(async () => {
    process.env["TZ"] = machineZone;
    // Without what an earlier zone of the machine left in memory.
    vi.resetModules();
    fresh = await import("./time-zone.ts");
  });

  it("shows the wall clock that Intl shows (IANA zone data)", () => {
    expect(Intl.DateTimeFormat().resolvedOptions().timeZone).toBe(machineZone);
    fc.assert(
      fc.property(zone, instant, (name, at) => {
        expect(fresh.wallSecondsAt(name, at)).toBe(parseLocalDateTime(wallByIntl(name, at)));
      }),
      { numRuns: 300, seed },
    );
  });

  it("finds an instant that shows the wanted wall clock, or one that was skipped", () => {
    fc.assert(
      fc.property(zone, instant, (name, wall) => {
        const at = fresh.instantOfWall(name, wall);
        const shown = fresh.wallSecondsAt(name, at);
        if (shown !== wall) {
          // Skipped: shown later by the gap, and no instant near shows it.
          expect(shown).toBeGreaterThan(wall);
          for (let probe = wall - 50_400; probe <= wall + 43_200; probe += 900) {
            expect(fresh.wallSecondsAt(name, probe)).not.toBe(wall);
          }
        } else {
          // The first of two: nothing up to a day earlier shows the same.
          for (let probe = at - 86_400; probe < at; probe += 900) {
            expect(fresh.wallSecondsAt(name, probe)).not.toBe(wall);
          }
        }
      }),
      { numRuns: 200, seed },
    );
  });

  it("moves skipped times forward and takes the first of two", () => {
    const shown = (name: string, text: string): string =>
      fresh.localTextAt(name, fresh.instantOfLocalText(name, text) ?? 0);
    expect(shown("Europe/Paris", "2026-03-29T02:30")).toBe("2026-03-29T03:30");
    expect(fresh.instantOfLocalText("Europe/Paris", "2026-10-25T02:30")).toBe(
      Date.UTC(2026, 9, 25, 0, 30) / 1000,
    );
    // Midnight itself was skipped in Sao Paulo until 2018, a whole day in Samoa (30 December 2011).
    expect(shown("America/Sao_Paulo", "2018-11-04T00:00")).toBe("2018-11-04T01:00");
    expect(shown("Pacific/Apia", "2011-12-30T10:00")).toBe("2011-12-31T10:00");
    expect(shown("Australia/Lord_Howe", "2026-10-04T02:15")).toBe("2026-10-04T02:45");
  });
});

describe("time zones", () => {
  it("CV-30 gives New York days of 23 and 25 hours in 2026", () => {
    // Source: IANA time zone data; US clock changes on 8 March and 1 November 2026.
    const hoursOf = (text: string): number => {
      const day = localDayAt(
        "America/New_York",
        instantOfLocalText("America/New_York", `${text}T12:00`) ?? 0,
      );
      return (startOfLocalDay("America/New_York", day + 1) - startOfLocalDay("America/New_York", day)) / 3600;
    };
    expect(hoursOf("2026-03-08")).toBe(23);
    expect(hoursOf("2026-11-01")).toBe(25);
    expect(hoursOf("2026-03-09")).toBe(24);
  });

  it("finds each change to the second", () => {
    const change = Date.UTC(2026, 2, 29, 1) / 1000;
    expect(offsetSecondsAt("Europe/Berlin", change - 1)).toBe(3600);
    expect(offsetSecondsAt("Europe/Berlin", change)).toBe(7200);
  });

  it("reads the ISO week by the local day", () => {
    const at = Date.UTC(2027, 0, 3, 23, 30) / 1000;
    expect(isoWeekAt("UTC", at)).toEqual({ year: 2026, week: 53, weekday: 7 });
    expect(isoWeekAt("Europe/Berlin", at)).toEqual({ year: 2027, week: 1, weekday: 1 });
  });

  it("knows zones by name only", () => {
    expect(["UTC", "Europe/Berlin", "Pacific/Apia"].map(isKnownTimeZone)).toEqual([true, true, true]);
    expect(["", "Mars/Base", "+01:00", "Europe/", "-3"].map(isKnownTimeZone)).toEqual(Array(5).fill(false));
  });
});
