import { FormingLine, LineClosure } from "@formweek/capacity-model";

interface LineRow {
  readonly id: string;
  readonly calendarId: string;
  readonly size: "large" | "medium";
  /** Narrowest sheet. */
  readonly sheetFromMm: number;
  readonly heatedLengthMm: number;
  readonly maxDepthDownMm: number;
  readonly trimForceKn: number;
  readonly rimRolling: boolean;
  readonly extruderFlowKgPerH: number | null;
  readonly stackerTooling: readonly string[];
  readonly maxDryCyclesPerMin: number;
  readonly operatorsNeeded: number;
  readonly performanceFactor: number;
  readonly mounted: {
    readonly mouldId: string;
    readonly sheetId: string;
    readonly productId: string;
    readonly insertId?: string;
  };
}

const rimSets = ["rim 70", "rim 75", "rim 80", "rim 95"];
const rows: readonly LineRow[] = [
  {
    id: "L1",
    calendarId: "three-shift",
    size: "large",
    sheetFromMm: 780,
    heatedLengthMm: 5200,
    maxDepthDownMm: 150,
    trimForceKn: 750,
    rimRolling: true,
    extruderFlowKgPerH: null,
    stackerTooling: ["round"],
    maxDryCyclesPerMin: 42,
    operatorsNeeded: 0.75,
    performanceFactor: 0.92,
    mounted: { mouldId: "C75-60-070", sheetId: "PP12-930-white", productId: "C75-60-070 white" },
  },
  {
    id: "L2",
    calendarId: "three-shift",
    size: "large",
    sheetFromMm: 480,
    heatedLengthMm: 5200,
    maxDepthDownMm: 150,
    trimForceKn: 750,
    rimRolling: true,
    extruderFlowKgPerH: null,
    stackerTooling: ["round", "tray"],
    maxDryCyclesPerMin: 40,
    operatorsNeeded: 0.75,
    performanceFactor: 0.9,
    mounted: { mouldId: "C70-66-080", sheetId: "PP12-930-natural", productId: "C70-66-080 natural" },
  },
  {
    id: "L3",
    calendarId: "continuous",
    size: "large",
    sheetFromMm: 780,
    heatedLengthMm: 4600,
    maxDepthDownMm: 160,
    trimForceKn: 800,
    rimRolling: true,
    extruderFlowKgPerH: 640,
    stackerTooling: ["round"],
    maxDryCyclesPerMin: 44,
    operatorsNeeded: 0.75,
    performanceFactor: 0.93,
    mounted: { mouldId: "C95-40-110", sheetId: "PP12-930-white", productId: "C95-40-110 white" },
  },
  {
    id: "L4",
    calendarId: "three-shift",
    size: "medium",
    sheetFromMm: 480,
    heatedLengthMm: 3800,
    maxDepthDownMm: 140,
    trimForceKn: 520,
    rimRolling: true,
    extruderFlowKgPerH: null,
    stackerTooling: ["round", "tray"],
    maxDryCyclesPerMin: 42,
    operatorsNeeded: 0.75,
    performanceFactor: 0.9,
    mounted: { mouldId: "C75-40-085", sheetId: "PP14-730-white", productId: "C75-40-085 white" },
  },
  {
    id: "L5",
    calendarId: "three-shift",
    size: "medium",
    sheetFromMm: 480,
    heatedLengthMm: 1600,
    maxDepthDownMm: 140,
    trimForceKn: 520,
    rimRolling: true,
    extruderFlowKgPerH: null,
    stackerTooling: ["round"],
    maxDryCyclesPerMin: 42,
    operatorsNeeded: 0.75,
    performanceFactor: 0.89,
    mounted: { mouldId: "C80-35-110", sheetId: "PP14-730-green", productId: "C80-35-110 green" },
  },
  {
    id: "L6",
    calendarId: "three-shift",
    size: "medium",
    sheetFromMm: 480,
    heatedLengthMm: 3600,
    maxDepthDownMm: 110,
    trimForceKn: 450,
    rimRolling: false,
    extruderFlowKgPerH: null,
    stackerTooling: ["round", "tray"],
    maxDryCyclesPerMin: 38,
    operatorsNeeded: 0.5,
    performanceFactor: 0.88,
    mounted: { mouldId: "R190-8-040", sheetId: "APET04-730-clear", productId: "R190-8-040 clear" },
  },
  {
    id: "L7",
    calendarId: "two-shift",
    size: "medium",
    sheetFromMm: 480,
    heatedLengthMm: 3000,
    maxDepthDownMm: 60,
    trimForceKn: 420,
    rimRolling: false,
    extruderFlowKgPerH: null,
    stackerTooling: ["round", "tray"],
    maxDryCyclesPerMin: 50,
    operatorsNeeded: 0.5,
    performanceFactor: 0.9,
    mounted: {
      mouldId: "L95-30-012",
      sheetId: "APET04-730-clear",
      productId: "L95-30-012 clear plain",
      insertId: "plain",
    },
  },
  {
    id: "L8",
    calendarId: "three-shift",
    size: "large",
    sheetFromMm: 780,
    heatedLengthMm: 4200,
    maxDepthDownMm: 190,
    trimForceKn: 650,
    rimRolling: false,
    extruderFlowKgPerH: null,
    stackerTooling: ["round", "tray"],
    maxDryCyclesPerMin: 34,
    operatorsNeeded: 0.75,
    performanceFactor: 0.87,
    mounted: { mouldId: "T120-24-100", sheetId: "PP15-930-white", productId: "T120-24-100 white" },
  },
];

