import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { sayChance } from "./chance.ts";
import { latestHoldText, usualHoldEnd } from "./hold-time.ts";
import { wallText } from "./wall-text.ts";
import { zoneClock } from "./zone-clock.ts";

const berlin = zoneClock("Europe/Berlin");
const at = (iso: string): number => Date.parse(iso) / 1000;

describe("usualHoldEnd", () => {
  it.each([
    ["a Tuesday", "2026-12-01T08:00:00Z", "2026-12-02T17:00"],
    ["late in the evening, by the plant's clock", "2026-12-01T23:30:00Z", "2026-12-03T17:00"],
    ["a Friday", "2026-12-04T08:00:00Z", "2026-12-07T17:00"],
    ["a Saturday", "2026-12-05T08:00:00Z", "2026-12-07T17:00"],
    ["over a change of the clocks", "2026-10-23T08:00:00Z", "2026-10-26T17:00"],
  ])("of %s ends with the next working day", (_, now, end) => {
    expect(wallText(berlin, usualHoldEnd(berlin, at(now)))).toBe(end);
  });

  it("is never past, and never later than the server takes", () => {
    fc.assert(
      fc.property(fc.integer({ min: at("2026-01-01T00:00:00Z"), max: at("2028-01-01T00:00:00Z") }), (now) => {
        const end = usualHoldEnd(berlin, now);
        expect(end).toBeGreaterThan(now);
        expect(wallText(berlin, end) <= latestHoldText(berlin, now)).toBe(true);
      }),
    );
  });
});

describe("sayChance", () => {
  it.each([
    [1, { kind: "sure" }],
    [0.96, { kind: "about", times: 19, of: 20 }],
    [0.92, { kind: "about", times: 9, of: 10 }],
    [0.5, { kind: "about", times: 5, of: 10 }],
    [0.06, { kind: "about", times: 1, of: 10 }],
    [0, { kind: "hardly" }],
  ])("says %f as it is meant", (chance, said) => {
    expect(sayChance(chance)).toEqual(said);
  });

  it("is never more than a twentieth off", () => {
    fc.assert(
      fc.property(fc.double({ min: 0.05, max: 0.984, noNaN: true }), (chance) => {
        const said = sayChance(chance);
        if (said.kind !== "about") throw new Error("a chance in between is said as a share");
        expect(Math.abs(said.times / said.of - chance)).toBeLessThanOrEqual(0.0501);
      }),
    );
  });
});
