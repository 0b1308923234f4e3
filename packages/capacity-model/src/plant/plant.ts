import { z } from "zod";
import { AddedShift } from "./added-shift.ts";
import { ChangeoverRules } from "./changeover-rules.ts";
import { OperatorPool, SetterTeam, Trolley } from "./crew.ts";
import { FormingLine, LineClosure } from "./forming-line.ts";
import { Mould } from "./mould.ts";
import { Polymer } from "./polymer.ts";
import { Product, ProvenRate } from "./product.ts";
import { LocalDateTime, PlantId, displayName, nonNegative } from "./scalars.ts";
import { Sheet } from "./sheet.ts";
import { WorkCalendar } from "./work-calendar.ts";

/** Prices that turn the plan's terms into money, in the plant's currency. */
export const PlanPrices = z.object({
  latePerWeightHour: nonNegative,
  perLateOrderWeight: nonNegative,
  changePerMachineHour: nonNegative,
  changePerTeamHour: nonNegative,
  scrapPerKg: nonNegative,
  /** Hour of a line's extra shifts spent on running, warming up or a change. */
  overtimePerHour: nonNegative.default(0),
  /** Hour that a pallet of finished goods waits for its due date. */
  earlyPerPalletHour: nonNegative.default(0),
  /** Hour by which the busiest line's work exceeds the mean of all lines. */
  balancePerHour: nonNegative.default(0),
  unplannedPerWeight: nonNegative,
});
export type PlanPrices = z.infer<typeof PlanPrices>;

/** Everything that planning knows about one plant, orders apart. References are checked by `plantFaults`. */
export const Plant = z.object({
  id: PlantId,
  name: displayName,
  /** IANA zone in which shifts, closures and due days are read. */
  timeZone: z.string().min(1),
  currency: z.string().regex(/^[A-Z]{3}$/, "must be an ISO 4217 code"),
  firstWeekday: z.int().min(1).max(7),
  /** Planning starts at this wall-clock time; null: at the moment of planning. */
  planFrom: LocalDateTime.nullable(),
  /** Orders are planned within so many weeks from the start. */
  horizonWeeks: z.int().min(1).max(52),
  calendars: z.array(WorkCalendar),
  lines: z.array(FormingLine),
  /** Breakdowns and other spells in which one line stands, on top of its calendar. */
  lineClosures: z.array(LineClosure),
  /** Shifts worked once, on top of the calendars. */
  addedShifts: z.array(AddedShift).max(2000).default([]),
  moulds: z.array(Mould),
  polymers: z.array(Polymer),
  sheets: z.array(Sheet),
  products: z.array(Product),
  provenRates: z.array(ProvenRate),
  setterTeams: z.array(SetterTeam),
  trolleys: z.array(Trolley),
  operatorPools: z.array(OperatorPool),
  changeoverRules: z.array(ChangeoverRules).min(1),
  prices: PlanPrices,
});
export type Plant = z.infer<typeof Plant>;