/** Eight lines of the demo plant; every figure invented. */
export const demoLines: readonly FormingLine[] = rows.map((row) => {
  const large = row.size === "large";
  return FormingLine.parse({
    id: row.id,
    name: `Line ${row.id.slice(1)}`,
    calendarId: row.calendarId,
    formingLengthMm: large ? 560 : 480,
    formingWidthMm: large ? 900 : 710,
    maxDepthDownMm: row.maxDepthDownMm,
    maxDepthUpMm: 40,
    sheetThicknessMinMm: 0.25,
    sheetThicknessMaxMm: large ? 2.2 : 1.6,
    sheetWidthMinMm: row.sheetFromMm,
    sheetWidthMaxMm: large ? 960 : 760,
    trimForceKn: row.trimForceKn,
    formingAirForceKn: large ? 420 : 300,
    formingAirMaxBar: 6,
    maxMouldMassKg: large ? 1400 : 1000,
    oven: { heatedLengthMm: row.heatedLengthMm, maxNetFluxKwPerM2: 22 },
    polymers: ["PP", "PS", "APET"],
    openTime:
      row.extruderFlowKgPerH === null
        ? {
            kind: "table",
            rows: [
              { depthMm: 0, openSeconds: 1.05 },
              { depthMm: 60, openSeconds: 1.2 },
              { depthMm: 120, openSeconds: 1.5 },
              { depthMm: 200, openSeconds: 1.9 },
            ],
          }
        : {
            kind: "drives",
            strokeDepthFactor: 2,
            strokeClearanceMm: 40,
            platenSpeedMPerS: 1.1,
            platenAccelerationMPerS2: 12,
            indexSpeedMPerS: 1.8,
            indexAccelerationMPerS2: 16,
            ejectSeconds: 0.5,
            overlapSeconds: 0,
          },
    maxDryCyclesPerMin: row.maxDryCyclesPerMin,
    stackerMaxCyclesPerMin: large ? 38 : 40,
    stackerTooling: row.stackerTooling,
    rimRollingMaxCyclesPerMin: row.rimRolling ? 36 : null,
    rimTooling: row.rimRolling ? rimSets : [],
    extruderFlowKgPerH: row.extruderFlowKgPerH,
    loadingSide: row.id === "L3" || row.id === "L8" ? "drive side" : "operator side",
    trolleyId: "trolley",
    operatorPoolId: "operators",
    operatorsNeeded: row.operatorsNeeded,
    performanceFactor: row.performanceFactor,
    restartLimitMinutes: 240,
    restartWarmUpMinutes: 30,
    meanTimeBetweenFailuresHours: 60,
    meanTimeToRepairHours: 1.5,
    mounted: { insertId: null, ...row.mounted, copy: 1 },
  });
});

/** The breakdown week: line 4's drive fails on Tuesday and is back on Thursday. */
export const demoBreakdown: readonly LineClosure[] = [
  LineClosure.parse({
    lineId: "L4",
    from: "2026-12-01T09:30",
    to: "2026-12-03T14:00",
    reason: "index drive failed",
  }),
];
