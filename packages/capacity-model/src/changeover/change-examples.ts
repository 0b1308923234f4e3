import { ChangeoverRules } from "../plant/changeover-rules.ts";
import { FormingLine } from "../plant/forming-line.ts";
import { Mould } from "../plant/mould.ts";
import { Polymer } from "../plant/polymer.ts";
import { Product } from "../plant/product.ts";
import { Sheet } from "../plant/sheet.ts";
import { stateToMake } from "./line-state.ts";
import type { LineState } from "./line-state.ts";
import type { ChangeRequest } from "./planned-task.ts";

/** Records and short cuts that the changeover tests share; invented figures. */
export const rules = ChangeoverRules.parse({
  lineIds: null,
  mouldClasses: [
    { name: "light", upToMassKg: 300, dismountMinutes: 10, mountMinutes: 15 },
    { name: "heavy", upToMassKg: null, dismountMinutes: 20, mountMinutes: 30 },
  ],
  driveSideExtraMinutes: 5,
  insertChangeMinutes: 16,
  stackerToolingMinutes: 18,
  rimToolingMinutes: 25,
  trimSetMinutes: 6,
  spliceMinutes: 2,
  sheetWidthMinutes: 7,
  sheetThicknessMinutes: 4,
  colourLighterToDarkerMinutes: 10,
  colourDarkerToLighterMinutes: 30,
  extruderColourFactor: 3,
  polymerMinutes: 20,
  ovenSoakMinutesPer10K: 8,
  ovenSoakMaxMinutes: 40,
  packingFormatMinutes: 9,
  firstPieceCheckMinutes: 5,
  startUpScrapCyclesMould: 100,
  startUpScrapCyclesSheet: 40,
  carryingMinutes: 15,
});

function polymer(name: Polymer["name"], formingTemperatureC: number, densityKgPerM3: number): Polymer {
  return Polymer.parse({
    name,
    densityKgPerM3,
    conductivityWPerMK: 0.2,
    coolingDiffusivityM2PerS: 9e-8,
    heatToFormKjPerKg: 300,
    formingTemperatureC,
    demouldMeanTemperatureC: 70,
    mouldTemperatureC: 20,
    formingAirBar: 5,
    shearStrengthMpa: 35,
    trimHotFactor: 0.8,
  });
}
export const polymers = [polymer("PP", 158, 905), polymer("PS", 140, 1050)];

export const line = FormingLine.parse({
  id: "L1",
  name: "Line 1",
  calendarId: "C",
  formingLengthMm: 600,
  formingWidthMm: 900,
  maxDepthDownMm: 150,
  maxDepthUpMm: 0,
  sheetThicknessMinMm: 0.3,
  sheetThicknessMaxMm: 2,
  sheetWidthMinMm: 400,
  sheetWidthMaxMm: 950,
  trimForceKn: 700,
  formingAirForceKn: 300,
  formingAirMaxBar: 6,
  maxMouldMassKg: 1500,
  oven: { heatedLengthMm: 4000, maxNetFluxKwPerM2: 20 },
  polymers: ["PP", "PS"],
  openTime: { kind: "table", rows: [{ depthMm: 100, openSeconds: 1.4 }] },
  maxDryCyclesPerMin: 40,
  stackerMaxCyclesPerMin: 40,
  stackerTooling: ["S1", "S2"],
  rimRollingMaxCyclesPerMin: null,
  rimTooling: ["R1"],
  extruderFlowKgPerH: null,
  loadingSide: "operator side",
  trolleyId: "T1",
  operatorPoolId: null,
  operatorsNeeded: 1,
  performanceFactor: 1,
  restartLimitMinutes: 30,
  restartWarmUpMinutes: 10,
  meanTimeBetweenFailuresHours: null,
  meanTimeToRepairHours: null,
  mounted: { mouldId: null, copy: null, insertId: null, sheetId: null, productId: null },
});
export const driveSide: FormingLine = { ...line, loadingSide: "drive side" };
export const withExtruder: FormingLine = { ...line, extruderFlowKgPerH: 1100 };

export function mould(id: string, parts: Partial<Record<keyof Mould, unknown>> = {}): Mould {
  return Mould.parse({
    id,
    name: id,
    family: `family of ${id}`,
    cavitiesAlong: 4,
    cavitiesAcross: 6,
    footprintLengthMm: 500,
    footprintWidthMm: 850,
    indexLengthMm: 520,
    depthMm: 60,
    depthDirection: "down",
    massKg: 200,
    cutLengthPerCavityMm: 250,
    pressurisedAreaCm2: 4000,
    inserts: [],
    copies: 1,
    heatUpMinutes: 35,
    preheatable: true,
    stackerTooling: "S1",
    rimTooling: null,
    approvedLineIds: null,
    serviceAfterCycles: null,
    serviceHours: 0,
    formSeconds: 0.1,
    trimSeconds: 0.08,
    calibrationFactor: 1,
    contactConductanceWPerM2K: null,
    maxCyclesPerMin: 40,
    ...parts,
  });
}

export function sheet(id: string, parts: Partial<Record<keyof Sheet, unknown>> = {}, darkness = 0): Sheet {
  const colour = { name: `shade ${darkness}`, hex: "#ffffff", darkness };
  return Sheet.parse({
    id,
    name: id,
    polymer: "PP",
    thicknessMm: 1,
    widthMm: 930,
    colour,
    reelKg: 600,
    stockKg: null,
    ...parts,
  });
}

export const product = Product.parse({
  id: "P",
  name: "Cup",
  moulds: [{ mouldId: "A", insertId: null }],
  sheetId: "white",
  netMassG: 5,
  wallThicknessMm: 0.5,
  rimRolled: false,
  piecesPerStack: 50,
  stacksPerCarton: 20,
  cartonsPerPallet: 24,
  runScrapShare: 0.02,
  leastRunPieces: 0,
  roundingUnit: "carton",
  conditioningHours: 0,
  stockPieces: 0,
  safetyStockPieces: 0,
});
export const rolled: Product = { ...product, rimRolled: true };

export const white = sheet("white", {}, 10);
export const black = sheet("black", {}, 90);
export const A = mould("A");
export const B = mould("B");
export const heavy = mould("H", { massKg: 800, stackerTooling: "S2" });
export const cold = mould("K", { preheatable: false });
export const onWhite = (which: Mould): LineState =>
  stateToMake({ product, mould: which, insertId: null, sheet: white });

export function request(from: LineState, to: LineState, more: Partial<ChangeRequest> = {}): ChangeRequest {
  return { from, to, line, rules, polymers, setters: 2, ...more };
}
