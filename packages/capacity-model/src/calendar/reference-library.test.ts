import fc from "fast-check";
import { addDays, getISODay, getISOWeek, getISOWeekYear, isValid, parse } from "date-fns";
import { describe, expect, it } from "vitest";
import { isoWeekDateOf, isoWeekday, parseLocalDate } from "./civil-date.ts";

/** date-fns reckons in the machine's zone: noon of the local day keeps clock changes away from its date. */
const noonOf = (dayNumber: number): Date => addDays(new Date(1970, 0, 1, 12), dayNumber);
const dayArb = fc.integer({ min: -100_000, max: 100_000 });

// Reference library: date-fns 4 (ISO 8601 week dates and its calendar arithmetic).
describe("civil dates against date-fns", () => {
  it("agrees on ISO weeks and weekdays", () => {
    fc.assert(
      fc.property(dayArb, (day) => {
        const noon = noonOf(day);
        expect(isoWeekDateOf(day)).toMatchObject({
          year: getISOWeekYear(noon),
          week: getISOWeek(noon),
          weekday: getISODay(noon),
        });
        expect(isoWeekday(day)).toBe(getISODay(noon));
      }),
    );
  });

  it("agrees on which texts are days of the calendar", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1900, max: 2200 }),
        fc.integer({ min: 1, max: 13 }),
        fc.integer({ min: 1, max: 32 }),
        (year, month, day) => {
          const text = `${year}-${String(month).padStart(2, "0")}-${String(day).padStart(2, "0")}`;
          expect(parseLocalDate(text) !== null).toBe(
            isValid(parse(text, "yyyy-MM-dd", new Date(2000, 0, 1))),
          );
        },
      ),
    );
  });
});
