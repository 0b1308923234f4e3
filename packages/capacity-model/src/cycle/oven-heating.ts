import type { Oven } from "../plant/forming-line.ts";
import type { Polymer } from "../plant/polymer.ts";
import type { CycleFault } from "./cycle-fault.ts";

/** Stefan–Boltzmann constant, W/(m²·K⁴), CODATA. */
const STEFAN_BOLTZMANN = 5.670374419e-8;

/** Hottest heater face that ovens for thin sheet reach, °C; common practice, no source. */
const HOTTEST_HEATER_C = 900;

/** Radiant flux of a black body, kW/m², at a temperature in °C above absolute zero: σ·T⁴. */
export function blackBodyFluxKwPerM2(temperatureC: number): number {
  const kelvin = temperatureC + 273.15;
  return (STEFAN_BOLTZMANN * kelvin * kelvin * kelvin * kelvin) / 1000;
}

/** Share of a heater's ideal or rated flux that really arrives; both fluxes in one unit, the second positive. */
export function heaterEfficiency(measuredFlux: number, idealFlux: number): number {
  return measuredFlux / idealFlux;
}

/** A heating task: sheet, material, oven and the advance per cycle. */
export interface Heating {
  readonly thicknessMm: number;
  readonly polymer: Polymer;
  readonly oven: Oven;
  readonly indexLengthMm: number;
}

/** Whole shots that lie in the oven at once; 0 when the advance is longer than the oven. */
export function ovenPositions(oven: Pick<Oven, "heatedLengthMm">, indexLengthMm: number): number {
  return Math.floor(oven.heatedLengthMm / indexLengthMm + 1e-9);
}

/**
 * Seconds from room to forming temperature at the oven's greatest net flux from both sides: ρ·s·ΔH/(2q). Thin sheet is
 * taken as one temperature: below 1.5 mm its core lags by less than some 10 K (Throne).
 */
export function heatingSeconds({ thicknessMm, polymer, oven }: Omit<Heating, "indexLengthMm">): number {
  return (
    (polymer.densityKgPerM3 * (thicknessMm / 1000) * polymer.heatToFormKjPerKg) / (2 * oven.maxNetFluxKwPerM2)
  );
}

/** Why the oven cannot feed this advance; empty when it can. */
export function heatingFaults({
  oven,
  indexLengthMm,
}: Pick<Heating, "oven" | "indexLengthMm">): readonly CycleFault[] {
  const faults: CycleFault[] = [];
  if (ovenPositions(oven, indexLengthMm) < 1)
    faults.push({
      code: "index-longer-than-oven",
      cause: `The sheet advances ${indexLengthMm} mm per cycle, more than the ${oven.heatedLengthMm} mm of heated length: part of each shot would stay cold.`,
      remedy: "Run the mould on a line with a longer oven, or correct the advance or the heated length.",
      numbers: { indexLengthMm, heatedLengthMm: oven.heatedLengthMm },
    });
  const mostFlux = blackBodyFluxKwPerM2(HOTTEST_HEATER_C);
  if (oven.maxNetFluxKwPerM2 > mostFlux)
    faults.push({
      code: "oven-flux-beyond-radiation",
      cause: `A net flux of ${oven.maxNetFluxKwPerM2} kW/m² per side is more than a black body at ${HOTTEST_HEATER_C} °C gives off (${mostFlux.toFixed(1)} kW/m²).`,
      remedy: "Enter the net flux into the sheet per side, in kW/m²; 10 to 40 is usual for thin sheet.",
      numbers: { maxNetFluxKwPerM2: oven.maxNetFluxKwPerM2, blackBodyFluxKwPerM2: mostFlux },
    });
  return faults;
}
