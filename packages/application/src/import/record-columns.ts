import { column, optional } from "./column-spec.ts";
import type { ColumnSpec } from "./column-spec.ts";

export const id = (name: string): ColumnSpec =>
  column([name, `${name} id`, "id", "code"], "id", "text", `Short id of the ${name}.`);
export const named = column(["name", "description", "title"], "name", "text", "Name for people.");

/** Numbers that a record simply has: header, field, meaning. */
export const decimals = (
  rows: readonly (readonly [header: string, field: string, meaning: string])[],
): readonly ColumnSpec[] =>
  rows.map(([header, field, meaning]) => column([header], field, "decimal", meaning));

export const lineColumns: readonly ColumnSpec[] = [
  id("line"),
  named,
  column(["calendar"], "calendarId", "text", "Calendar that it works by."),
  ...decimals([
    ["forming length mm", "formingLengthMm", "Forming area in machine direction."],
    ["forming width mm", "formingWidthMm", "Forming area across."],
    ["depth down mm", "maxDepthDownMm", "Greatest depth below the web."],
    ["depth up mm", "maxDepthUpMm", "Greatest depth above the web."],
    ["thickness from mm", "sheetThicknessMinMm", "Thinnest sheet."],
    ["thickness to mm", "sheetThicknessMaxMm", "Thickest sheet."],
    ["width from mm", "sheetWidthMinMm", "Narrowest sheet."],
    ["width to mm", "sheetWidthMaxMm", "Widest sheet."],
    ["trim force kn", "trimForceKn", "Rated trimming force."],
    ["air force kn", "formingAirForceKn", "Locking force against forming air."],
    ["air bar", "formingAirMaxBar", "Greatest forming-air pressure."],
    ["mould mass kg", "maxMouldMassKg", "Heaviest mould that its gear carries."],
    ["oven length mm", "oven.heatedLengthMm", "Heated length."],
    ["oven flux kw m2", "oven.maxNetFluxKwPerM2", "Greatest net flux into the sheet, per side."],
  ]),
  column(["polymers"], "polymers", "list", "Polymers it may run, parted by semicolons."),
  column(["dry cycles per min", "max cycles per min"], "maxDryCyclesPerMin", "decimal", "Fastest dry cycle."),
  column(["stacker cycles per min"], "stackerMaxCyclesPerMin", "decimal", "Fastest stacker cycle."),
  column(["stacker tooling"], "stackerTooling", "list", "Stacker tooling it takes."),
  optional(
    column(
      ["rim cycles per min"],
      "rimRollingMaxCyclesPerMin",
      "decimal",
      "Rim rolling, machine cycles; blank: no unit.",
    ),
    null,
  ),
  optional(column(["rim tooling"], "rimTooling", "list", "Rim tooling it takes."), []),
  optional(
    column(
      ["extruder kg per h"],
      "extruderFlowKgPerH",
      "decimal",
      "In-line extruder; blank: fed from reels.",
    ),
    null,
  ),
  column(["loading side"], "loadingSide", "text", "operator side, drive side or both."),
  optional(column(["trolley"], "trolleyId", "text", "Trolley that mould changes need."), null),
  optional(
    column(["operators from", "operator pool"], "operatorPoolId", "text", "Pool of its operators."),
    null,
  ),
  optional(
    column(["operators"], "operatorsNeeded", "decimal", "Heads while running; 0.5 is one for two lines."),
    0,
  ),
  optional(
    column(["performance"], "performanceFactor", "decimal", "Rate really reached over the computed one."),
    1,
  ),
  optional(
    column(["restart limit min"], "restartLimitMinutes", "decimal", "A longer stop costs a warm-up."),
    0,
  ),
  optional(column(["restart warm up min"], "restartWarmUpMinutes", "decimal", "Length of that warm-up."), 0),
  optional(
    column(["mtbf h"], "meanTimeBetweenFailuresHours", "decimal", "Mean time between failures."),
    null,
  ),
  optional(column(["mttr h"], "meanTimeToRepairHours", "decimal", "Mean time to repair."), null),
  optional(column(["mounted mould"], "mounted.mouldId", "text", "What hangs there now."), null),
  optional(column(["mounted copy"], "mounted.copy", "whole", "Which copy, from 1."), null),
  optional(column(["mounted insert"], "mounted.insertId", "text", "Insert of it."), null),
  optional(column(["mounted sheet"], "mounted.sheetId", "text", "Sheet threaded now."), null),
  optional(column(["mounted product"], "mounted.productId", "text", "Product run last."), null),
];

export const driveColumns: readonly ColumnSpec[] = [
  column(["line"], "lineId", "text", "Line that the drives belong to."),
  ...decimals([
    ["stroke depth factor", "strokeDepthFactor", "Platen stroke per depth, 1 to 3."],
    ["stroke clearance mm", "strokeClearanceMm", "Added to the stroke."],
    ["platen speed m s", "platenSpeedMPerS", "Greatest platen speed."],
    ["platen acceleration m s2", "platenAccelerationMPerS2", "Platen acceleration."],
    ["index speed m s", "indexSpeedMPerS", "Greatest chain speed."],
    ["index acceleration m s2", "indexAccelerationMPerS2", "Chain acceleration."],
    ["eject s", "ejectSeconds", "Taking the parts out."],
    ["overlap s", "overlapSeconds", "Index that runs during opening and closing."],
  ]),
];

