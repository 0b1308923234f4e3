import { describe, expect, it } from "vitest";
import { firstFreeShift, shiftSpell } from "./shift-offer.ts";
import { instantOfWallText, wallText } from "./wall-text.ts";
import { zoneClock } from "./zone-clock.ts";

const clock = zoneClock("Europe/Berlin");
const at = (text: string): number => Date.parse(text) / 1000;
const early = { start: "06:00", end: "14:00" };
const night = { start: "22:00", end: "06:00" };

describe("times as fields of a form hold them", () => {
  it("are those of the plant's clock, there and back", () => {
    expect(wallText(clock, at("2026-12-05T05:00:59Z"))).toBe("2026-12-05T06:00");
    expect(instantOfWallText(clock, "2026-12-05T06:00")).toBe(at("2026-12-05T05:00:00Z"));
    expect(instantOfWallText(clock, "2026-07-05T06:00")).toBe(at("2026-07-05T04:00:00Z"));
    expect(instantOfWallText(clock, "")).toBeNull();
  });
});

describe("a shift on a day", () => {
  it("ends on the next day where its end lies before its start, and keeps to the clock on the night that it changes", () => {
    expect(shiftSpell(clock, "2026-12-31", night)).toEqual({
      start: at("2026-12-31T21:00:00Z"),
      end: at("2027-01-01T05:00:00Z"),
    });
    const changed = shiftSpell(clock, "2026-10-24", night);
    expect(((changed?.end ?? 0) - (changed?.start ?? 0)) / 3600).toBe(9);
    expect(shiftSpell(clock, "", night)).toBeNull();
  });
});

describe("the shift that is offered", () => {
  const within = { start: at("2026-12-04T05:00:00Z"), end: at("2026-12-07T05:00:00Z") };
  it("is the first of the pattern in which nothing is open", () => {
    const open = [{ start: at("2026-12-04T05:00:00Z"), end: at("2026-12-05T05:00:00Z") }];
    expect(firstFreeShift(clock, [night, early], { open, closures: [], within })).toMatchObject({
      date: "2026-12-05",
      shift: early,
    });
    expect(firstFreeShift(clock, [night], { open, closures: [], within })).toMatchObject({
      date: "2026-12-05",
    });
  });

  it("is none where all is open, or no shift is known", () => {
    expect(firstFreeShift(clock, [early, night], { open: [within], closures: [], within })).toBeNull();
    expect(firstFreeShift(clock, [], { open: [], closures: [], within })).toBeNull();
  });

  it("keeps out of closures, however little they reach into a shift", () => {
    const closures = [
      { start: at("2026-12-04T12:59:59Z"), end: at("2026-12-05T06:00:00Z") },
      { start: at("2026-12-06T05:00:00Z"), end: at("2026-12-06T05:00:01Z") },
    ];
    const offer = (patterns: readonly (typeof early)[]) =>
      firstFreeShift(clock, patterns, { open: [], closures, within });
    expect(offer([early])).toBeNull();
    expect(offer([early, night])).toMatchObject({ date: "2026-12-05", shift: night });
    expect(offer([{ start: "07:00", end: "13:00" }])).toMatchObject({ date: "2026-12-04" });
  });
});
