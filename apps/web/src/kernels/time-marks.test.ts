import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { dayMarks, hourMarks, isoWeek, marksBetween, mergeMarks, shiftMarks } from "./time-marks.ts";
import { zoneClock } from "./zone-clock.ts";

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
