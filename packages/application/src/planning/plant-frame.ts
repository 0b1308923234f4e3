import {
  compilePlantCalendars,
  instantOfLocalText,
  poolCrews,
  teamWorkingTime,
} from "@formweek/capacity-model";
import type { LineState, Plant, PlantCalendars, Product, TimeWindow } from "@formweek/capacity-model";
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
  const teams = plant.setterTeams.map((team): ProblemTeam => ({
    id: team.id,
    workingTime: teamWorkingTime(team, calendars),
  }));
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
      teams,
      trolleys: plant.trolleys.map(({ id }) => ({ id })),
      pools: poolsOf(plant, calendars),
      sheets: sheetsOf(plant, window),
      changeAwaitsEarliestStart: false,
      objective: objectiveOf(plant),
    },
    closures: new Map(plant.lines.map((line) => [line.id, closuresOf(plant, line, window)])),
    extraShifts: new Map(plant.lines.map((line) => [line.id, extraShiftsOf(plant, line, calendars)])),
    states: states.states,
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
