import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { secondsOf } from "./board-plan.ts";
import { daysLater, instantOfWallText, wallText, wireText } from "./wall-text.ts";
import { zoneClock } from "./zone-clock.ts";

// Europe/Paris goes from UTC+1 to UTC+2 on 2027-03-28 at 01:00 UTC (IANA time zone database).
const paris = zoneClock("Europe/Paris");

describe("times by the plant's clock", () => {
  it("are read and written in its zone", () => {
    expect(wallText(paris, secondsOf("2026-11-30T05:00:00Z"))).toBe("2026-11-30T06:00");
    expect(wallText(paris, secondsOf("2026-07-01T22:30:00Z"))).toBe("2026-07-02T00:30");
    expect(instantOfWallText(paris, "2026-11-30T06:00")).toBe(secondsOf("2026-11-30T05:00:00Z"));
    expect(wireText(secondsOf("2026-11-30T05:00:00Z"))).toBe("2026-11-30T05:00:00Z");
  });

  it("come back as they were, but for the hour that a clock shows twice", () => {
    const instants = fc.integer({ min: 29_000_000, max: 31_000_000 }).map((minutes) => minutes * 60);
    fc.assert(
      fc.property(instants, (instant) => {
        const text = wallText(paris, instant);
        const again = instantOfWallText(paris, text) ?? NaN;
        expect(wallText(paris, again)).toBe(text);
        expect([0, 3600]).toContain(instant - again);
      }),
    );
  });

  it.each(["", "soon", "2026-02-30T10:00", "2026-13-01T10:00", "2026-12-01T25:00", "2026-12-01"])(
    'are not read from "%s"',
    (text) => expect(instantOfWallText(paris, text)).toBeNull(),
  );

  it("stay the same time of day some days later, also over a change of the clocks", () => {
    expect(daysLater(paris, secondsOf("2027-03-27T09:00:30Z"), 1)).toBe(secondsOf("2027-03-28T08:00:30Z"));
    expect(daysLater(paris, secondsOf("2027-03-28T08:00:00Z"), -1)).toBe(secondsOf("2027-03-27T09:00:00Z"));
    expect(daysLater(paris, secondsOf("2026-12-31T09:00:00Z"), 2)).toBe(secondsOf("2027-01-02T09:00:00Z"));
  });
});
