import type { Job } from "../problem/problem-data.ts";
import { Decoder } from "../timing/decoder.ts";
import { ANY_TIME, type Insertion, type InsertionRoom } from "./insertion.ts";
import type { PromiseRefusal } from "./promise.ts";
import { refusalsOf } from "./refusals.ts";

/** An order with its one lot at its earliest place, or why there is none. */
export type OneLot =
  | {
      readonly kind: "placed";
      /** To be given back. */
      readonly insertion: Insertion;
      readonly end: number;
    }
  | {
      readonly kind: "refused";
      readonly reasons: readonly PromiseRefusal[];
      readonly decodes: number;
    };

/** Puts the order, in one lot, where it ends first while every other order ends by its limit; those that are freed at any time. */
export function oneLot(room: InsertionRoom, order: Job, freed?: ReadonlySet<string>): OneLot {
  const insertion = room.lend(order, freed);
  const options = insertion.optionsOf(0);
  const best = insertion.earliest(options, ANY_TIME);
  if (best === null) {
    const { problem, sequences, latestEnd, firstLot, decodes } = insertion;
    const refused = { lot: firstLot, options, latestEnd };
    const reasons = refusalsOf(new Decoder(problem, false), sequences, refused);
    room.giveBack(insertion);
    return { kind: "refused", reasons, decodes };
  }
  insertion.putIn(best.place, best.end);
  return { kind: "placed", insertion, end: best.end };
}
