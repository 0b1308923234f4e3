import { describe, expect, it } from "vitest";
import { madePlan } from "../fixtures/made-plan.ts";
import { boardPlan, type BoardPlan } from "./board-plan.ts";
import { lastDayOf, plantWeeks } from "./plant-weeks.ts";
import { zoneClock } from "./zone-clock.ts";

const at = (iso: string): number => Date.parse(iso) / 1000;
const document = madePlan({ lines: 1, runsPerLine: 1, seed: 1 });
const [run] = document.segments;

/** A plan that works from `start` to `end`. */
function planOver(start: string, end: string): BoardPlan {
  return boardPlan("p", { ...document, segments: run === undefined ? [] : [{ ...run, start, end }] });
}

describe("plantWeeks", () => {
  // Directive 2000/84/EC: summer time from the last Sunday of March to the last Sunday of October, both at 01:00 UTC.
  it("begins and ends weeks at the plant's own midnights across a clock change", () => {
    const clock = zoneClock("Europe/Berlin");
    const spring = plantWeeks(clock, planOver("2026-03-27T12:00:00Z", "2026-03-31T12:00:00Z"));
    expect(spring).toEqual([
      {
        key: "2026-W13",
        year: 2026,
        number: 13,
        startAt: at("2026-03-22T23:00:00Z"),
        endAt: at("2026-03-29T22:00:00Z"),
      },
      {
        key: "2026-W14",
        year: 2026,
        number: 14,
        startAt: at("2026-03-29T22:00:00Z"),
        endAt: at("2026-04-05T22:00:00Z"),
      },
    ]);
    const [autumn] = plantWeeks(clock, planOver("2026-10-22T12:00:00Z", "2026-10-23T12:00:00Z"));
    expect(autumn).toMatchObject({ key: "2026-W43", startAt: at("2026-10-18T22:00:00Z") });
    expect((autumn?.endAt ?? 0) - (autumn?.startAt ?? 0)).toBe(169 * 3600);
    expect(clock.wallTimeAt(lastDayOf(autumn ?? { ...spring[0]! }))).toMatchObject({ day: 25, weekday: 7 });
  });

  it("takes Sunday evening in the plant's zone, not in UTC", () => {
    const [week] = plantWeeks(
      zoneClock("America/New_York"),
      planOver("2026-12-07T01:00:00Z", "2026-12-07T03:00:00Z"),
    );
    expect(week?.key).toBe("2026-W49");
  });

  // ISO 8601: week 1 holds the year's first Thursday; 2026 has 53 weeks, the last into January 2027.
  it("names weeks about New Year by their Thursday", () => {
    const weeks = plantWeeks(
      zoneClock("Europe/Berlin"),
      planOver("2027-01-02T12:00:00Z", "2027-01-05T12:00:00Z"),
    );
    expect(weeks.map(({ key }) => key)).toEqual(["2026-W53", "2027-W01"]);
  });

  it("leaves no week out between first and last work, and adds none that only touches", () => {
    const weeks = plantWeeks(zoneClock("UTC"), planOver("2026-11-30T00:00:00Z", "2026-12-21T00:00:00Z"));
    expect(weeks.map(({ number }) => number)).toEqual([49, 50, 51]);
  });

  it("knows no week of a plan in which nothing runs", () => {
    expect(plantWeeks(zoneClock("UTC"), boardPlan("p", { ...document, segments: [] }))).toEqual([]);
  });
});
