import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { zoneClock } from "./zone-clock.ts";

const zones = [
  "UTC",
  "Europe/Berlin",
  "America/Sao_Paulo",
  "Pacific/Apia",
  "Australia/Lord_Howe",
  "America/New_York",
];
const at = (iso: string): number => Date.parse(iso) / 1000;

describe("zoneClock", () => {
  // European Union summer time, Directive 2000/84/EC: clocks go forward on the last Sunday of March at 01:00 UTC, back
  // on the last Sunday of October at 01:00 UTC.
  it("reads wall-clock times on both sides of the clock changes of Berlin", () => {
    const clock = zoneClock("Europe/Berlin");
    expect(clock.wallTimeAt(at("2026-03-29T00:59:00Z"))).toMatchObject({ hour: 1, minute: 59, weekday: 7 });
    expect(clock.wallTimeAt(at("2026-03-29T01:00:00Z"))).toMatchObject({ hour: 3, minute: 0 });
    expect(clock.wallTimeAt(at("2026-10-25T00:59:00Z"))).toMatchObject({ hour: 2, minute: 59 });
    expect(clock.wallTimeAt(at("2026-10-25T01:00:00Z"))).toMatchObject({ hour: 2, minute: 0 });
  });

  it("takes the first of a time that occurs twice, and moves a skipped time on", () => {
    const clock = zoneClock("Europe/Berlin");
    expect(clock.instantOf(2026, 10, 25, 150)).toBe(at("2026-10-25T00:30:00Z"));
    expect(clock.wallTimeAt(clock.instantOf(2026, 3, 29, 150))).toMatchObject({ hour: 3, minute: 30 });
  });

  it("falls back to UTC when the zone is unknown", () => {
    expect(zoneClock("Nowhere/Land").timeZone).toBe("UTC");
  });

  it("finds the wall-clock time that it reads, except in the second of two equal hours", () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...zones),
        fc.integer({ min: 1_700_000_000, max: 1_900_000_000 }),
        (zone, instant) => {
          const clock = zoneClock(zone);
          const minute = instant - (instant % 60);
          const wall = clock.wallTimeAt(minute);
          const found = clock.instantOf(wall.year, wall.month, wall.day, wall.hour * 60 + wall.minute);
          expect(clock.wallTimeAt(found)).toEqual(wall);
          expect([0, 1800, 3600, 86_400]).toContain(minute - found);
        },
      ),
      { numRuns: 300 },
    );
  });
});
