import type { Job } from "../problem/problem-data.ts";
import { Decoder } from "../timing/decoder.ts";
import { ANY_TIME, Insertion } from "./insertion.ts";
import type { PromiseRefusal } from "./promise.ts";
import { refusalsOf } from "./refusals.ts";
import type { Standing } from "./standing.ts";

/** An order with its one lot at its earliest place, or why there is none. */
export type OneLot =
  | { readonly kind: "placed"; readonly insertion: Insertion; readonly end: number }
  | {
      readonly kind: "refused";
      readonly reasons: readonly PromiseRefusal[];
      readonly decodes: number;
    };

/** Puts the order, in one lot, where it ends first while every other order ends by its limit; those that are freed at any time. */
export function oneLot(standing: Standing, order: Job, freed?: ReadonlySet<string>): OneLot {
  const insertion = new Insertion(standing, order, freed);
  const options = insertion.optionsOf(0);
  const best = insertion.earliest(options, ANY_TIME);
  if (best === null) {
    const { problem, sequences, latestEnd, firstLot, decodes } = insertion;
    const refused = { lot: firstLot, options, latestEnd };
    const reasons = refusalsOf(new Decoder(problem, false), sequences, refused);
    return { kind: "refused", reasons, decodes };
  }
  insertion.putIn(best.place, best.end);
  return { kind: "placed", insertion, end: best.end };
}
