import fc from "fast-check";
import { afterEach, describe, expect, it } from "vitest";
import type { z } from "zod";
import { WorkCalendar } from "../plant/work-calendar.ts";
import { compileCalendar } from "./compile-calendar.ts";
import type { CompiledCalendar } from "./compile-calendar.ts";
import { instantOfLocalText, localTextAt } from "./time-zone.ts";
import { spellsOf, totalWorking } from "./working-sets.ts";
import { addWorking, isOpen, nextOpening, workingBetween } from "./working-time.ts";

const PARIS = "Europe/Paris";
const NIGHTS = [7, 1, 2, 3, 4];
const DAYS = [1, 2, 3, 4, 5];

const originalZone = process.env["TZ"];
afterEach(() => {
  if (originalZone === undefined) delete process.env["TZ"];
  else process.env["TZ"] = originalZone;
});

function calendarOf(parts: Partial<z.input<typeof WorkCalendar>>): WorkCalendar {
  return WorkCalendar.parse({ id: "C", name: "Calendar", shifts: [], ...parts });
}

const threeShifts = calendarOf({
  shifts: [
    { name: "Night", weekdays: NIGHTS, start: "22:00", end: "06:00" },
    { name: "Early", weekdays: DAYS, start: "06:00", end: "14:00" },
    { name: "Late", weekdays: DAYS, start: "14:00", end: "22:00" },
  ],
});

const continuous = calendarOf({
  shifts: [{ name: "Round the clock", weekdays: [1, 2, 3, 4, 5, 6, 7], start: "00:00", end: "00:00" }],
});

function instant(zone: string, text: string): number {
  const at = instantOfLocalText(zone, text);
  if (at === null) throw new Error(text);
  return at;
}

function compiled(calendar: WorkCalendar, timeZone: string, from: string, to: string): CompiledCalendar {
  return compileCalendar({
    calendar,
    timeZone,
    window: { start: instant(timeZone, from), end: instant(timeZone, to) },
  });
}

describe("weekly shifts", () => {
  it("CV-24 gives 120 h from Sunday 22:00 to Friday 22:00, and 42 h a crew round the clock", () => {
    // Source: arithmetic on shift patterns that are common practice.
    const week = compiled(threeShifts, PARIS, "2026-06-07T00:00", "2026-06-14T00:00");
    expect(totalWorking(week.workingTime) / 3600).toBe(120);
    const whole = compiled(continuous, PARIS, "2026-06-08T00:00", "2026-06-15T00:00");
    expect(totalWorking(whole.workingTime) / 3600 / 4).toBe(42);
  });

  it("gives 80 h for two shifts of eight hours on five days", () => {
    // Common practice, no source.
    const twoShifts = calendarOf({
      shifts: [{ name: "Both", weekdays: DAYS, start: "06:00", end: "22:00" }],
    });
    const week = compiled(twoShifts, PARIS, "2026-06-08T00:00", "2026-06-15T00:00");
    expect(totalWorking(week.workingTime) / 3600).toBe(80);
  });

  it("CV-25 shortens the night of the spring change to 7 h and its week to 167 h", () => {
    // Source: IANA time zone data, Europe/Paris, 29 March 2026.
    const saturdayNight = calendarOf({
      shifts: [{ name: "Night", weekdays: [6], start: "22:00", end: "06:00" }],
    });
    const night = compiled(saturdayNight, PARIS, "2026-03-23T00:00", "2026-03-30T00:00");
    expect(totalWorking(night.workingTime) / 3600).toBe(7);
    const week = compiled(continuous, PARIS, "2026-03-23T00:00", "2026-03-30T00:00");
    expect(totalWorking(week.workingTime) / 3600).toBe(167);
    // The change lies before Monday but after Friday 22:00, so the five-day week keeps its hours.
    const fiveDays = compiled(threeShifts, PARIS, "2026-03-29T12:00", "2026-04-04T00:00");
    expect(totalWorking(fiveDays.workingTime) / 3600).toBe(120);
  });

  it("CV-26 lengthens the night of the autumn change to 9 h and its week to 169 h", () => {
    // Source: IANA time zone data, Europe/Paris, 25 October 2026.
    const saturdayNight = calendarOf({
      shifts: [{ name: "Night", weekdays: [6], start: "22:00", end: "06:00" }],
    });
    const night = compiled(saturdayNight, PARIS, "2026-10-19T00:00", "2026-10-26T00:00");
    expect(totalWorking(night.workingTime) / 3600).toBe(9);
    const week = compiled(continuous, PARIS, "2026-10-19T00:00", "2026-10-26T00:00");
    expect(totalWorking(week.workingTime) / 3600).toBe(169);
  });

  it("CV-27 runs 30 h across both changes round the clock", () => {
    // Source: IANA time zone data; 30 hours counted on.
    const endOf = (start: string): string => {
      const { workingTime } = compiled(continuous, PARIS, start, `${start.slice(0, 8)}31T00:00`);
      return localTextAt(PARIS, addWorking(workingTime, instant(PARIS, start), 30 * 3600) ?? 0);
    };
    expect(endOf("2026-03-28T12:00")).toBe("2026-03-29T19:00");
    expect(endOf("2026-10-24T12:00")).toBe("2026-10-25T17:00");
  });

  it("CV-28 interrupts a 30 h run over the weekend", () => {
    // Source: IANA time zone data; the weekend holds the spring change of 2026.
    const { workingTime } = compiled(threeShifts, PARIS, "2026-03-23T00:00", "2026-04-06T00:00");
    const start = instant(PARIS, "2026-03-27T18:00");
    expect(workingBetween(workingTime, start, instant(PARIS, "2026-03-28T00:00")) / 3600).toBe(4);
    const reopens = nextOpening(workingTime, instant(PARIS, "2026-03-28T00:00")) ?? 0;
    expect(localTextAt(PARIS, reopens)).toBe("2026-03-29T22:00");
    expect(localTextAt(PARIS, addWorking(workingTime, start, 30 * 3600) ?? 0)).toBe("2026-03-31T00:00");
  });

  it("averages 42 h in a rota of four nights, three days, three nights and four days in four weeks", () => {
    // Common practice, no source: fourteen shifts of twelve hours, here as extra shifts on dates.
    const dates = [1, 2, 3, 4, 8, 9, 10, 12, 13, 14, 18, 19, 20, 21];
    const rota = calendarOf({
      extraShifts: dates.map((day) => ({
        name: "Twelve hours",
        date: `2026-06-${String(day).padStart(2, "0")}`,
        start: day < 5 || (day > 11 && day < 15) ? "18:00" : "06:00",
        end: day < 5 || (day > 11 && day < 15) ? "06:00" : "18:00",
      })),
    });
    const { workingTime } = compiled(rota, PARIS, "2026-06-01T00:00", "2026-06-29T00:00");
    expect(totalWorking(workingTime) / 3600 / 4).toBe(42);
  });
});

