import {
  compilePlantCalendars,
  grossPiecesFor,
  instantOfLocalText,
  ordersToMake,
  packingChainOf,
  piecesPerUnit,
  poolCrews,
  teamWorkingTime,
} from "@formweek/capacity-model";
import type {
  Order,
  OrderToMake,
  Plant,
  PlantCalendars,
  Product,
  TimeWindow,
} from "@formweek/capacity-model";
import type {
  Job,
  ObjectiveWeights,
  OperatorSupply,
  Pin,
  ProblemData,
  ProblemTeam,
  SheetSupply,
} from "@formweek/scheduler";
import type { Assembled, OrderDemand } from "./assembled.ts";
import { changeMatrices } from "./change-matrix.ts";
import { inputHash } from "./input-hash.ts";
import { productOptions } from "./job-options.ts";
import type { ProductOptions } from "./job-options.ts";
import { planWindow } from "./plan-window.ts";
import { problemMoulds } from "./problem-moulds.ts";
import { closuresOf, extraShiftsOf, HUNDREDTHS, problemLines } from "./problem-lines.ts";
import { SetupStates } from "./setup-states.ts";

/** What planning starts from. The plant and the orders have passed `plantFaults` and `orderFaults`. */
export interface PlanningInput {
  readonly plant: Plant;
  readonly orders: readonly Order[];
  /** One an order at the most. A pin of an order with nothing left to make holds nothing and is left out of the problem. */
  readonly pins: readonly Pin[];
  /** Seconds since the epoch; matters only where the plant fixes no planning start. */
  readonly now: number;
}

/** Turns a plant and its orders into the scheduler's problem: calendars, rates, fit, changes and quantities worked out. Pure. */
export function assembleProblem({ plant, orders, pins, now }: PlanningInput): Assembled {
  const window = planWindow(plant, now);
  const calendars = compilePlantCalendars(plant, window);
  const states = new SetupStates();
  const lines = problemLines({ plant, window, calendars, states });
  const demands = demandsOf(orders, ordersToMake(orders, plant.products));
  const jobs = jobsOf({ plant, window, demands, states });
  const idle = new Set<string>(
    demands.filter(({ grossPieces }) => grossPieces === 0).map(({ order }) => order.id),
  );
  const { changes, changeClasses, classOfLine } = changeMatrices(plant, states.states);
  const teams = plant.setterTeams.map((team): ProblemTeam => ({
    id: team.id,
    workingTime: teamWorkingTime(team, calendars),
  }));
  const problem: ProblemData = {
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
    jobs,
    pins: pins.filter(({ orderId }) => !idle.has(orderId)),
    changeAwaitsEarliestStart: false,
    objective: objectiveOf(plant),
  };
  return {
    plant,
    pins,
    problem,
    demands,
    closures: new Map(plant.lines.map((line) => [line.id, closuresOf(plant, line, window)])),
    extraShifts: new Map(plant.lines.map((line) => [line.id, extraShiftsOf(plant, line, calendars)])),
    states: states.states,
    inputHash: inputHash(plant, orders, pins),
  };
}

/** Orders of unknown products come to nothing to make; `orderFaults` has named them before. */
function demandsOf(orders: readonly Order[], toMake: readonly OrderToMake[]): readonly OrderDemand[] {
  const netted = new Map(toMake.map((made) => [made.orderId, made]));
  return orders.map((order) => {
    const made = netted.get(order.id);
    return {
      order,
      fromStockPieces: made?.fromStockPieces ?? 0,
      toMakePieces: made?.goodPiecesToMake ?? 0,
      grossPieces: made?.grossPieces ?? 0,
      trail: made?.trail ?? [],
    };
  });
}

interface JobsInput {
  readonly plant: Plant;
  readonly window: TimeWindow;
  readonly demands: readonly OrderDemand[];
  readonly states: SetupStates;
}

function jobsOf({ plant, window, demands, states }: JobsInput): readonly Job[] {
  const products = new Map(plant.products.map((product) => [product.id, product]));
  const optionsOf = new Map<Product, ProductOptions>();
  return demands.flatMap(({ order, toMakePieces, grossPieces }): readonly Job[] => {
    const product = products.get(order.productId);
    if (product === undefined || grossPieces === 0) return [];
    const made = optionsOf.get(product) ?? productOptions(plant, product, states);
    optionsOf.set(product, made);
    return [
      {
        orderId: order.id,
        productId: product.id,
        pieces: grossPieces,
        dueAt: order.dueAt,
        earliestStartAt: Math.max(window.start, order.earliestStartAt ?? window.start),
        weight: order.weight,
        holdingWeight: packingChainOf(toMakePieces, product).pallets,
        conditioningSeconds: Math.round(product.conditioningHours * 3600),
        sheetId: product.sheetId,
        ...splitOf(order, product, grossPieces),
        ...made,
      },
    ];
  });
}

/** Lots of one order at the most: each has a start of its own. */
const MOST_LOTS = 3;

/**
 * Lots are each a least run and a carton at the least, packed in whole rounding units but for one lot; all in pieces to form,
 * each unit with its share of the scrap allowance. An order that may be delivered in parts may be made in lots.
 */
function splitOf(order: Order, product: Product, grossPieces: number): Pick<Job, "lots" | "lotSize"> {
  const toForm = (good: number): number => grossPiecesFor(good, product.runScrapShare);
  const leastPieces = toForm(Math.max(product.leastRunPieces, piecesPerUnit(product, "carton")));
  const unitPieces = toForm(piecesPerUnit(product, product.roundingUnit));
  const lotSize = { leastPieces, unitPieces };
  if (!order.partsAllowed || 2 * leastPieces > grossPieces) return { lotSize };
  return { lots: { most: MOST_LOTS, ...lotSize } };
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
