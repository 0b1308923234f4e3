import { z } from "zod";
import { PolymerName } from "./polymer.ts";
import {
  CalendarId,
  InsertId,
  LineId,
  LocalDateTime,
  MouldId,
  PoolId,
  ProductId,
  SheetId,
  TrolleyId,
  displayName,
  nonNegative,
  positive,
} from "./scalars.ts";

/** Open time read from the line's handling table: linear between rows, by product depth. */
const HandlingTable = z.object({
  kind: z.literal("table"),
  rows: z
    .array(z.object({ depthMm: nonNegative, openSeconds: positive }))
    .min(1)
    .max(50),
});

/**
 * Open time computed from the drives: platen stroke = depthFactor × depth + clearance, trapezoidal moves;
 * the sheet indexes while the parts leave.
 */
const DriveKinematics = z.object({
  kind: z.literal("drives"),
  strokeDepthFactor: z.number().min(1).max(3),
  strokeClearanceMm: nonNegative,
  platenSpeedMPerS: positive,
  platenAccelerationMPerS2: positive,
  indexSpeedMPerS: positive,
  indexAccelerationMPerS2: positive,
  ejectSeconds: nonNegative,
  /** Overlap of the index with opening and closing, seconds. */
  overlapSeconds: nonNegative,
});

export const OpenTimeModel = z.discriminatedUnion("kind", [HandlingTable, DriveKinematics]);
export type OpenTimeModel = z.infer<typeof OpenTimeModel>;

export const Oven = z.object({
  heatedLengthMm: positive,
  /** Greatest net flux into the sheet, per side, kW/m². */
  maxNetFluxKwPerM2: positive,
});
export type Oven = z.infer<typeof Oven>;

/** What hangs on the line and is threaded through it now; null fields mean nothing mounted or threaded. */
export const MountedState = z.object({
  mouldId: MouldId.nullable(),
  /** 1-based number of the mould copy. */
  copy: z.int().min(1).nullable(),
  insertId: InsertId.nullable(),
  sheetId: SheetId.nullable(),
  productId: ProductId.nullable(),
});
export type MountedState = z.infer<typeof MountedState>;

export const LoadingSide = z.enum(["operator side", "drive side", "both"]);

/** A line that forms and trims in one station and stacks by robot. */
export const FormingLine = z
  .object({
    id: LineId,
    name: displayName,
    calendarId: CalendarId,
    /** Machine direction × across. */
    formingLengthMm: positive,
    formingWidthMm: positive,
    maxDepthDownMm: nonNegative,
    maxDepthUpMm: nonNegative,
    sheetThicknessMinMm: positive,
    sheetThicknessMaxMm: positive,
    sheetWidthMinMm: positive,
    sheetWidthMaxMm: positive,
    trimForceKn: positive,
    formingAirForceKn: positive,
    formingAirMaxBar: positive,
    /** Mass that the line's loading gear carries. */
    maxMouldMassKg: positive,
    oven: Oven,
    polymers: z.array(PolymerName).min(1),
    openTime: OpenTimeModel,
    maxDryCyclesPerMin: positive,
    stackerMaxCyclesPerMin: positive,
    stackerTooling: z.array(displayName),
    /** Own cycle of the rim-rolling unit in machine cycles per minute; null: no unit. */
    rimRollingMaxCyclesPerMin: positive.nullable(),
    rimTooling: z.array(displayName),
    /** Flow of the in-line extruder, kg/h; null: fed from reels. */
    extruderFlowKgPerH: positive.nullable(),
    loadingSide: LoadingSide,
    /** Trolley that mould changes on this line need; null: none. */
    trolleyId: TrolleyId.nullable(),
    operatorPoolId: PoolId.nullable(),
    /** Heads while running; 0.5 = one operator for two lines. Multiples of 0.05. */
    operatorsNeeded: z.number().min(0).max(20).multipleOf(0.05),
    /** Rate really reached over the computed one, setup and scrap apart. */
    performanceFactor: z.number().min(0.05).max(1.2),
    /** A stop longer than this costs a warm-up at the restart. */
    restartLimitMinutes: nonNegative,
    restartWarmUpMinutes: nonNegative,
    meanTimeBetweenFailuresHours: positive.nullable(),
    meanTimeToRepairHours: positive.nullable(),
    mounted: MountedState,
  })
  .refine((line) => line.sheetThicknessMinMm <= line.sheetThicknessMaxMm, {
    path: ["sheetThicknessMaxMm"],
    error: "must not be below sheetThicknessMinMm",
  })
  .refine((line) => line.sheetWidthMinMm <= line.sheetWidthMaxMm, {
    path: ["sheetWidthMaxMm"],
    error: "must not be below sheetWidthMinMm",
  });
export type FormingLine = z.infer<typeof FormingLine>;

/** A line stands in [from, to), by the plant's wall clock. */
export const LineClosure = z.object({
  lineId: LineId,
  from: LocalDateTime,
  to: LocalDateTime,
  reason: displayName,
});
export type LineClosure = z.infer<typeof LineClosure>;