describe("breaks, closures and extra shifts", () => {
  it("takes breaks out, also after midnight", () => {
    const nights = calendarOf({
      shifts: [
        {
          name: "Night",
          weekdays: [1],
          start: "22:00",
          end: "06:00",
          breaks: [
            { start: "23:45", end: "00:15" },
            { start: "03:00", end: "03:30" },
          ],
        },
      ],
    });
    const { workingTime, shifts } = compiled(nights, PARIS, "2026-06-08T00:00", "2026-06-10T00:00");
    expect(workingTime.starts.map((at) => localTextAt(PARIS, at))).toEqual([
      "2026-06-08T22:00",
      "2026-06-09T00:15",
      "2026-06-09T03:30",
    ]);
    expect(workingTime.ends.map((at) => localTextAt(PARIS, at))).toEqual([
      "2026-06-08T23:45",
      "2026-06-09T03:00",
      "2026-06-09T06:00",
    ]);
    expect(shifts.map(({ name, date, workingSeconds }) => [name, date, workingSeconds])).toEqual([
      ["Night", "2026-06-08", 7 * 3600],
    ]);
  });

  it("closes what a closure names and lets an extra shift win over it", () => {
    const calendar = calendarOf({
      shifts: [{ name: "Day", weekdays: DAYS, start: "06:00", end: "14:00" }],
      closures: [{ from: "2026-06-09T00:00", to: "2026-06-12T00:00", reason: "Overhaul" }],
      extraShifts: [
        {
          name: "Catch-up",
          date: "2026-06-10",
          start: "08:00",
          end: "12:00",
          breaks: [{ start: "09:00", end: "09:30" }],
        },
      ],
    });
    const { workingTime, shifts } = compiled(calendar, PARIS, "2026-06-08T00:00", "2026-06-15T00:00");
    expect(totalWorking(workingTime) / 3600).toBe(8 + 3.5 + 8);
    expect(isOpen(workingTime, instant(PARIS, "2026-06-09T07:00"))).toBe(false);
    expect(isOpen(workingTime, instant(PARIS, "2026-06-10T08:30"))).toBe(true);
    expect(
      shifts.map(
        ({ name, kind, date, workingSeconds }) => `${date} ${name} ${kind} ${workingSeconds / 3600}`,
      ),
    ).toEqual([
      "2026-06-08 Day weekly 8",
      "2026-06-09 Day weekly 0",
      "2026-06-10 Day weekly 0",
      "2026-06-10 Catch-up extra 3.5",
      "2026-06-11 Day weekly 0",
      "2026-06-12 Day weekly 8",
    ]);
  });

  it("counts as overtime what only an extra shift opens: not where it overlaps a weekly shift, but where that is closed", () => {
    const calendar = calendarOf({
      shifts: [{ name: "Day", weekdays: DAYS, start: "06:00", end: "14:00" }],
      closures: [{ from: "2026-06-09T00:00", to: "2026-06-10T00:00", reason: "Holiday" }],
      extraShifts: ["2026-06-08", "2026-06-09"].map((date) => ({
        name: "Long",
        date,
        start: "12:00",
        end: "16:00",
      })),
    });
    const { overtime } = compiled(calendar, PARIS, "2026-06-08T00:00", "2026-06-09T15:00");
    expect(spellsOf(overtime)).toEqual([
      [instant(PARIS, "2026-06-08T14:00"), instant(PARIS, "2026-06-08T16:00")],
      [instant(PARIS, "2026-06-09T12:00"), instant(PARIS, "2026-06-09T15:00")],
    ]);
  });

  it("cuts working time to the window but leaves the shifts whole", () => {
    const { workingTime, shifts } = compiled(threeShifts, PARIS, "2026-06-09T02:00", "2026-06-09T05:00");
    expect(totalWorking(workingTime) / 3600).toBe(3);
    expect(shifts.map(({ name, start, end }) => [name, (end - start) / 3600])).toEqual([["Night", 8]]);
  });

  it("never opens without shifts or without a window", () => {
    expect(
      totalWorking(compiled(calendarOf({}), PARIS, "2026-01-01T00:00", "2027-01-01T00:00").workingTime),
    ).toBe(0);
    expect(compiled(continuous, PARIS, "2026-06-02T00:00", "2026-06-01T00:00").shifts).toEqual([]);
  });
});

