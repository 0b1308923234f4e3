import { z } from "zod";
import { LineId, displayName, nonNegative, positive } from "./scalars.ts";

/** Mass bounds that sort moulds into classes with their own durations; ascending, the last open-ended (null). */
const MouldClassMinutes = z.object({
  name: displayName,
  upToMassKg: positive.nullable(),
  dismountMinutes: nonNegative,
  mountMinutes: nonNegative,
});

/** Durations of the tasks of a change; one set for the plant, or one for named lines that differ. */
export const ChangeoverRules = z.object({
  /** Lines that these durations hold for; null: every line without a set of its own. */
  lineIds: z.array(LineId).nullable(),
  mouldClasses: z.array(MouldClassMinutes).min(1).max(10),
  /** Added to mount and dismount on lines loaded from the drive side. */
  driveSideExtraMinutes: nonNegative,
  insertChangeMinutes: nonNegative,
  stackerToolingMinutes: nonNegative,
  rimToolingMinutes: nonNegative,
  trimSetMinutes: nonNegative,
  spliceMinutes: nonNegative,
  sheetWidthMinutes: nonNegative,
  sheetThicknessMinutes: nonNegative,
  colourLighterToDarkerMinutes: nonNegative,
  colourDarkerToLighterMinutes: nonNegative,
  /**
   * Ranks of darkness for which the colour minutes hold; a greater difference takes in proportion longer. Left out: the
   * minutes hold for any difference.
   */
  colourStepRanks: positive.max(100).optional(),
  /** Factor on colour minutes where the sheet comes from an in-line extruder. */
  extruderColourFactor: z.number().min(1).max(20),
  polymerMinutes: nonNegative,
  ovenSoakMinutesPer10K: nonNegative,
  ovenSoakMaxMinutes: nonNegative,
  packingFormatMinutes: nonNegative,
  firstPieceCheckMinutes: nonNegative,
  /** Cycles thrown away at a start after a mould change, and after a sheet change alone. */
  startUpScrapCyclesMould: nonNegative,
  startUpScrapCyclesSheet: nonNegative,
  carryingMinutes: nonNegative,
});
export type ChangeoverRules = z.infer<typeof ChangeoverRules>;
