import { describe, expect, it } from "vitest";
import fc from "fast-check";
import { propertySeed, SEED_VARIABLE } from "../helpers/property-seed.ts";

describe("the seed of properties that name none", () => {
  it("is the same in every run where no other is asked for", () => {
    expect(propertySeed(undefined)).toBe(propertySeed(""));
  });
  it("is the one asked for, or any", () => {
    expect(propertySeed("-7")).toBe(-7);
    const drawn = Array.from({ length: 20 }, () => propertySeed("random"));
    expect(new Set(drawn).size).toBeGreaterThan(10);
    for (const seed of drawn) expect(propertySeed(String(seed))).toBe(seed);
  });
  it.each(["nightly", "1.5", "1e10", "NaN"])("is not %s", (wish) => {
    expect(() => propertySeed(wish)).toThrow(wish);
  });
  it("is that of the run in every test file", () => {
    expect(fc.readConfigureGlobal().seed).toBe(Number(process.env[SEED_VARIABLE]));
  });
});