describe.each(["UTC", "Europe/Berlin", "America/Sao_Paulo", "Pacific/Apia"])(
  "on a machine set to %s",
  (machineZone) => {
    const zones = [
      "UTC",
      "Europe/Berlin",
      "America/New_York",
      "America/Sao_Paulo",
      "Pacific/Apia",
      "Asia/Kathmandu",
      "Australia/Lord_Howe",
    ];
    const formats = new Map(
      zones.map((zone) => [
        zone,
        new Intl.DateTimeFormat("en-GB", {
          timeZone: zone,
          weekday: "short",
          hour: "2-digit",
          minute: "2-digit",
          hourCycle: "h23",
        }),
      ]),
    );
    const WEEKDAYS = ["Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"];

    /** Weekday (1–7) and minute of the day that Intl shows. */
    function clockByIntl(zone: string, at: number): { readonly weekday: number; readonly minute: number } {
      const parts = formats.get(zone)?.formatToParts(new Date(at * 1000)) ?? [];
      const part = (type: string): string => parts.find((candidate) => candidate.type === type)?.value ?? "";
      return {
        weekday: WEEKDAYS.indexOf(part("weekday")) + 1,
        minute: Number(part("hour")) * 60 + Number(part("minute")),
      };
    }

    const clockMinutes = fc.integer({ min: 0, max: 95 }).map((quarter) => quarter * 15);
    const text = (minute: number): string =>
      `${String(Math.floor(minute / 60)).padStart(2, "0")}:${String(minute % 60).padStart(2, "0")}`;

    it("is open exactly when the wall clock that Intl shows lies in a shift", () => {
      process.env["TZ"] = machineZone;
      expect(Intl.DateTimeFormat().resolvedOptions().timeZone).toBe(machineZone);
      fc.assert(
        fc.property(
          fc.record({
            zone: fc.constantFrom(...zones),
            quarterHours: fc.integer({ min: 1_000_000, max: 2_100_000 }),
            from: clockMinutes,
            to: clockMinutes,
            weekdays: fc.uniqueArray(fc.integer({ min: 1, max: 7 }), { minLength: 1, maxLength: 7 }),
          }),
          ({ zone, quarterHours, from, to, weekdays }) => {
            const start = quarterHours * 900;
            const end = start + 10 * 86_400;
            const calendar = calendarOf({
              shifts: [{ name: "S", weekdays, start: text(from), end: text(to) }],
            });
            const { workingTime } = compileCalendar({ calendar, timeZone: zone, window: { start, end } });
            for (let at = start; at < end; at += 900 * 5) {
              // A day with a clock change has skipped and repeated times, which have a rule (and tests) of their own.
              if (changesWithinADay(zone, at)) continue;
              const { weekday, minute } = clockByIntl(zone, at);
              const sameDay = weekdays.includes(weekday) && minute >= from && (to <= from || minute < to);
              const dayBefore = weekday === 1 ? 7 : weekday - 1;
              const overMidnight = to <= from && weekdays.includes(dayBefore) && minute < to;
              expect(isOpen(workingTime, at)).toBe(sameDay || overMidnight);
            }
          },
        ),
        { numRuns: 40, seed: machineZone.length },
      );
    });

    function changesWithinADay(zone: string, at: number): boolean {
      const now = clockByIntl(zone, at).minute;
      return clockByIntl(zone, at - 86_400).minute !== now || clockByIntl(zone, at + 86_400).minute !== now;
    }

    it("compiles a year of three shifts alike everywhere", () => {
      process.env["TZ"] = machineZone;
      const year = compiled(threeShifts, "Europe/Berlin", "2026-01-01T00:00", "2027-01-01T00:00");
      // By hand: Thursday 1 and Friday 2 January until 22:00 are 46 h; 51 weeks follow from the Sundays 4 January to
      // 20 December; from 27 December 22:00 to the end of the year are 98 h. Both clock changes fall on closed hours.
      expect(totalWorking(year.workingTime) / 3600).toBe(46 + 51 * 120 + 98);
      expect(year.shifts).toHaveLength(3 * 261 + 1);
    });
  },
);
