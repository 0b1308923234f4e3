import { fitOf, formingRate } from "@formweek/capacity-model";
import type { FitCheck, FitInputs, FormingRate, MachineCycle, Plant } from "@formweek/capacity-model";
import type { Compared } from "@formweek/scheduler";
import { plantNotFound } from "../not-found.ts";
import { comparedBy } from "../planning/job-options.ts";
import { ok, refused } from "../result.ts";
import type { PlantInput, UseCase } from "../use-case.ts";

/** Narrows the list; null: every one. */
export interface RatesInput extends PlantInput {
  readonly lineId: string | null;
  readonly mouldId: string | null;
}

/** A reason against a line × mould × product, with its figures; the unit is in each figure's name. */
export interface RateRefusal {
  readonly code: string;
  readonly text: string;
  readonly numbers: Readonly<Record<string, number>>;
  /** Null where the machine's cycle, not a fit check, is against it. */
  readonly compared: Compared | null;
}

export interface RateLimit {
  readonly name: string;
  readonly text: string;
  /** Share by which the cycle is longer than the next limit alone would ask; null where there is no next. */
  readonly byShare: number | null;
}

export interface RateFigures {
  readonly cyclesPerMin: number;
  /** Good pieces. */
  readonly piecesPerHour: number;
  readonly sheetKgPerHour: number;
  readonly skeletonShare: number;
  readonly proven: boolean;
  readonly limit: RateLimit;
  /** Parts of the computed cycle, seconds, and the oven positions that share the heating; empty when the cycle can not be computed. */
  readonly parts: Readonly<Record<string, number>>;
}

/** One line × mould × product. `rate` is null when it does not fit or no rate can be computed; `refusals` says why. */
export interface RateEntry {
  readonly lineId: string;
  readonly mouldId: string;
  readonly productId: string;
  readonly fits: boolean;
  readonly refusals: readonly RateRefusal[];
  readonly rate: RateFigures | null;
}

/** Fit and rate of every line × mould × product that the mould makes; lines, then moulds, then products in the plant's order. */
export const getRates: UseCase<RatesInput, readonly RateEntry[]> = {
  role: "viewer",
  run: async (ports, { plantId, lineId, mouldId }) => {
    const stored = await ports.store.read(({ plants }) => plants.get(plantId));
    if (stored === null) return refused(plantNotFound(plantId));
    return ok(ratesOf(stored.plant, lineId, mouldId));
  },
};

/** The same over a plant at hand. */
function ratesOf(plant: Plant, lineId: string | null, mouldId: string | null): readonly RateEntry[] {
  const lines = plant.lines.filter((line) => lineId === null || line.id === lineId);
  const moulds = plant.moulds.filter((mould) => mouldId === null || mould.id === mouldId);
  const sheets = new Map(plant.sheets.map((sheet) => [sheet.id, sheet]));
  const polymers = new Map(plant.polymers.map((polymer) => [polymer.name, polymer]));
  return lines.flatMap((line) =>
    moulds.flatMap((mould) =>
      plant.products.flatMap((product) => {
        if (!product.moulds.some((choice) => choice.mouldId === mould.id)) return [];
        const sheet = sheets.get(product.sheetId);
        const polymer = sheet === undefined ? undefined : polymers.get(sheet.polymer);
        if (sheet === undefined || polymer === undefined) return [];
        return [rateEntry(plant, { line, mould, product, sheet, polymer })];
      }),
    ),
  );
}

function rateEntry(plant: Plant, inputs: FitInputs): RateEntry {
  const ids = { lineId: inputs.line.id, mouldId: inputs.mould.id, productId: inputs.product.id };
  const fit = fitOf(inputs);
  if (!fit.fits) return { ...ids, fits: false, refusals: fit.against.map(refusalOf), rate: null };
  const rate = formingRate({ ...inputs, provenRates: plant.provenRates });
  if (rate.kind === "impossible") {
    const refusals = rate.faults.map(({ code, cause, numbers }) => ({
      code,
      text: cause,
      numbers,
      compared: null,
    }));
    return { ...ids, fits: true, refusals, rate: null };
  }
  return { ...ids, fits: true, refusals: [], rate: figuresOf(rate) };
}

const UNIT_IN_NAME = { mm: "Mm", kN: "Kn", bar: "Bar", kg: "Kg" } as const;

function refusalOf(check: FitCheck): RateRefusal {
  const { code, sentence: text } = check;
  const compared = comparedBy(check);
  if (check.kind === "name") return { code, text, numbers: {}, compared };
  const unit = UNIT_IN_NAME[check.unit];
  return { code, text, compared, numbers: { [`needed${unit}`]: check.needed, [`has${unit}`]: check.has } };
}

function figuresOf(rate: FormingRate): RateFigures {
  const { basis } = rate;
  const cycle = basis.cycle.kind === "cycle" ? basis.cycle : null;
  return {
    cyclesPerMin: rate.cyclesPerMin,
    piecesPerHour: rate.goodPiecesPerH,
    sheetKgPerHour: rate.sheetKgPerH,
    skeletonShare: rate.shot.skeletonShare,
    proven: basis.kind === "proven",
    limit:
      basis.kind === "proven"
        ? { name: "proven-rate", text: provenText(basis.provenRate.reports), byShare: null }
        : computedLimit(basis.cycle),
    parts: cycle === null ? {} : partsOf(cycle),
  };
}

function provenText(reports: number): string {
  return `Measured on the shop floor in ${reports} ${reports === 1 ? "report" : "reports"}; it wins over the computed rate.`;
}

function computedLimit({ limit, limits }: MachineCycle): RateLimit {
  const binding = limits.find((each) => each.code === limit.code);
  return { name: limit.code, text: binding?.sentence ?? "", byShare: limit.overNextShare };
}

function partsOf({ parts }: MachineCycle): Readonly<Record<string, number>> {
  const { formSeconds, stabiliseSeconds, trimSeconds, closedSeconds, open, heatingSeconds, ovenPositions } =
    parts;
  const { openSeconds } = open;
  return {
    formSeconds,
    stabiliseSeconds,
    trimSeconds,
    closedSeconds,
    openSeconds,
    heatingSeconds,
    ovenPositions,
  };
}
