import { type FormingLine, type Mould, type Plant, ProvenRate, fitOf } from "@formweek/capacity-model";
import type { CycleRate } from "./scenario-change.ts";

/** Products that a mould can make on a line, in the plant's order. */
export function productsOn(plant: Plant, line: FormingLine, mould: Mould): readonly string[] {
  return plant.products.flatMap((product) => {
    const sheet = plant.sheets.find(({ id }) => id === product.sheetId);
    const polymer = plant.polymers.find(({ name }) => name === sheet?.polymer);
    const isMade = product.moulds.some(({ mouldId }) => mouldId === mould.id);
    if (!isMade || sheet === undefined || polymer === undefined) return [];
    return fitOf({ line, mould, product, sheet, polymer }).fits ? [product.id] : [];
  });
}

/** The plant in which a mould has one proven rate on a line for each product that it can make there; what was reported before gives way. */
export function withRate(plant: Plant, { lineId, mouldId, cyclesPerMin }: Omit<CycleRate, "kind">): Plant {
  const line = plant.lines.find(({ id }) => id === lineId);
  const mould = plant.moulds.find(({ id }) => id === mouldId);
  if (line === undefined || mould === undefined) return plant;
  const products = new Set(productsOn(plant, line, mould));
  const isOld = (rate: ProvenRate): boolean =>
    rate.lineId === lineId && rate.mouldId === mouldId && products.has(rate.productId);
  const rates = [...products].map((productId) =>
    ProvenRate.parse({ lineId, mouldId, productId, cyclesPerMin, reports: 1, spreadCyclesPerMin: 0 }),
  );
  return { ...plant, provenRates: [...plant.provenRates.filter((rate) => !isOld(rate)), ...rates] };
}
