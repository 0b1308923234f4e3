import { describe, expect, it } from "vitest";
import { de } from "../text/de/de.ts";
import { en } from "../text/en/en.ts";
import { formatFor } from "./format.ts";

const berlin = formatFor({ locale: "en-GB", timeZone: "Europe/Berlin", currency: "EUR", text: en });
const at = (iso: string): number => Date.parse(iso) / 1000;

describe("formatFor", () => {
  it("shows times in the plant's zone, also over a clock change", () => {
    expect(berlin.instant(at("2026-12-03T13:00:00Z"))).toBe("Thu 3 Dec 14:00");
    expect(berlin.clock(at("2026-03-29T01:00:00Z"))).toBe("03:00");
    expect(berlin.clock(at("2026-10-25T23:00:00Z"))).toBe("00:00");
  });

  it("names the time in the hour that the autumn clock change repeats, and only there", () => {
    expect(berlin.clock(at("2026-10-25T00:30:00Z"))).toBe("02:30 CEST");
    expect(berlin.clock(at("2026-10-25T01:30:00Z"))).toBe("02:30 CET");
    expect(berlin.clock(at("2026-10-24T23:59:00Z"))).toBe("01:59");
    expect(berlin.instant(at("2026-10-25T02:00:00Z"))).toBe("Sun 25 Oct 03:00");
    expect(berlin.clock(at("2026-03-29T01:00:00Z"))).toBe("03:00");
    const howe = formatFor({ locale: "en-GB", timeZone: "Australia/Lord_Howe", currency: "AUD", text: en });
    expect(howe.clock(at("2026-04-04T14:45:00Z"))).toBe("01:45 GMT+11");
    expect(howe.clock(at("2026-04-04T15:15:00Z"))).toBe("01:45 GMT+10:30");
  });

  it.each([
    [0, "0 min"],
    [20, "less than a minute"],
    [-59, "less than a minute"],
    [60, "1 min"],
    [40 * 60, "40 min"],
    [80 * 60, "1 h 20"],
    [3 * 3600, "3 h"],
    [3600 * 24, "1 d"],
    [51 * 3600, "2 d 3 h"],
    [-30 * 60, "30 min"],
    [3599, "1 h"],
    [86_399, "1 d"],
  ])("says %i seconds as %s", (seconds, words) => {
    expect(berlin.span(seconds)).toBe(words);
  });

  it("sums up in whole hours", () => {
    expect(berlin.hours(156.4 * 3600)).toBe("156 h");
    expect(berlin.hours(1800)).toBe("30 min");
    expect(berlin.hours(0)).toBe("0 min");
  });

  it("writes bare minutes on a gate", () => {
    expect(berlin.gate(55 * 60)).toBe("55");
    expect(berlin.gate(95 * 60)).toBe("1 h 35");
  });

  // Values of Unicode CLDR 44 and later, which Intl reads; from memory.
  it("follows the reader's locale for numbers, money and dates", () => {
    const german = formatFor({ locale: "de-DE", timeZone: "Europe/Berlin", currency: "EUR", text: de });
    expect(german.count(1_234_567)).toBe("1.234.567");
    expect(berlin.count(1_234_567)).toBe("1,234,567");
    expect(german.decimal(2.5, 1)).toBe("2,5");
    expect(german.percent(0.12)).toBe("12\u00a0%");
    expect(german.money(1234)).toBe("1.234\u00a0€");
    expect(berlin.money(1234)).toBe("€1,234");
    expect(german.instant(at("2026-12-03T13:00:00Z"))).toBe("Do. 3. Dez. 14:00");
    expect(german.longDay(at("2026-12-03T13:00:00Z"))).toBe("Donnerstag 3. Dezember");
    expect(german.shortDay(at("2026-03-03T13:00:00Z"))).toBe("3. März");
    expect(german.span(51 * 3600)).toBe("2 d 3 h");
  });

  it("keeps the 24-hour clock of the shop floor in every locale", () => {
    const american = formatFor({ locale: "en-US", timeZone: "Europe/Berlin", currency: "EUR", text: en });
    expect(american.instant(at("2026-12-03T13:00:00Z"))).toBe("Thu Dec 3 14:00");
  });
});
