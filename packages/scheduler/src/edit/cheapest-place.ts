import type { Decoder } from "../timing/decoder.ts";
import { LineModel } from "../timing/line-model.ts";
import { insertOption, removeAt, type Sequences } from "../timing/sequences.ts";
import type { OptionPlace } from "./draft.ts";
import { moneyOf } from "./timed-trial.ts";

/** Places that are timed in full, at least; and as many more as keep the runs to be timed below the second number. */
const LEAST_PLACES = 32;
const MOST_RUNS = 60_000;

/** A lot that is on no line yet, and where it may stand. */
export interface LotToPlace {
  readonly lot: number;
  readonly places: readonly OptionPlace[];
}

/** The places, the one first that costs least as far as its own line tells; of equals in the order given. */
function byPromise(decoder: Decoder, sequences: Sequences, { places }: LotToPlace): readonly OptionPlace[] {
  const model = new LineModel(decoder.problem, sequences);
  decoder.decode(sequences);
  model.learn(decoder, null);
  return places
    .map((place) => ({ place, money: model.insertion(place.option, place.position, Infinity) }))
    .sort((a, b) => (a.money === b.money ? 0 : a.money - b.money))
    .map(({ place }) => place);
}

/**
 * The place at which the whole plan costs least and every lot has room, or null where there is none among those looked at. All
 * places are timed in full where they are few or the plan is small; else those that their own lines find best.
 */
export function cheapestPlace(decoder: Decoder, sequences: Sequences, ask: LotToPlace): OptionPlace | null {
  const { line: lineOf } = decoder.problem.options;
  const runs = sequences.length.reduce((sum, length) => sum + length, 1);
  const most = Math.max(LEAST_PLACES, Math.floor(MOST_RUNS / runs));
  const places = ask.places.length <= most ? ask.places : byPromise(decoder, sequences, ask).slice(0, most);
  let best: OptionPlace | null = null;
  let least = Infinity;
  for (const place of places) {
    const line = lineOf[place.option]!;
    insertOption(sequences, line, place.position, place.option);
    const money = moneyOf(decoder, sequences, least);
    removeAt(sequences, line, place.position);
    if (money >= least) continue;
    least = money;
    best = place;
  }
  return best;
}
