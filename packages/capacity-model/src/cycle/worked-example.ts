import { FormingLine } from "../plant/forming-line.ts";
import { Mould } from "../plant/mould.ts";
import { Polymer } from "../plant/polymer.ts";
import { Product } from "../plant/product.ts";
import { Sheet } from "../plant/sheet.ts";
import { machineCycle } from "./machine-cycle.ts";
import type { CycleInputs, MachineCycle } from "./machine-cycle.ts";

/**
 * One line, mould, product, sheet and material on which the tests of cycle and fit build: 54 PP cups with a rim of
 * 80 mm and 60 mm deep from sheet 1.0 × 930 mm, advance 520 mm, oven 4.0 m with 14 s of heating, extruder 1,096 kg/h,
 * drives 1.2 m/s and 15 m/s² (platen), 2 m/s and 20 m/s² (index). Invented; no plant has these records.
 */
export const WORKED_EXAMPLE: CycleInputs = {
  line: FormingLine.parse({
    id: "line",
    name: "Example line",
    calendarId: "calendar",
    formingLengthMm: 520,
    formingWidthMm: 880,
    maxDepthDownMm: 150,
    maxDepthUpMm: 40,
    sheetThicknessMinMm: 0.3,
    sheetThicknessMaxMm: 2.2,
    sheetWidthMinMm: 500,
    sheetWidthMaxMm: 960,
    trimForceKn: 600,
    formingAirForceKn: 300,
    formingAirMaxBar: 7,
    maxMouldMassKg: 1500,
    // 905 kg/m³ × 1 mm × 400 kJ/kg in 14 s from both sides
    oven: { heatedLengthMm: 4000, maxNetFluxKwPerM2: (905 * 0.001 * 400) / 28 },
    polymers: ["PP", "PS"],
    openTime: {
      kind: "drives",
      strokeDepthFactor: 2,
      strokeClearanceMm: 40,
      platenSpeedMPerS: 1.2,
      platenAccelerationMPerS2: 15,
      indexSpeedMPerS: 2,
      indexAccelerationMPerS2: 20,
      ejectSeconds: 0.2,
      overlapSeconds: 0,
    },
    maxDryCyclesPerMin: 45,
    stackerMaxCyclesPerMin: 40,
    stackerTooling: ["round 80", "round 95"],
    rimRollingMaxCyclesPerMin: 38,
    rimTooling: ["roll 80"],
    extruderFlowKgPerH: 1096,
    loadingSide: "operator side",
    trolleyId: null,
    operatorPoolId: null,
    operatorsNeeded: 1,
    performanceFactor: 1,
    restartLimitMinutes: 30,
    restartWarmUpMinutes: 10,
    meanTimeBetweenFailuresHours: null,
    meanTimeToRepairHours: null,
    mounted: { mouldId: null, copy: null, insertId: null, sheetId: null, productId: null },
  }),
  mould: Mould.parse({
    id: "mould",
    name: "Example mould",
    family: "round 80",
    cavitiesAlong: 6,
    cavitiesAcross: 9,
    footprintLengthMm: 515,
    footprintWidthMm: 870,
    indexLengthMm: 520,
    depthMm: 60,
    depthDirection: "down",
    massKg: 900,
    cutLengthPerCavityMm: Math.PI * 80,
    pressurisedAreaCm2: 4576,
    inserts: ["plain", "ribbed"],
    copies: 1,
    heatUpMinutes: 15,
    preheatable: true,
    stackerTooling: "round 80",
    rimTooling: "roll 80",
    approvedLineIds: null,
    serviceAfterCycles: null,
    serviceHours: 0,
    formSeconds: 0.1,
    trimSeconds: 0.08,
    calibrationFactor: 1,
    contactConductanceWPerM2K: null,
    maxCyclesPerMin: 45,
  }),
  product: Product.parse({
    id: "product",
    name: "Example cup",
    moulds: [{ mouldId: "mould", insertId: "plain" }],
    sheetId: "sheet",
    netMassG: 4.5,
    wallThicknessMm: 0.5,
    rimRolled: false,
    piecesPerStack: 50,
    stacksPerCarton: 20,
    cartonsPerPallet: 24,
    runScrapShare: 0.02,
    leastRunPieces: 0,
    roundingUnit: "piece",
    conditioningHours: 0,
    stockPieces: 0,
    safetyStockPieces: 0,
  }),
  sheet: Sheet.parse({
    id: "sheet",
    name: "Example sheet",
    polymer: "PP",
    thicknessMm: 1,
    widthMm: 930,
    colour: { name: "natural", hex: "#f4f4f0", darkness: 0 },
    reelKg: 650,
    stockKg: null,
  }),
  polymer: Polymer.parse({
    name: "PP",
    densityKgPerM3: 905,
    conductivityWPerMK: 0.2,
    coolingDiffusivityM2PerS: 9e-8,
    heatToFormKjPerKg: 400,
    formingTemperatureC: 160,
    demouldMeanTemperatureC: 70,
    mouldTemperatureC: 20,
    formingAirBar: 6,
    shearStrengthMpa: 40,
    trimHotFactor: 1,
  }),
};

/** Fields of each record that differ from the worked example's. */
export type ExampleChange = { readonly [Record in keyof CycleInputs]?: Partial<CycleInputs[Record]> };

/** The worked example with some fields of its records changed. */
export function exampleWith(change: ExampleChange): CycleInputs {
  return {
    line: { ...WORKED_EXAMPLE.line, ...change.line },
    mould: { ...WORKED_EXAMPLE.mould, ...change.mould },
    product: { ...WORKED_EXAMPLE.product, ...change.product },
    sheet: { ...WORKED_EXAMPLE.sheet, ...change.sheet },
    polymer: { ...WORKED_EXAMPLE.polymer, ...change.polymer },
  };
}

/** The computed cycle of inputs that a test knows to be possible; a fault is a bug of the test or of the model. */
export function soundCycle(inputs: CycleInputs): MachineCycle {
  const cycle = machineCycle(inputs);
  invariant(cycle.kind === "cycle", "the inputs of soundCycle have a cycle");
  return cycle;
}

function invariant(holds: boolean, promise: string): asserts holds {
  if (!holds) throw new Error(`Broken promise: ${promise}.`);
}
