import { describe, expect, it } from "vitest";
import { instantOfLocalText } from "../calendar/time-zone.ts";
import { dayBuckets, shiftBuckets, weekBuckets } from "./buckets.ts";

const PARIS = "Europe/Paris";
const at = (text: string): number => instantOfLocalText(PARIS, text) ?? Number.NaN;

describe("buckets", () => {
  it("cuts days and weeks by the wall clock, 23, 24 or 25 hours a day", () => {
    // Source: IANA time zone data, Europe/Paris, clock changes of 2026.
    const spring = dayBuckets(PARIS, { start: at("2026-03-28T12:00"), end: at("2026-03-31T00:00") });
    expect(spring.map(({ label, start, end }) => [label, (end - start) / 3600])).toEqual([
      ["2026-03-28", 24],
      ["2026-03-29", 23],
      ["2026-03-30", 24],
    ]);
    const weeks = weekBuckets(PARIS, { start: at("2026-10-21T00:00"), end: at("2026-10-27T00:00") }, 1);
    expect(weeks.map(({ label, start, end }) => [label, (end - start) / 3600])).toEqual([
      ["2026-W43", 169],
      ["2026-W44", 168],
    ]);
  });

  it("starts weeks on the plant's first weekday", () => {
    const [week] = weekBuckets(
      "UTC",
      { start: Date.UTC(2026, 5, 10) / 1000, end: Date.UTC(2026, 5, 11) / 1000 },
      7,
    );
    expect(week).toEqual({
      label: "2026-W24",
      start: Date.UTC(2026, 5, 7) / 1000,
      end: Date.UTC(2026, 5, 14) / 1000,
    });
  });

  it("leaves out a day that the zone skipped", () => {
    // Source: IANA time zone data; Samoa had no 30 December 2011.
    const window = { start: Date.UTC(2011, 11, 29, 12) / 1000, end: Date.UTC(2011, 11, 31, 9) / 1000 };
    expect(dayBuckets("Pacific/Apia", window).map(({ label }) => label)).toEqual([
      "2011-12-29",
      "2011-12-31",
    ]);
  });

  it("cuts the window at shifts, and keeps the time between them", () => {
    const shift = (name: string, start: number, end: number) =>
      ({ name, kind: "weekly", date: "2026-06-08", start, end, workingSeconds: end - start }) as const;
    const of = (shifts: readonly ReturnType<typeof shift>[], start: number, end: number) =>
      shiftBuckets("UTC", shifts, { start, end }).map((bucket) => [bucket.label, bucket.start, bucket.end]);
    expect(of([shift("Early", 100, 200), shift("Night", 300, 400)], 150, 500)).toEqual([
      ["2026-06-08 Early", 150, 200],
      ["1970-01-01", 200, 300],
      ["2026-06-08 Night", 300, 400],
      ["1970-01-01", 400, 500],
    ]);
    // the second begins before the first ends
    expect(of([shift("Early", 0, 300), shift("Extra", 100, 200)], 0, 300)).toEqual([
      ["2026-06-08 Early", 0, 100],
      ["2026-06-08 Extra", 100, 200],
      ["1970-01-01", 200, 300],
    ]);
    expect(of([], 5, 5)).toEqual([]);
    expect(dayBuckets(PARIS, { start: 5, end: 5 })).toEqual([]);
    expect(weekBuckets(PARIS, { start: 5, end: 5 }, 1)).toEqual([]);
  });
});