export const mouldColumns: readonly ColumnSpec[] = [
  id("mould"),
  named,
  column(["family", "base"], "family", "text", "Moulds of one family share base and bolster."),
  column(["cavities along"], "cavitiesAlong", "whole", "In machine direction."),
  column(["cavities across"], "cavitiesAcross", "whole", "Across the sheet."),
  ...decimals([
    ["length mm", "footprintLengthMm", "Footprint in machine direction."],
    ["width mm", "footprintWidthMm", "Footprint across."],
    ["index mm", "indexLengthMm", "Sheet advance per cycle."],
    ["depth mm", "depthMm", "Part depth."],
  ]),
  optional(column(["depth direction"], "depthDirection", "text", "down or up."), "down"),
  ...decimals([
    ["mass kg", "massKg", "Whole mould."],
    ["cut length mm", "cutLengthPerCavityMm", "Trimmed edge per cavity."],
    ["air area cm2", "pressurisedAreaCm2", "Area under forming air, all cavities."],
  ]),
  optional(column(["inserts"], "inserts", "list", "Insert variants, parted by semicolons."), []),
  optional(column(["copies"], "copies", "whole", "Identical sets."), 1),
  column(["heat up min"], "heatUpMinutes", "decimal", "On the line, when not preheated."),
  optional(column(["preheatable"], "preheatable", "yes-no", "Can be preheated beside the line."), false),
  column(["stacker tooling"], "stackerTooling", "text", "Stacker tooling it needs."),
  optional(column(["rim tooling"], "rimTooling", "text", "Rim tooling it needs."), null),
  optional(column(["approved lines"], "approvedLineIds", "list", "Blank: every line that it fits."), null),
  optional(
    column(["service after cycles"], "serviceAfterCycles", "whole", "Blank: no service counter."),
    null,
  ),
  optional(column(["service h"], "serviceHours", "decimal", "Length of a service."), 0),
  optional(
    column(["cycles since service"], "cyclesSinceService", "counts", "Of each copy; blank or missing: 0."),
    [],
  ),
  ...decimals([
    ["form s", "formSeconds", "Forming."],
    ["trim s", "trimSeconds", "Trimming."],
    ["calibration", "calibrationFactor", "Stabilising time over the ideal one, from one measured cycle."],
  ]),
  optional(
    column(["contact w m2k"], "contactConductanceWPerM2K", "decimal", "Sheet to mould; blank: ideal."),
    null,
  ),
  column(["max cycles per min"], "maxCyclesPerMin", "decimal", "Fastest cycle of the mould."),
];

export const productColumns: readonly ColumnSpec[] = [
  id("product"),
  named,
  column(["moulds", "mould"], "moulds", "moulds", "Moulds that make it: M1; M2/insert."),
  column(["sheet"], "sheetId", "text", "Sheet it is made of."),
  column(["net mass g", "mass g"], "netMassG", "decimal", "Of one piece."),
  column(["wall mm"], "wallThicknessMm", "decimal", "Thickest section that must be stable."),
  optional(column(["rim rolled"], "rimRolled", "yes-no", "Goes through rim rolling."), false),
  column(["pieces per stack"], "piecesPerStack", "whole", "Pieces in a stack."),
  column(["stacks per carton"], "stacksPerCarton", "whole", "Stacks in a carton."),
  column(["cartons per pallet"], "cartonsPerPallet", "whole", "Cartons on a pallet."),
  optional(column(["run scrap"], "runScrapShare", "share", "Rejects while running."), 0),
  optional(column(["least run pieces"], "leastRunPieces", "whole", "Never run less."), 0),
  optional(column(["rounding"], "roundingUnit", "text", "piece, stack, carton or pallet."), "carton"),
  optional(
    column(["conditioning h"], "conditioningHours", "decimal", "Hold before dispatch or printing."),
    0,
  ),
  optional(column(["stock pieces", "stock"], "stockPieces", "whole", "On the shelf, free."), 0),
  optional(
    column(["safety stock pieces", "safety stock"], "safetyStockPieces", "whole", "Kept on the shelf."),
    0,
  ),
];

export const changeoverFields: readonly (readonly [string, string, string])[] = [
  ["drive side extra min", "driveSideExtraMinutes", "Added where moulds enter from the drive side."],
  ["insert min", "insertChangeMinutes", "Insert change on the same base."],
  ["stacker tooling min", "stackerToolingMinutes", "Stacker tooling."],
  ["rim tooling min", "rimToolingMinutes", "Rim tooling."],
  ["trim set min", "trimSetMinutes", "Trim set."],
  ["splice min", "spliceMinutes", "Splice to another reel."],
  ["width min", "sheetWidthMinutes", "Another sheet width."],
  ["thickness min", "sheetThicknessMinutes", "Another thickness."],
  ["to darker min", "colourLighterToDarkerMinutes", "Colour, lighter to darker."],
  ["to lighter min", "colourDarkerToLighterMinutes", "Colour, darker to lighter."],
  ["extruder colour factor", "extruderColourFactor", "On lines with an extruder."],
  ["polymer min", "polymerMinutes", "Another polymer."],
  ["oven soak min per 10k", "ovenSoakMinutesPer10K", "Per 10 K of forming temperature."],
  ["oven soak max min", "ovenSoakMaxMinutes", "At most."],
  ["packing min", "packingFormatMinutes", "Another packing format."],
  ["first piece min", "firstPieceCheckMinutes", "First-piece check."],
  ["scrap cycles mould", "startUpScrapCyclesMould", "Start-up scrap after a mould change."],
  ["scrap cycles sheet", "startUpScrapCyclesSheet", "Start-up scrap after a sheet change."],
  ["carrying min", "carryingMinutes", "Mould from one line to another."],
];
