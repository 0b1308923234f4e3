import {
  compilePlantCalendars,
  fitOf,
  formingRate,
  instantOfLocalText,
  lineWorkingTime,
} from "@formweek/capacity-model";
import type { Plant, Product, TimeWindow, WorkingTime } from "@formweek/capacity-model";

/** A line and mould that can make a product, and how fast. */
export interface MakeableRate {
  readonly lineId: string;
  readonly mouldId: string;
  readonly piecesPerHour: number;
}

/** The instant from which orders are drawn; plants of this package fix their planning start. */
export function planStart(plant: Plant): number {
  return plant.planFrom === null ? 0 : (instantOfLocalText(plant.timeZone, plant.planFrom) ?? 0);
}

/** Working time of every line over the plant's horizon. */
export function lineWorkingTimes(plant: Plant): ReadonlyMap<string, WorkingTime> {
  const start = planStart(plant);
  const window: TimeWindow = { start, end: start + plant.horizonWeeks * 7 * 86_400 };
  const calendars = compilePlantCalendars(plant, window);
  return new Map(plant.lines.map((line) => [line.id, lineWorkingTime(plant, line, calendars)]));
}

/** For each product every line × mould that fits it, with the rate. */
export function makeableRates(plant: Plant): ReadonlyMap<string, readonly MakeableRate[]> {
  return new Map(plant.products.map((product) => [product.id, ratesOf(plant, product)]));
}

function ratesOf(plant: Plant, product: Product): readonly MakeableRate[] {
  const sheet = plant.sheets.find((record) => record.id === product.sheetId);
  const polymer = plant.polymers.find((record) => record.name === sheet?.polymer);
  if (sheet === undefined || polymer === undefined) return [];
  return product.moulds.flatMap((choice) =>
    plant.lines.flatMap((line): readonly MakeableRate[] => {
      const mould = plant.moulds.find((record) => record.id === choice.mouldId);
      if (mould === undefined) return [];
      const inputs = { line, mould, product, sheet, polymer };
      if (!fitOf(inputs).fits) return [];
      const rate = formingRate({ ...inputs, provenRates: plant.provenRates });
      return rate.kind === "rate"
        ? [{ lineId: line.id, mouldId: mould.id, piecesPerHour: rate.piecesPerH }]
        : [];
    }),
  );
}
