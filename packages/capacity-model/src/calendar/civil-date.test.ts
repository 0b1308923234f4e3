import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  civilDateOf,
  dayNumberOf,
  isoWeekDateOf,
  isoWeekText,
  isoWeekday,
  localDateText,
  localDateTimeText,
  parseLocalDate,
  parseLocalDateTime,
  parseLocalTime,
} from "./civil-date.ts";

const day = fc.integer({ min: -200_000, max: 200_000 });

describe("civil dates", () => {
  it("agrees with the runtime's own calendar in UTC", () => {
    fc.assert(
      fc.property(day, (dayNumber) => {
        const date = new Date(dayNumber * 86_400_000);
        expect(civilDateOf(dayNumber)).toEqual({
          year: date.getUTCFullYear(),
          month: date.getUTCMonth() + 1,
          day: date.getUTCDate(),
        });
        expect(dayNumberOf(civilDateOf(dayNumber))).toBe(dayNumber);
        expect(isoWeekday(dayNumber)).toBe(date.getUTCDay() === 0 ? 7 : date.getUTCDay());
      }),
    );
  });

  it("CV-29 places dates in ISO weeks", () => {
    // Source: ISO 8601 week rule; 2026 has 53 weeks.
    const weekOf = (text: string): string =>
      isoWeekText(isoWeekDateOf(parseLocalDate(text) ?? Number.NaN), true);
    expect(weekOf("2026-12-31")).toBe("2026-W53-4");
    expect(weekOf("2027-01-01")).toBe("2026-W53-5");
    expect(weekOf("2024-12-30")).toBe("2025-W01-1");
  });

  it("counts ISO weeks without a gap, Monday to Sunday", () => {
    fc.assert(
      fc.property(day, (dayNumber) => {
        const today = isoWeekDateOf(dayNumber);
        const nextWeek = isoWeekDateOf(dayNumber + 7);
        expect(nextWeek.weekday).toBe(today.weekday);
        if (nextWeek.year === today.year) expect(nextWeek.week).toBe(today.week + 1);
        else expect([nextWeek.week, [52, 53].includes(today.week)]).toEqual([1, true]);
      }),
    );
  });

  it("reads and writes texts", () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 4_000_000_000 }), (wall) => {
        expect(parseLocalDateTime(localDateTimeText(wall))).toBe(wall);
        expect(parseLocalDate(localDateText(Math.floor(wall / 86_400)))).toBe(Math.floor(wall / 86_400));
      }),
    );
    expect(localDateTimeText(parseLocalDateTime("2026-03-28T22:05") ?? 0)).toBe("2026-03-28T22:05");
  });

  it.each(["2026-02-29", "2026-13-01", "2026-00-10", "2026-04-31", "26-04-30", ""])(
    "refuses the date %j",
    (text) => {
      expect(parseLocalDate(text)).toBeNull();
    },
  );

  it.each(["24:00", "7:30", "12:60", ""])("refuses the time %j", (text) => {
    expect(parseLocalTime(text)).toBeNull();
    expect(parseLocalDateTime(`2026-01-01T${text}`)).toBeNull();
  });
});
