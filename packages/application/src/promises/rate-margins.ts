import { type FormingRate, type Plant, formingRate, fitOf } from "@formweek/capacity-model";
import type { MarginBasis, PromisedRate } from "./promise-answer.ts";

/** Proven rates that a plant must have before its own spread is believed. */
const LEAST_RATES = 5;
/** Spread of computed running times where a plant has too few proven rates: common practice, no source. */
const USUAL_SPREAD = 0.1;
/** One-sided quantile of the normal distribution for 95 %: 19 of 20 runs stay within. */
const Z_95 = 1.645;

/** How far true running times lie from computed ones in a plant, as shares of the computed ones. */
export interface ModelSpread {
  /** Mean of true over computed running time, less 1: positive where the model is too fast. */
  readonly bias: number;
  readonly spread: number;
  readonly from: MarginBasis;
}

/**
 * Rates of one plant with the margin that belongs to them: none where a rate was proven on the shop floor; else by how far the
 * model's rates lie from those that were proven elsewhere in the plant. Worked out when it is asked for, once.
 */
export class RateMargins {
  readonly #plant: Plant;
  readonly #rates = new Map<string, PromisedRate | null>();
  #spread: ModelSpread | null = null;

  constructor(plant: Plant) {
    this.#plant = plant;
  }

  /** Null where the records of line, mould or product are missing or give no rate. */
  rateOf(ids: RateIds): PromisedRate | null {
    const key = `${ids.lineId}\n${ids.mouldId}\n${ids.productId}`;
    const known = this.#rates.get(key);
    if (known !== undefined) return known;
    const rate = rateFor(this.#plant, ids);
    const promised = rate === null ? null : this.#promised(rate);
    this.#rates.set(key, promised);
    return promised;
  }

  get spread(): ModelSpread {
    return (this.#spread ??= spreadOf(this.#plant));
  }

  #promised({ cyclesPerMin, goodPiecesPerH, basis }: FormingRate): PromisedRate {
    const figures = { cyclesPerMin, piecesPerHour: goodPiecesPerH };
    if (basis.kind === "proven")
      return { ...figures, basis: { kind: "proven", reports: basis.provenRate.reports } };
    const { bias, spread, from } = this.spread;
    const marginShare = Math.max(0, bias) + Z_95 * spread;
    return { ...figures, basis: { kind: "computed", spreadShare: spread, marginShare, from } };
  }
}

interface RateIds {
  readonly lineId: string;
  readonly mouldId: string;
  readonly productId: string;
}

function rateFor(
  plant: Plant,
  { lineId, mouldId, productId }: RateIds,
  proven = plant.provenRates,
): FormingRate | null {
  const line = plant.lines.find(({ id }) => id === lineId);
  const mould = plant.moulds.find(({ id }) => id === mouldId);
  const product = plant.products.find(({ id }) => id === productId);
  const sheet = plant.sheets.find(({ id }) => id === product?.sheetId);
  const polymer = plant.polymers.find(({ name }) => name === sheet?.polymer);
  if (line === undefined || mould === undefined || product === undefined) return null;
  if (sheet === undefined || polymer === undefined) return null;
  const records = { line, mould, product, sheet, polymer };
  if (!fitOf(records).fits) return null;
  const rate = formingRate({ ...records, provenRates: proven });
  return rate.kind === "rate" ? rate : null;
}

/** Mean and sample standard deviation of proven over computed running times; a fixed share where there are too few. */
export function spreadOf(plant: Plant): ModelSpread {
  const ratios = plant.provenRates.flatMap((proven) => {
    const computed = rateFor(plant, proven, []);
    return computed === null ? [] : [computed.cyclesPerMin / proven.cyclesPerMin];
  });
  const count = ratios.length;
  if (count < LEAST_RATES) return { bias: 0, spread: USUAL_SPREAD, from: { kind: "rule" } };
  const mean = ratios.reduce((sum, ratio) => sum + ratio, 0) / count;
  const squares = ratios.reduce((sum, ratio) => sum + (ratio - mean) ** 2, 0);
  return { bias: mean - 1, spread: Math.sqrt(squares / (count - 1)), from: { kind: "plant", rates: count } };
}
