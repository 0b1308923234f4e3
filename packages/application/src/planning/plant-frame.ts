import {
  compilePlantCalendars,
  instantOfLocalText,
  lineOvertime,
  lineWorkingTime,
  poolCrews,
  teamWorkingTime,
} from "@formweek/capacity-model";
import type {
  FormingLine,
  LineState,
  Plant,
  PlantCalendars,
  Product,
  TimeWindow,
} from "@formweek/capacity-model";
import type {
  ObjectiveWeights,
  OperatorSupply,
  ProblemData,
  ProblemTeam,
  SheetSupply,
} from "@formweek/scheduler";
import type { ClosedSpell, ExtraSpell } from "./assembled.ts";
import { changeMatrices } from "./change-matrix.ts";
import { productOptions } from "./job-options.ts";
import type { ProductOptions } from "./job-options.ts";
import { planWindow } from "./plan-window.ts";
import { problemMoulds } from "./problem-moulds.ts";
import { closuresOf, extraShiftsOf, HUNDREDTHS, problemLines } from "./problem-lines.ts";
import { SetupStates } from "./setup-states.ts";

/** What problems of one plant have in common, whatever its orders: by far the longer part of the work. */
export interface PlantFrame {
  readonly plant: Plant;
  readonly window: TimeWindow;
  readonly calendars: PlantCalendars;
  /** Where each product that it was made for may run. */
  readonly options: ReadonlyMap<string, ProductOptions>;
  readonly problem: Omit<ProblemData, "jobs" | "pins">;
  /** Named closures per line id: its calendar's and its own. */
  readonly closures: ReadonlyMap<string, readonly ClosedSpell[]>;
  /** Shifts worked once per line id: its calendar's and those added. */
  readonly extraShifts: ReadonlyMap<string, readonly ExtraSpell[]>;
  /** States of a line, in the order of the problem's set-ups. */
  readonly states: readonly LineState[];
}

/** Works out calendars, rates, fit and changes for some products of a plant; orders of others have no place in it. Pure. */
export function framePlant(plant: Plant, now: number, products: Iterable<Product>): PlantFrame {
  const window = planWindow(plant, now);
  const calendars = compilePlantCalendars(plant, window);
  const states = new SetupStates();
  const lines = problemLines({ plant, window, calendars, states });
  const options = new Map<string, ProductOptions>();
  for (const product of products)
    if (!options.has(product.id)) options.set(product.id, productOptions(plant, product, states));
  const { changes, changeClasses, classOfLine } = changeMatrices(plant, states.states);
  return {
    plant,
    window,
    calendars,
    options,
    problem: {
      horizon: window,
      lines: lines.map((line) => ({ ...line, changeClassId: classOfLine.get(line.id) ?? "" })),
      moulds: problemMoulds(plant),
      setups: states.records(),
      changeClasses,
      changes,
      teams: teamsOf(plant, calendars),
      trolleys: plant.trolleys.map(({ id }) => ({ id })),
      pools: poolsOf(plant, calendars),
      sheets: sheetsOf(plant, window),
      changeAwaitsEarliestStart: false,
      objective: objectiveOf(plant),
    },
    ...namedSpells(plant, window, calendars),
    states: states.states,
  };
}

/** The frame of the same plant in other hours: shifts and closures may differ and nothing else. Pure. */
export function inOtherHours(frame: PlantFrame, plant: Plant): PlantFrame {
  const { window } = frame;
  const calendars = compilePlantCalendars(plant, window);
  const records = new Map<string, FormingLine>(plant.lines.map((line) => [line.id, line]));
  const lines = frame.problem.lines.map((line) => {
    const record = records.get(line.id);
    if (record === undefined) throw new Error(`line ${line.id} is gone in other hours`);
    return {
      ...line,
      workingTime: lineWorkingTime(plant, record, calendars),
      overtime: lineOvertime(plant, record, calendars),
    };
  });
  return {
    ...frame,
    plant,
    calendars,
    problem: { ...frame.problem, lines, teams: teamsOf(plant, calendars), pools: poolsOf(plant, calendars) },
    ...namedSpells(plant, window, calendars),
  };
}

function teamsOf(plant: Plant, calendars: PlantCalendars): readonly ProblemTeam[] {
  return plant.setterTeams.map((team) => ({ id: team.id, workingTime: teamWorkingTime(team, calendars) }));
}

function namedSpells(
  plant: Plant,
  window: TimeWindow,
  calendars: PlantCalendars,
): Pick<PlantFrame, "closures" | "extraShifts"> {
  return {
    closures: new Map(plant.lines.map((line) => [line.id, closuresOf(plant, line, window)])),
    extraShifts: new Map(plant.lines.map((line) => [line.id, extraShiftsOf(plant, line, calendars)])),
  };
}

function poolsOf(plant: Plant, calendars: PlantCalendars): readonly OperatorSupply[] {
  return plant.operatorPools.map((pool) => ({
    id: pool.id,
    crews: poolCrews(pool, calendars).map(({ workingTime, heads }) => ({
      workingTime,
      hundredths: Math.round(heads * HUNDREDTHS),
    })),
  }));
}

function sheetsOf(plant: Plant, window: TimeWindow): readonly SheetSupply[] {
  return plant.sheets.map((sheet) => ({
    id: sheet.id,
    stockKg: sheet.stockKg,
    arrivals: sheet.arrivals
      .map(({ at, kg }) => ({ at: instantOfLocalText(plant.timeZone, at) ?? window.end, kg }))
      .sort((a, b) => a.at - b.at),
  }));
}

function objectiveOf({ prices }: Plant): ObjectiveWeights {
  return {
    tardinessPerWeightHour: prices.latePerWeightHour,
    lateOrderPerWeight: prices.perLateOrderWeight,
    changePerMachineHour: prices.changePerMachineHour,
    changePerTeamHour: prices.changePerTeamHour,
    scrapPerKg: prices.scrapPerKg,
    overtimePerHour: prices.overtimePerHour,
    earlinessPerWeightHour: prices.earlyPerPalletHour,
    balancePerHour: prices.balancePerHour,
    movedLinePerOrder: 0,
    movedStartPerHour: 0,
    unplannedPerWeight: prices.unplannedPerWeight,
    makespanPerHour: 0,
  };
}
