import { describe, expect, it } from "vitest";
import { Polymer, PolymerName } from "../plant/polymer.ts";
import { POLYMER_DEFAULTS } from "./polymer-defaults.ts";
import { lengthOfMassM, minutesToReelEnd, reelLengthM, reelMassKg, shotsInLength } from "./reel.ts";

const REEL = {
  outerDiameterMm: 1000,
  coreDiameterMm: 152,
  thicknessMm: 1,
  widthMm: 930,
  densityKgPerM3: 905,
};

describe("reel", () => {
  it("CV-23 reel", () => {
    // derived from the wound ring; 1e-3
    expect(Math.abs(reelLengthM(REEL) / 767.25 - 1)).toBeLessThan(1e-3);
    expect(Math.abs(reelMassKg(REEL) / 645.8 - 1)).toBeLessThan(1e-3);
    expect(shotsInLength(reelLengthM(REEL), 520)).toBe(1475);
    expect(minutesToReelEnd(1475, 35)).toBeCloseTo(42.14, 2);
  });

  it("meets the second worked reel, 1.2 m of 0.8 mm sheet", () => {
    // derived: 1,391 m, 937 kg, 76.4 min at 35 cycles/min
    const reel = { ...REEL, outerDiameterMm: 1200, thicknessMm: 0.8 };
    expect(reelLengthM(reel)).toBeCloseTo(1391, 0);
    expect(Math.abs(reelMassKg(reel) - 937)).toBeLessThan(0.5);
    expect(Math.abs(minutesToReelEnd(shotsInLength(reelLengthM(reel), 520), 35) - 76.4)).toBeLessThan(0.05);
  });

  it("finds the length again from the mass, and nothing on a bare core", () => {
    expect(lengthOfMassM({ ...REEL, massKg: reelMassKg(REEL) })).toBeCloseTo(reelLengthM(REEL), 9);
    expect(reelLengthM({ ...REEL, outerDiameterMm: 152 })).toBe(0);
    expect(shotsInLength(0, 520)).toBe(0);
    expect(shotsInLength(5.2, 520)).toBe(10);
  });
});

describe("polymer defaults", () => {
  it.each(PolymerName.options)("%s is a sound record whose temperatures can form and demould", (name) => {
    const polymer = POLYMER_DEFAULTS[name];
    expect(Polymer.parse(polymer)).toEqual(polymer);
    expect(polymer.name).toBe(name);
    expect(polymer.formingTemperatureC).toBeGreaterThan(polymer.demouldMeanTemperatureC);
    expect(polymer.demouldMeanTemperatureC).toBeGreaterThan(polymer.mouldTemperatureC);
  });

  it.each([
    // density in g/cc: ranges of a public plastics table (PLA from memory, so not among them)
    ["PP", 900, 910],
    ["PS", 1040, 1050],
    ["APET", 1290, 1400],
    ["HDPE", 950, 965],
    ["PVC", 1300, 1580],
  ] as const)("%s has a density inside the published range", (name, least, most) => {
    expect(POLYMER_DEFAULTS[name].densityKgPerM3).toBeGreaterThanOrEqual(least);
    expect(POLYMER_DEFAULTS[name].densityKgPerM3).toBeLessThanOrEqual(most);
  });
});
