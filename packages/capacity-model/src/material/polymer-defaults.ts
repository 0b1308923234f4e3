import type { Polymer, PolymerName } from "../plant/polymer.ts";

/** Share of the room-temperature shear strength left while trimming in the warm mould; common practice 0.6…0.9, no source. */
const TRIM_HOT_FACTOR = 0.75;

/**
 * Property table to start a plant from; every value is editable and none is a fact about a given sheet.
 *
 * Density and conductivity: Crawford, *Plastics Engineering*, Table 1.8; PLA from memory. Cooling diffusivity: a
 * compromise of common practice between k/(ρ·c) and the printed tables, no source; for PP it holds crystallisation only
 * roughly. Heat to form, forming, mould and demould temperatures: middle of the ranges remembered from Throne and from
 * Schwarzmann (from memory). Forming air: PP from a processing guide (5 bar and more), the others from memory.
 * Shear strength: from memory, ± 30 %; it depends on thickness and edge, so a trial cut wins.
 */
export const POLYMER_DEFAULTS: Readonly<Record<PolymerName, Readonly<Polymer>>> = {
  PP: {
    name: "PP",
    densityKgPerM3: 905,
    conductivityWPerMK: 0.2,
    coolingDiffusivityM2PerS: 0.9e-7,
    heatToFormKjPerKg: 400,
    formingTemperatureC: 160,
    demouldMeanTemperatureC: 80,
    mouldTemperatureC: 20,
    formingAirBar: 6,
    shearStrengthMpa: 35,
    trimHotFactor: TRIM_HOT_FACTOR,
  },
  PS: {
    name: "PS",
    densityKgPerM3: 1050,
    conductivityWPerMK: 0.15,
    coolingDiffusivityM2PerS: 0.9e-7,
    heatToFormKjPerKg: 205,
    formingTemperatureC: 145,
    demouldMeanTemperatureC: 75,
    mouldTemperatureC: 30,
    formingAirBar: 3,
    shearStrengthMpa: 30,
    trimHotFactor: TRIM_HOT_FACTOR,
  },
  APET: {
    name: "APET",
    densityKgPerM3: 1360,
    conductivityWPerMK: 0.2,
    coolingDiffusivityM2PerS: 0.9e-7,
    heatToFormKjPerKg: 125,
    formingTemperatureC: 110,
    demouldMeanTemperatureC: 60,
    mouldTemperatureC: 20,
    formingAirBar: 3.5,
    shearStrengthMpa: 55,
    trimHotFactor: TRIM_HOT_FACTOR,
  },
  PLA: {
    name: "PLA",
    densityKgPerM3: 1245,
    conductivityWPerMK: 0.13,
    coolingDiffusivityM2PerS: 0.8e-7,
    heatToFormKjPerKg: 130,
    formingTemperatureC: 95,
    demouldMeanTemperatureC: 44,
    mouldTemperatureC: 20,
    formingAirBar: 3,
    shearStrengthMpa: 50,
    trimHotFactor: TRIM_HOT_FACTOR,
  },
  HDPE: {
    name: "HDPE",
    densityKgPerM3: 950,
    conductivityWPerMK: 0.25,
    coolingDiffusivityM2PerS: 1.0e-7,
    heatToFormKjPerKg: 500,
    formingTemperatureC: 160,
    demouldMeanTemperatureC: 82,
    mouldTemperatureC: 40,
    formingAirBar: 4,
    shearStrengthMpa: 25,
    trimHotFactor: TRIM_HOT_FACTOR,
  },
  PVC: {
    name: "PVC",
    densityKgPerM3: 1400,
    conductivityWPerMK: 0.16,
    coolingDiffusivityM2PerS: 0.9e-7,
    heatToFormKjPerKg: 135,
    formingTemperatureC: 130,
    demouldMeanTemperatureC: 65,
    mouldTemperatureC: 30,
    formingAirBar: 3,
    shearStrengthMpa: 45,
    trimHotFactor: TRIM_HOT_FACTOR,
  },
};
