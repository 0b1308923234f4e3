import { describe, expect, it } from "vitest";
import { POLYMER_DEFAULTS } from "../material/polymer-defaults.ts";
import {
  blackBodyFluxKwPerM2,
  heaterEfficiency,
  heatingFaults,
  heatingSeconds,
  ovenPositions,
} from "./oven-heating.ts";

describe("radiation", () => {
  it("CV-17 black body at 900 °C", () => {
    // Throne, Technology of Thermoforming, chapter 3: 107.4 kW/m²; 0.1 %
    expect(Math.abs(blackBodyFluxKwPerM2(900) / 107.4 - 1)).toBeLessThan(1e-3);
  });

  it("follows σT⁴ at lower heater temperatures", () => {
    // derived with the CODATA constant
    const rows = [
      [300, 6.12],
      [400, 11.64],
      [500, 20.26],
      [600, 32.96],
    ] as const;
    for (const [celsius, flux] of rows) expect(blackBodyFluxKwPerM2(celsius)).toBeCloseTo(flux, 2);
  });

  it("CV-18 heater efficiencies", () => {
    // Throne, worked example: 3.83 W/in² measured against 4.42 ideal and 8 rated; half a point
    expect(Math.abs(heaterEfficiency(3.83, 4.42) - 0.87)).toBeLessThan(0.005);
    expect(Math.abs(heaterEfficiency(3.83, 8) - 0.479)).toBeLessThan(0.005);
  });
});

describe("oven", () => {
  it("CV-06 oven limit", () => {
    // derived: 4.0 m over 0.52 m, 14 s
    const positions = ovenPositions({ heatedLengthMm: 4000 }, 520);
    expect(positions).toBe(7);
    expect(14 / positions).toBe(2);
    expect(60 / (14 / positions)).toBe(30);
  });

  it("counts only whole shots, without losing one to rounding", () => {
    expect(ovenPositions({ heatedLengthMm: 4000 }, 500)).toBe(8);
    // 0.7 / 0.1 is 6.999… in binary
    expect(ovenPositions({ heatedLengthMm: 0.7 }, 0.1)).toBe(7);
    expect(ovenPositions({ heatedLengthMm: 3999 }, 500)).toBe(7);
    expect(ovenPositions({ heatedLengthMm: 400 }, 500)).toBe(0);
  });

  it.each([
    // derived with 20 kW/m² per side; heat to form from memory
    ["PP", 0.8, 400, 7.24],
    ["PS", 0.8, 220, 4.62],
    ["APET", 0.4, 120, 1.63],
  ] as const)("heats %s %s mm by ρ·s·ΔH over the flux of both sides", (name, thicknessMm, heat, seconds) => {
    const polymer = { ...POLYMER_DEFAULTS[name], heatToFormKjPerKg: heat };
    expect(
      heatingSeconds({ thicknessMm, polymer, oven: { heatedLengthMm: 4000, maxNetFluxKwPerM2: 20 } }),
    ).toBeCloseTo(seconds, 2);
  });

  it("names an advance longer than the oven and a flux beyond radiation", () => {
    expect(
      heatingFaults({ oven: { heatedLengthMm: 4000, maxNetFluxKwPerM2: 20 }, indexLengthMm: 4000 }),
    ).toEqual([]);
    const faults = heatingFaults({
      oven: { heatedLengthMm: 500, maxNetFluxKwPerM2: 300 },
      indexLengthMm: 520,
    });
    expect(faults.map((fault) => fault.code)).toEqual([
      "index-longer-than-oven",
      "oven-flux-beyond-radiation",
    ]);
    expect(faults[0]?.numbers).toEqual({ indexLengthMm: 520, heatedLengthMm: 500 });
  });
});
