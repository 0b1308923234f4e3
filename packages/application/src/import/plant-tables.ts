import { column, optional } from "./column-spec.ts";
import type { ColumnSpec, TableSpec } from "./column-spec.ts";

const id = (name: string): ColumnSpec =>
  column([name, `${name} id`, "id", "code"], "id", "text", `Short id of the ${name}.`);
const named = column(["name", "description", "title"], "name", "text", "Name for people.");

/** Numbers that a record simply has: header, field, meaning. */
const decimals = (
  rows: readonly (readonly [header: string, field: string, meaning: string])[],
): readonly ColumnSpec[] =>
  rows.map(([header, field, meaning]) => column([header], field, "decimal", meaning));

const lineColumns: readonly ColumnSpec[] = [
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

const driveColumns: readonly ColumnSpec[] = [
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

const mouldColumns: readonly ColumnSpec[] = [
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

const productColumns: readonly ColumnSpec[] = [
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

const changeoverFields: readonly (readonly [string, string, string])[] = [
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

const dated = [
  column(["from"], "from", "date-time", "Day and time, plant's zone."),
  column(["to", "until"], "to", "date-time", "Day and time, plant's zone."),
  column(["reason"], "reason", "text", "Why."),
] as const;
const shiftTimes = [
  column(["start"], "start", "time", "06:00"),
  column(["end"], "end", "time", "At or before the start: next day."),
  optional(column(["breaks"], "breaks", "breaks", "09:30-10:00; 12:00-12:30"), []),
] as const;
const table = (name: string, columns: readonly ColumnSpec[], aliases: readonly string[] = []): TableSpec => ({
  name,
  columns,
  aliases,
});

/** Every table of the plant's data, in the order in which they are exported. */
export const plantTables = {
  plant: table("plant", [
    id("plant"),
    named,
    column(["time zone"], "timeZone", "text", "IANA name, such as Europe/Berlin."),
    column(["currency"], "currency", "text", "ISO 4217 code."),
    optional(column(["first weekday"], "firstWeekday", "whole", "1 Monday … 7 Sunday."), 1),
    optional(column(["plan from"], "planFrom", "date-time", "Blank: at the moment of planning."), null),
    optional(column(["horizon weeks"], "horizonWeeks", "whole", "1 to 52."), 8),
    ...decimals([
      ["late per weight hour", "prices.latePerWeightHour", "Price of an hour late, weight 1."],
      ["per late order", "prices.perLateOrderWeight", "Price of being late at all, weight 1."],
      ["change per machine hour", "prices.changePerMachineHour", "Price of a line standing in a change."],
      ["change per team hour", "prices.changePerTeamHour", "Price of setters."],
      ["scrap per kg", "prices.scrapPerKg", "Price of start-up scrap."],
      ["per unplanned order", "prices.unplannedPerWeight", "Price of leaving an order out, weight 1."],
    ]),
  ]),
  calendars: table("calendars", [id("calendar"), named]),
  shifts: table("shifts", [
    column(["calendar"], "calendarId", "text", "Calendar it belongs to."),
    column(["shift", "name"], "name", "text", "early, late, night …"),
    column(["weekdays", "days"], "weekdays", "weekdays", "Mon-Fri or Sun,Mon; days on which it starts."),
    ...shiftTimes,
  ]),
  closures: table("closures", [column(["calendar"], "calendarId", "text", "Calendar it closes."), ...dated]),
  extraShifts: table("extra shifts", [
    column(["calendar"], "calendarId", "text", "Calendar it is added to."),
    column(["shift", "name"], "name", "text", "Name."),
    column(["date"], "date", "date", "Day on which it starts."),
    ...shiftTimes,
  ]),
  lines: table("lines", lineColumns, ["forming lines", "machines"]),
  handling: table(
    "handling",
    [
      column(["line"], "lineId", "text", "Line."),
      column(["depth mm"], "depthMm", "decimal", "Product depth."),
      column(["open s"], "openSeconds", "decimal", "Open time at that depth."),
    ],
    ["open time", "handling times"],
  ),
  drives: table("drives", driveColumns),
  lineClosures: table(
    "line closures",
    [column(["line"], "lineId", "text", "Line that stands."), ...dated],
    ["breakdowns"],
  ),
  moulds: table("moulds", mouldColumns, ["tools"]),
  mouldSpells: table(
    "mould spells",
    [
      column(["mould"], "mouldId", "text", "Mould."),
      optional(column(["copy"], "copy", "whole", "Blank: every copy."), null),
      ...dated,
    ],
    ["out of service"],
  ),
  polymers: table("polymers", [
    column(["polymer", "name"], "name", "text", "PP, PS, APET, PLA, HDPE or PVC."),
    ...decimals([
      ["density kg m3", "densityKgPerM3", "Density."],
      ["conductivity w mk", "conductivityWPerMK", "Thermal conductivity."],
      ["diffusivity m2 s", "coolingDiffusivityM2PerS", "Effective, for cooling."],
      ["heat kj kg", "heatToFormKjPerKg", "From room to forming temperature."],
      ["forming c", "formingTemperatureC", "Forming temperature."],
      ["demould c", "demouldMeanTemperatureC", "Mean temperature at demoulding."],
      ["mould c", "mouldTemperatureC", "Mould temperature."],
      ["air bar", "formingAirBar", "Forming air."],
      ["shear mpa", "shearStrengthMpa", "Shear strength at room temperature."],
      ["hot trim factor", "trimHotFactor", "Factor for trimming warm."],
    ]),
  ]),
  sheets: table("sheets", [
    id("sheet"),
    named,
    column(["polymer"], "polymer", "text", "PP, PS, APET, PLA, HDPE or PVC."),
    column(["thickness mm"], "thicknessMm", "decimal", "Thickness."),
    column(["width mm"], "widthMm", "decimal", "Width."),
    column(["colour", "color"], "colour.name", "text", "Name of the colour."),
    optional(column(["hex"], "colour.hex", "text", "Colour on the board, #rrggbb."), "#c8c8c8"),
    column(["darkness"], "colour.darkness", "whole", "0 clear … 100 black; orders light before dark."),
    optional(column(["clear"], "colour.clear", "yes-no", "Clear sheet."), false),
    column(["reel kg"], "reelKg", "decimal", "One reel."),
    optional(column(["stock kg"], "stockKg", "decimal", "On hand; blank: always enough."), null),
  ]),
  sheetArrivals: table(
    "sheet arrivals",
    [
      column(["sheet"], "sheetId", "text", "Sheet."),
      column(["at", "arrival"], "at", "date-time", "Day and time, plant's zone."),
      column(["kg"], "kg", "decimal", "Kilograms."),
    ],
    ["arrivals"],
  ),
  products: table("products", productColumns, ["articles", "items"]),
  provenRates: table("proven rates", [
    column(["line"], "lineId", "text", "Line."),
    column(["mould"], "mouldId", "text", "Mould."),
    column(["product"], "productId", "text", "Product."),
    column(["cycles per min"], "cyclesPerMin", "decimal", "Measured."),
    column(["reports"], "reports", "whole", "From how many reports."),
    optional(column(["spread"], "spreadCyclesPerMin", "decimal", "Standard deviation."), 0),
  ]),
  setterTeams: table(
    "setter teams",
    [
      id("team"),
      named,
      column(["calendar"], "calendarId", "text", "Their hours."),
      column(["setters"], "setters", "whole", "Heads in the team."),
    ],
    ["teams"],
  ),
  trolleys: table("trolleys", [id("trolley"), named]),
  operatorCrews: table(
    "operator crews",
    [
      column(["pool"], "id", "text", "Pool."),
      named,
      column(["calendar"], "calendarId", "text", "Hours of these heads."),
      column(["heads"], "heads", "decimal", "Heads."),
    ],
    ["operators"],
  ),
  changeoverRules: table("changeover rules", [
    optional(column(["lines"], "lineIds", "list", "Lines these hold for; blank: all others."), null),
    ...decimals(changeoverFields),
  ]),
  mouldClasses: table("mould classes", [
    optional(column(["lines"], "lineIds", "list", "As in changeover rules."), null),
    column(["class", "name"], "name", "text", "Mass class."),
    optional(column(["up to kg"], "upToMassKg", "decimal", "Blank: no limit."), null),
    column(["dismount min"], "dismountMinutes", "decimal", "Taking the mould out."),
    column(["mount min"], "mountMinutes", "decimal", "Putting it in."),
  ]),
} satisfies Record<string, TableSpec>;

export type PlantTableKey = keyof typeof plantTables;
