import { z } from "zod";
import { InsertId, LineId, LocalDateTime, MouldId, displayName, nonNegative, positive } from "./scalars.ts";

/** A spell in which one copy (or every copy, copy null) of a mould cannot run, by the plant's wall clock. */
export const OutOfService = z.object({
  copy: z.int().min(1).nullable(),
  from: LocalDateTime,
  to: LocalDateTime,
  reason: displayName,
});
export type OutOfService = z.infer<typeof OutOfService>;

/** A form-and-trim mould; `copies` identical sets exist, each on one line at a time. */
export const Mould = z.object({
  id: MouldId,
  name: displayName,
  /** Moulds of one family share base and bolster: a change inside it is an insert change. */
  family: displayName,
  /** Along the machine direction × across. */
  cavitiesAlong: z.int().min(1).max(60),
  cavitiesAcross: z.int().min(1).max(60),
  footprintLengthMm: positive,
  footprintWidthMm: positive,
  /** Sheet advance per cycle. */
  indexLengthMm: positive,
  depthMm: nonNegative,
  depthDirection: z.enum(["down", "up"]),
  massKg: positive,
  cutLengthPerCavityMm: positive,
  /** Area under forming air, all cavities, cm². */
  pressurisedAreaCm2: positive,
  inserts: z.array(InsertId).max(30),
  copies: z.int().min(1).max(20),
  /** Time to bring the mould to temperature on the line when it was not preheated. */
  heatUpMinutes: nonNegative,
  /** It can be preheated beside the line, so its heat-up leaves the change. */
  preheatable: z.boolean(),
  stackerTooling: displayName,
  rimTooling: displayName.nullable(),
  /** Lines it is approved on; null: every line that it fits. */
  approvedLineIds: z.array(LineId).nullable(),
  outOfService: z.array(OutOfService).max(200).default([]),
  serviceAfterCycles: z.int().min(1).nullable(),
  serviceHours: nonNegative,
  /** Cycles of each copy since its last service, at the start of planning; copies without an entry: 0. */
  cyclesSinceService: z.array(z.int().min(0)).max(20).default([]),
  formSeconds: positive,
  trimSeconds: positive,
  /** Stabilising time really needed over the ideal one; one factor per mould, from one measured cycle. */
  calibrationFactor: z.number().min(0.2).max(10),
  /** Contact conductance sheet to mould, W/(m²K); null: ideal contact. */
  contactConductanceWPerM2K: positive.nullable(),
  maxCyclesPerMin: positive,
});
export type Mould = z.infer<typeof Mould>;
