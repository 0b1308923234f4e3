import { column, optional } from "./column-spec.ts";
import type { ColumnSpec, TableSpec } from "./column-spec.ts";
import {
  changeoverFields,
  decimals,
  driveColumns,
  id,
  lineColumns,
  mouldColumns,
  named,
  productColumns,
} from "./record-columns.ts";

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
    ...decimals([
      ["overtime per hour", "prices.overtimePerHour", "Price of a line's work in extra shifts."],
      ["early per pallet hour", "prices.earlyPerPalletHour", "Price of a pallet waiting for its due date."],
      ["imbalance per hour", "prices.balancePerHour", "Price of the busiest line's work above the mean."],
    ]).map((price) => optional(price, 0)),
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
  addedShifts: table("added shifts", [
    column(["date"], "date", "date", "Day on which it starts."),
    column(["shift", "name"], "name", "text", "Name."),
    ...shiftTimes,
    optional(column(["lines"], "lineIds", "list", "Lines that work it, on top of their calendars."), []),
    optional(column(["teams"], "teamIds", "list", "Setter teams that come."), []),
    optional(column(["operators"], "operators", "heads", "Heads that come besides, by pool."), []),
  ]),
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
