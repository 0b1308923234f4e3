import { describe, expect, it } from "vitest";
import { hoursWithShift, isLongForOneCrew } from "./long-hours.ts";

const HOUR = 3600;
const DAY = 24 * HOUR;
const week = { start: 0, end: 7 * DAY };
/** From hour to hour of a day, 0 the Monday. */
const spell = (day: number, from: number, to: number) => ({
  start: day * DAY + from * HOUR,
  end: day * DAY + to * HOUR,
});
const earlies = [0, 1, 2, 3, 4].map((day) => spell(day, 6, 14));

// Directive 2003/88/EC, articles 3 and 6 (from memory): 11 h of rest a day, 48 h a week on average.
describe("a shift more", () => {
  it("on Saturday makes five shifts of eight hours a week of 48 hours, which is none too long", () => {
    const hours = hoursWithShift(earlies, spell(5, 6, 14), week);
    expect(hours).toEqual({ weekHours: 48, stretchHours: 8, restHours: 16 });
    expect(isLongForOneCrew(hours)).toBe(false);
  });

  it("is long where the week passes 48 hours, counted up to its Sunday", () => {
    expect(isLongForOneCrew(hoursWithShift(earlies, spell(5, 6, 14.5), week))).toBe(true);
    const night = hoursWithShift(earlies, spell(6, 20, 28), week);
    expect(night.weekHours).toBe(44);
    expect(isLongForOneCrew(night)).toBe(false);
  });

  it("is long where less than 11 hours of rest are left before it or after it", () => {
    expect(hoursWithShift(earlies.slice(0, 2), spell(0, 22, 24), week).restHours).toBe(6);
    expect(isLongForOneCrew(hoursWithShift(earlies.slice(0, 1), spell(1, 0, 4), week))).toBe(true);
    expect(isLongForOneCrew(hoursWithShift(earlies.slice(0, 1), spell(1, 1, 5), week))).toBe(false);
  });

  it("is long where it lengthens a shift past 13 hours, breaks within", () => {
    const broken = [spell(0, 6, 10), spell(0, 10.5, 14)];
    expect(hoursWithShift(broken, spell(0, 14, 19), week).stretchHours).toBe(13);
    expect(isLongForOneCrew(hoursWithShift(broken, spell(0, 14, 19), week))).toBe(false);
    expect(isLongForOneCrew(hoursWithShift(broken, spell(0, 14, 20), week))).toBe(true);
  });

  it("alone knows of no rest", () => {
    expect(hoursWithShift([], spell(2, 6, 14), week)).toEqual({
      weekHours: 8,
      stretchHours: 8,
      restHours: null,
    });
  });
});
