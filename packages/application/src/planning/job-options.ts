import { fitOf, formingRate } from "@formweek/capacity-model";
import type { FitCheck, FitInputs, Making, Plant, Product } from "@formweek/capacity-model";
import type { Compared, JobOption, OptionRefusal } from "@formweek/scheduler";
import type { SetupStates } from "./setup-states.ts";

/** Where a product may run and how fast, and why not elsewhere. */
export interface ProductOptions {
  readonly options: readonly JobOption[];
  readonly refusals: readonly OptionRefusal[];
  /** Sheet drawn per piece formed, kg; 0 when nothing can make it. */
  readonly sheetKgPerPiece: number;
}

/** One line × mould for a product, with all records at hand. */
interface Candidate extends FitInputs {
  readonly making: Making;
}

/** Every line × mould of a product, tried by fit and rate; `states` gets the set-ups that come up. */
export function productOptions(plant: Plant, product: Product, states: SetupStates): ProductOptions {
  const options: JobOption[] = [];
  const refusals: OptionRefusal[] = [];
  let sheetKgPerPiece = 0;
  for (const candidate of candidatesOf(plant, product, refusals)) {
    const { line, mould, making } = candidate;
    const fit = fitOf(candidate);
    if (!fit.fits) {
      for (const check of fit.against) {
        refusals.push({
          lineId: line.id,
          mouldId: mould.id,
          code: check.code,
          text: check.sentence,
          compared: comparedBy(check),
        });
      }
      continue;
    }
    const rate = formingRate({ ...candidate, provenRates: plant.provenRates });
    if (rate.kind === "impossible") {
      for (const fault of rate.faults) {
        refusals.push({ lineId: line.id, mouldId: mould.id, code: fault.code, text: fault.cause });
      }
      continue;
    }
    const cavities = mould.cavitiesAlong * mould.cavitiesAcross;
    options.push({
      lineId: line.id,
      setupId: states.ofMaking(making),
      secondsPerPiece: rate.cycleSeconds / cavities,
      piecesPerCycle: cavities,
    });
    sheetKgPerPiece = Math.max(sheetKgPerPiece, rate.shot.sheetKg / cavities);
  }
  return { options, refusals, sheetKgPerPiece };
}

/** The two sides of a fit check, apart from its words. */
export function comparedBy(check: FitCheck): Compared {
  return check.kind === "name"
    ? { needed: check.needed, has: check.has }
    : { needed: check.needed, has: check.has, unit: check.unit };
}

function candidatesOf(plant: Plant, product: Product, refusals: OptionRefusal[]): readonly Candidate[] {
  const sheet = plant.sheets.find((record) => record.id === product.sheetId);
  const polymer = plant.polymers.find((record) => record.name === sheet?.polymer);
  return product.moulds.flatMap((choice) => {
    const mould = plant.moulds.find((record) => record.id === choice.mouldId);
    if (sheet === undefined || polymer === undefined || mould === undefined) {
      const missing =
        mould === undefined
          ? `mould ${choice.mouldId}`
          : sheet === undefined
            ? `sheet ${product.sheetId}`
            : `polymer ${sheet.polymer}`;
      refusals.push({
        lineId: "",
        mouldId: choice.mouldId,
        code: "record-missing",
        text: `The plant has no ${missing}.`,
      });
      return [];
    }
    const making = { product, mould, insertId: choice.insertId, sheet };
    return plant.lines.map((line) => ({ line, mould, product, sheet, polymer, making }));
  });
}
