import { ChangeoverRules } from "@formweek/capacity-model";

const plantWide = {
  lineIds: null,
  mouldClasses: [
    { name: "light", upToMassKg: 500, dismountMinutes: 12, mountMinutes: 18 },
    { name: "medium", upToMassKg: 800, dismountMinutes: 15, mountMinutes: 24 },
    { name: "heavy", upToMassKg: null, dismountMinutes: 20, mountMinutes: 32 },
  ],
  driveSideExtraMinutes: 5,
  insertChangeMinutes: 25,
  stackerToolingMinutes: 15,
  rimToolingMinutes: 20,
  trimSetMinutes: 0,
  spliceMinutes: 6,
  sheetWidthMinutes: 10,
  sheetThicknessMinutes: 5,
  colourLighterToDarkerMinutes: 8,
  colourDarkerToLighterMinutes: 25,
  extruderColourFactor: 2,
  polymerMinutes: 20,
  ovenSoakMinutesPer10K: 4,
  ovenSoakMaxMinutes: 35,
  packingFormatMinutes: 5,
  firstPieceCheckMinutes: 10,
  startUpScrapCyclesMould: 80,
  startUpScrapCyclesSheet: 25,
  carryingMinutes: 10,
};

/** One set of durations for the demo plant; invented, to be replaced by a plant's own logged changes. */
export const demoChangeoverRules: readonly ChangeoverRules[] = [ChangeoverRules.parse(plantWide)];
