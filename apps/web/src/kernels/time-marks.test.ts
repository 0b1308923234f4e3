import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { dayMarks, hourMarks, isoWeek, marksBetween, mergeMarks, shiftMarks } from "./time-marks.ts";
import { zoneClock, type ZoneClock } from "./zone-clock.ts";

const berlin = zoneClock("Europe/Berlin");
const at = (iso: string): number => Date.parse(iso) / 1000;

describe("dayMarks", () => {
  it("draws the days of a clock change 23 and 25 hours long", () => {
    const spring = dayMarks(berlin, at("2026-03-28T12:00:00Z"), at("2026-03-30T12:00:00Z"));
    expect(spring.map((day) => day.lengthSeconds / 3600)).toEqual([24, 23, 24]);
    const autumn = dayMarks(berlin, at("2026-10-25T12:00:00Z"), at("2026-10-25T13:00:00Z"));
    expect(autumn.map((day) => day.lengthSeconds / 3600)).toEqual([25]);
  });

  it("covers any stretch without a hole, in any zone", () => {
    fc.assert(
      fc.property(
        fc.constantFrom("Europe/Berlin", "Pacific/Apia", "America/Sao_Paulo", "UTC"),
        fc.integer({ min: 1_700_000_000, max: 1_900_000_000 }),
        fc.integer({ min: 1, max: 20 * 86_400 }),
        (zone, startAt, length) => {
          const days = dayMarks(zoneClock(zone), startAt, startAt + length);
          expect(days[0]?.at).toBeLessThanOrEqual(startAt);
          for (const [place, day] of days.entries()) {
            const next = days[place + 1];
            if (next !== undefined) expect(day.at + day.lengthSeconds).toBe(next.at);
            else expect(day.at + day.lengthSeconds).toBeGreaterThanOrEqual(startAt + length);
          }
        },
      ),
    );
  });
});

describe("shiftMarks and hourMarks", () => {
  const days = dayMarks(berlin, at("2026-11-30T00:00:00Z"), at("2026-12-01T00:00:00Z"));

  it("starts shifts at their wall-clock time on their weekdays only", () => {
    const marks = shiftMarks(berlin, days, [
      { name: "late", weekdays: [1], start: "14:00" },
      { name: "early", weekdays: [1], start: "06:00" },
      { name: "weekend", weekdays: [6, 7], start: "06:00" },
    ]);
    expect(marks).toEqual([
      { at: at("2026-11-30T05:00:00Z"), label: "early" },
      { at: at("2026-11-30T13:00:00Z"), label: "late" },
    ]);
  });

  it("joins an hour and a shift of the same instant", () => {
    const shifts = shiftMarks(berlin, days, [{ name: "early", weekdays: [1], start: "06:00" }]);
    const merged = mergeMarks(hourMarks(berlin, days.slice(0, 1), 6), shifts);
    expect(merged.map((mark) => mark.label)).toEqual(["06:00 early", "12:00", "18:00"]);
  });
});

// Directive 2000/84/EC: summer time from the last Sunday of March to the last Sunday of October, both at 01:00 UTC.
describe("hourMarks on the days of a clock change", () => {
  const dayAt = (zone: ZoneClock, noon: string) => dayMarks(zone, at(noon), at(noon) + 1);
  const shown = (zone: ZoneClock, noon: string, step: number) =>
    hourMarks(zone, dayAt(zone, noon), step).map(({ at: instant, label }) => [
      new Date(instant * 1000).toISOString().slice(11, 16),
      label,
    ]);

  it("leaves out the hour that the clock skips in spring", () => {
    const hours = shown(berlin, "2026-03-29T10:00:00Z", 1);
    expect(hours.slice(0, 3)).toEqual([
      ["00:00", "01:00"],
      ["01:00", "03:00"],
      ["02:00", "04:00"],
    ]);
    expect(hours).toHaveLength(22);
    expect(shown(berlin, "2026-03-29T10:00:00Z", 2)[0]).toEqual(["02:00", "04:00"]);
  });

  it("marks the hour that the clock shows twice in autumn at both its times", () => {
    const hours = shown(berlin, "2026-10-25T10:00:00Z", 1);
    expect(hours.slice(0, 4)).toEqual([
      ["23:00", "01:00"],
      ["00:00", "02:00"],
      ["01:00", "02:00"],
      ["02:00", "03:00"],
    ]);
    expect(hours).toHaveLength(24);
  });

  it("keeps full hours where the clock changes by half an hour", () => {
    // IANA time zone data: Lord Howe Island, back from +11:00 to +10:30 on 5 April 2026 at 02:00.
    const hours = shown(zoneClock("Australia/Lord_Howe"), "2026-04-05T01:00:00Z", 1);
    expect(hours.slice(0, 3)).toEqual([
      ["14:00", "01:00"],
      ["15:30", "02:00"],
      ["16:30", "03:00"],
    ]);
  });

  it("agrees with the clock on every other day", () => {
    for (const { at: instant, label } of hourMarks(berlin, dayAt(berlin, "2026-07-01T10:00:00Z"), 4))
      expect(`${String(berlin.wallTimeAt(instant).hour).padStart(2, "0")}:00`).toBe(label);
  });
});

describe("marksBetween", () => {
  it("keeps the mark before the stretch so that its label can reach in", () => {
    const marks = [1, 5, 9, 13].map((instant) => ({ at: instant, label: `${instant}` }));
    expect(marksBetween(marks, 6, 13).map((mark) => mark.at)).toEqual([5, 9]);
    expect(marksBetween([], 0, 1)).toEqual([]);
  });
});

describe("isoWeek", () => {
  // ISO 8601: week 1 is the week with the year's first Thursday; 2026 has 53 weeks.
  it.each([
    [2026, 1, 1, 1],
    [2026, 11, 30, 49],
    [2026, 12, 31, 53],
    [2027, 1, 3, 53],
    [2027, 1, 4, 1],
    [2024, 12, 30, 1],
  ])("puts %i-%i-%i into week %i", (year, month, day, week) => {
    expect(isoWeek(year, month, day)).toBe(week);
  });
});
