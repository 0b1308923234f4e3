import { OperatorPool, Plant, SetterTeam, Trolley } from "@formweek/capacity-model";
import type { FormingLine, Mould, Order, Product } from "@formweek/capacity-model";
import { demoCalendars } from "../demo/crews.ts";
import { demoPlant } from "../demo/demo-plant.ts";
import { ordersOfWeek } from "./order-week.ts";

/** Size of a plant to draw; the same size and seed give the same plant and orders. */
export interface PlantSize {
  /** 1 to 200. */
  readonly lines: number;
  /** 1 to 20,000. */
  readonly orders: number;
  readonly seed: number;
}

export interface GeneratedPlant {
  readonly plant: Plant;
  readonly orders: readonly Order[];
}

/** Lines of one hall; the demo plant is one hall, a larger plant has several alike, whose moulds fit each other's lines. */
const HALL_LINES = 8;
/** Working hours of a line in a week, about, and how much of them the orders fill. */
const WEEK_HOURS = 112;
const LOAD_SHARE = 0.85;
/** Hours that a change takes of an order's share, about. */
const CHANGE_HOURS = 0.9;

/** A plant of any size built from the demo's halls, loaded to about 85 % over one to three weeks. */
export function generatePlant({ lines, orders, seed }: PlantSize): GeneratedPlant {
  const plant = plantOf(lines);
  const perLine = orders / lines;
  const weeks = Math.min(3, Math.max(1, Math.round(perLine / 18)));
  const hours = Math.max(1, (LOAD_SHARE * weeks * WEEK_HOURS) / perLine - CHANGE_HOURS);
  return {
    plant,
    orders: ordersOfWeek(plant, {
      seed,
      count: orders,
      loadShare: 1,
      days: weeks * 7,
      runHours: [hours * 0.4, hours * 1.6],
      slackHours: [4, 36],
      firstNumber: 100_001,
    }),
  };
}

function plantOf(lineCount: number): Plant {
  const base = demoPlant("calm");
  const halls = Math.ceil(lineCount / HALL_LINES);
  const lines = Array.from({ length: lineCount }, (_, index) => lineOf(base, index));
  const scale = (3 * lineCount) / HALL_LINES;
  return Plant.parse({
    ...base,
    id: `generated-${lineCount}`,
    name: `Generated plant of ${lineCount} lines`,
    horizonWeeks: 10,
    lines,
    moulds: hallsOf(halls, (hall) => base.moulds.map((mould) => mouldOf(mould, hall))),
    products: hallsOf(halls, (hall) => base.products.map((product) => productOf(product, hall))),
    provenRates: [],
    sheets: base.sheets.map((sheet) => ({
      ...sheet,
      stockKg: sheet.stockKg === null ? null : sheet.stockKg * scale,
      arrivals: sheet.arrivals.map(({ at, kg }) => ({ at, kg: kg * scale })),
    })),
    setterTeams: Array.from({ length: Math.max(1, Math.ceil(lineCount / 4)) }, (_, index) => teamOf(index)),
    trolleys: Array.from({ length: halls }, (_, index) =>
      Trolley.parse({ id: trolleyId(index), name: `Mould trolley ${index + 1}` }),
    ),
    operatorPools: [poolOf(lines)],
  });
}

const hallsOf = <T>(halls: number, records: (hall: number) => readonly T[]): readonly T[] =>
  Array.from({ length: halls }, (_, hall) => records(hall)).flat();

/** Ids of the first hall are the demo's own. */
const inHall = (id: string, hall: number): string => (hall === 0 ? id : `${id} h${hall + 1}`);
const trolleyId = (index: number): string => (index === 0 ? "trolley" : `trolley ${index + 1}`);

function lineOf(base: Plant, index: number): object {
  const hall = Math.floor(index / HALL_LINES);
  const model = base.lines[index % HALL_LINES] as FormingLine;
  const { mouldId, productId } = model.mounted;
  return {
    ...model,
    id: `L${index + 1}`,
    name: `Line ${index + 1}`,
    trolleyId: trolleyId(hall),
    mounted: {
      ...model.mounted,
      mouldId: mouldId === null ? null : inHall(mouldId, hall),
      productId: productId === null ? null : inHall(productId, hall),
    },
  };
}

/** Moulds of every hall may run on any line that they fit: a mould's line approvals name lines of the first hall only. */
function mouldOf(mould: Mould, hall: number): object {
  return {
    ...mould,
    id: inHall(mould.id, hall),
    name: inHall(mould.name, hall),
    family: inHall(mould.family, hall),
    approvedLineIds: null,
  };
}

function productOf(product: Product, hall: number): object {
  return {
    ...product,
    id: inHall(product.id, hall),
    name: inHall(product.name, hall),
    moulds: product.moulds.map(({ mouldId, insertId }) => ({ mouldId: inHall(mouldId, hall), insertId })),
  };
}

function teamOf(index: number): SetterTeam {
  return SetterTeam.parse({
    id: `setters-${index + 1}`,
    name: `Setter team ${index + 1}`,
    calendarId: index % 2 === 0 ? "setters-day" : "setters-night",
    setters: 2,
  });
}

/** Heads enough for every line that is open at the time. */
function poolOf(lines: readonly object[]): OperatorPool {
  const heads = (calendars: readonly string[]): number =>
    Math.ceil(
      (lines as readonly FormingLine[])
        .filter((line) => calendars.includes(line.calendarId))
        .reduce((sum, line) => sum + line.operatorsNeeded, 0),
    );
  const weekly = demoCalendars.map(({ id }) => id as string);
  return OperatorPool.parse({
    id: "operators",
    name: "Operators",
    crews: [
      { calendarId: "operators-day", heads: heads(weekly) },
      { calendarId: "operators-night", heads: heads(["three-shift", "continuous"]) },
      { calendarId: "operators-weekend", heads: heads(["continuous"]) },
    ],
  });
}
