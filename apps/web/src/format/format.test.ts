import { describe, expect, it } from "vitest";
import { en } from "../text/en/en.ts";
import { chosenText } from "../text/text.ts";
import { formatFor } from "./format.ts";

const berlin = formatFor({ locale: "en-GB", timeZone: "Europe/Berlin", currency: "EUR", text: en });
const at = (iso: string): number => Date.parse(iso) / 1000;

describe("formatFor", () => {
  it("shows times in the plant's zone, also over a clock change", () => {
    expect(berlin.instant(at("2026-12-03T13:00:00Z"))).toBe("Thu 3 Dec 14:00");
    expect(berlin.clock(at("2026-03-29T01:00:00Z"))).toBe("03:00");
    expect(berlin.clock(at("2026-10-25T23:00:00Z"))).toBe("00:00");
  });

  it.each([
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

  it("follows the reader's locale for numbers", () => {
    const german = formatFor({ locale: "de-DE", timeZone: "Europe/Berlin", currency: "EUR", text: en });
    expect(german.count(1_234_567)).toBe("1.234.567");
    expect(berlin.count(1_234_567)).toBe("1,234,567");
    expect(german.decimal(2.5, 1)).toBe("2,5");
  });
});

describe("chosenText", () => {
  it("falls back to the first language", () => {
    expect(chosenText(["xx-YY", "en-GB"])).toBe(en);
    expect(chosenText([])).toBe(en);
  });
});
