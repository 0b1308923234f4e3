import type { LineState, Plant } from "@formweek/capacity-model";
import { productOptions } from "../planning/job-options.ts";
import { SetupStates } from "../planning/setup-states.ts";

/** One way to make a product: its fastest mould on one line. */
export interface ProductWay {
  readonly lineId: string;
  readonly mouldId: string;
  readonly secondsPerPiece: number;
  /** State in which the line makes it. */
  readonly state: LineState;
}

export interface ProductWays {
  /** At most one a line. */
  readonly ways: readonly ProductWay[];
  readonly sheetKgPerPiece: number;
}

export interface PlantWays {
  readonly byProduct: ReadonlyMap<string, ProductWays>;
  /** Lines on which each mould can make something. */
  readonly linesOfMoulds: ReadonlyMap<string, ReadonlySet<string>>;
}

/** Where every product of a plant can be made and how fast, by fit and rate. */
export function plantWays(plant: Plant): PlantWays {
  const states = new SetupStates();
  const options = plant.products.map((product) => ({ product, ...productOptions(plant, product, states) }));
  const stateOf = new Map(states.records().map(({ id }, index) => [id, states.states[index]]));
  const byProduct = new Map<string, ProductWays>();
  const linesOfMoulds = new Map<string, Set<string>>();
  for (const { product, options: onLines, sheetKgPerPiece } of options) {
    const fastest = new Map<string, ProductWay>();
    for (const { lineId, setupId, secondsPerPiece } of onLines) {
      const state = stateOf.get(setupId);
      const mouldId = state?.mould?.id;
      if (state === undefined || mouldId === undefined) continue;
      linesOfMoulds.set(mouldId, (linesOfMoulds.get(mouldId) ?? new Set()).add(lineId));
      const best = fastest.get(lineId);
      if (best === undefined || secondsPerPiece < best.secondsPerPiece)
        fastest.set(lineId, { lineId, mouldId, secondsPerPiece, state });
    }
    byProduct.set(product.id, { ways: [...fastest.values()], sheetKgPerPiece });
  }
  return { byProduct, linesOfMoulds };
}
