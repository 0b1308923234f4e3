import { NEVER } from "../problem/calendar.ts";
import { withJob } from "../problem/compile.ts";
import type { CompiledProblem } from "../problem/compiled-problem.ts";
import type { Job } from "../problem/problem-data.ts";
import type { DecoderState } from "../timing/decoder-state.ts";
import { Decoder } from "../timing/decoder.ts";
import { copyLots, emptySequences, insertOption, removeAt, type Sequences } from "../timing/sequences.ts";
import { mostPieces, placesFor, type LotSteps, type Place } from "./place-bounds.ts";
import type { Standing } from "./standing.ts";

/** States of the standing plan's decode that are kept: a trial goes on from the last one before its place. */
const KEPT_STATES = 48;

/** Later than any run ends. */
export const ANY_TIME = NEVER - 1;

/** A lot at its place, and when it ends there, s. */
export interface PlacedLot {
  readonly place: Place;
  readonly end: number;
}

/** The standing sequences within a problem that has one job more, its last. */
function widened(from: Sequences, problem: CompiledProblem): Sequences {
  const into = emptySequences(problem);
  into.length.set(from.length);
  from.at.forEach((row, line) => {
    into.at[line]!.set(row.subarray(0, from.length[line]));
  });
  copyLots(from, into);
  return into;
}

/** One order more being put into a plan that stands, lot by lot, so that every other lot is in time. */
export class Insertion {
  readonly standing: Standing;
  readonly problem: CompiledProblem;
  readonly sequences: Sequences;
  /** [lot] s by which it must end, those of the order included */
  readonly latestEnd: Float64Array;
  /** of the order */
  readonly firstLot: number;
  decodes = 0;
  /** the sequences as they are, timed; and with a lot on trial */
  private readonly base: Decoder;
  private readonly trial: Decoder;
  private readonly states: readonly DecoderState[];
  /** lots of the order that have their places */
  private readonly put: Place[] = [];
  private readonly noLimit: Float64Array;

  /** `freed`: orders that may end at any time. */
  constructor(standing: Standing, order: Job, freed: ReadonlySet<string> = new Set()) {
    const problem = withJob(standing.problem, order);
    const { lots, jobs, data } = problem;
    this.standing = standing;
    this.problem = problem;
    this.sequences = widened(standing.sequences, problem);
    this.firstLot = lots.firstLot[jobs.count - 1]!;
    const ofJob = standing.latestEnd.map((end, job) =>
      end < ANY_TIME && freed.has(data.jobs[job]!.orderId) ? ANY_TIME : end,
    );
    this.latestEnd = Float64Array.from(lots.job, (job) => ofJob[job] ?? Infinity);
    this.noLimit = new Float64Array(lots.count).fill(Infinity);
    this.base = new Decoder(problem, false);
    this.trial = new Decoder(problem, false);
    const runs = this.sequences.length.reduce((sum, length) => sum + length, 0);
    this.states = this.base.decodeKeeping(this.sequences, Math.max(1, Math.ceil(runs / KEPT_STATES)));
  }

  /** Options of a lot of the order, by its number from 0. */
  optionsOf(number: number): readonly number[] {
    const { firstOption } = this.problem.lots;
    const first = firstOption[this.firstLot + number]!;
    return Array.from({ length: firstOption[this.firstLot + number + 1]! - first }, (_, i) => first + i);
  }

  /** The order is made in two lots, the first of so many pieces. */
  share(pieces: number): void {
    const own = this.sequences.pieces;
    own[this.firstLot] = pieces;
    own[this.firstLot + 1] = this.problem.data.jobs.at(-1)!.pieces - pieces;
  }

  /**
   * The place among those of the options, all of one lot, at which it ends first and by an instant; of equals the lower option, then
   * the lower position. Tries all places that bounds cannot rule out, the most promising first. Exact under all rules.
   */
  earliest(options: readonly number[], by: number): PlacedLot | null {
    const { latestEnd, trial } = this;
    const lot = this.problem.options.lot[options[0] ?? 0]!;
    let best: Place | null = null;
    let bestEnd = by;
    for (const place of placesFor(this.base, this.sequences, { options, latestEnd })) {
      if (place.endsFrom > bestEnd) break;
      const wins =
        best === null ||
        place.option < best.option ||
        (place.option === best.option && place.position < best.position);
      latestEnd[lot] = wins ? bestEnd : bestEnd - 1;
      if (!this.holdsAt(place)) continue;
      best = place;
      bestEnd = trial.end[lot]!;
    }
    if (options.length > 0) latestEnd[lot] = Infinity;
    return best === null ? null : { place: best, end: bestEnd };
  }

  /**
   * The place at which the most pieces of a lot end by an instant, and how many; of equals the one that bounds find most promising.
   * At each place, pieces are added as long as that leaves it in time: a place that would take more, but not a few less, is missed.
   */
  most(
    options: readonly number[],
    by: number,
    steps: LotSteps,
  ): { readonly place: Place; readonly pieces: number } | null {
    const { latestEnd, sequences } = this;
    const lot = this.problem.options.lot[options[0] ?? 0]!;
    const holds = (place: Place, count: number): boolean => {
      sequences.pieces[lot] = steps.first + count * steps.unit;
      return this.holdsAt(place);
    };
    const bounds = mostPieces(this.base, sequences, { options, latestEnd, by, steps });
    let best: Place | null = null;
    let least = -1;
    if (options.length > 0) latestEnd[lot] = by;
    for (const { place, most } of bounds) {
      if (most <= least) break;
      if (!holds(place, least + 1)) continue;
      best = place;
      least++;
      for (let high = most; least < high;) {
        const middle = Math.ceil((least + high) / 2);
        if (holds(place, middle)) least = middle;
        else high = middle - 1;
      }
    }
    if (options.length > 0) latestEnd[lot] = Infinity;
    return best === null ? null : { place: best, pieces: steps.first + least * steps.unit };
  }

  /** When the lot put in at the place ends, s. */
  endOf({ option }: Place): number {
    return this.base.end[this.problem.options.lot[option]!]!;
  }

  /** Gives a lot its place, where it must end by an instant from now on. */
  putIn(place: Place, by: number): void {
    const { options } = this.problem;
    this.latestEnd[options.lot[place.option]!] = by;
    insertOption(this.sequences, options.line[place.option]!, place.position, place.option);
    this.put.push(place);
    this.base.decodeFrom(this.stateBefore(place), this.sequences, this.noLimit);
  }

  /** Takes the lot put in last out again. */
  takeBack(): void {
    const place = this.put.at(-1)!;
    const { options } = this.problem;
    const state = this.stateBefore(place);
    this.put.pop();
    removeAt(this.sequences, options.line[place.option]!, place.position);
    this.latestEnd[options.lot[place.option]!] = Infinity;
    this.base.decodeFrom(state, this.sequences, this.noLimit);
  }

  /** True when every lot is in time with one more at the place, that one too. Leaves the plan in the trial's decoder. */
  private holdsAt(place: Place): boolean {
    const line = this.problem.options.line[place.option]!;
    this.decodes++;
    insertOption(this.sequences, line, place.position, place.option);
    const holds = this.trial.decodeFrom(this.stateBefore(place), this.sequences, this.latestEnd);
    removeAt(this.sequences, line, place.position);
    return holds;
  }

  /** The last state from which neither the place nor those of the lots put in have been looked at yet: the run before each is still to come. */
  private stateBefore(place: Place): DecoderState {
    const { line } = this.problem.options;
    const { states } = this;
    const reached = (state: DecoderState): boolean => {
      if (state.next[line[place.option]!]! >= place.position) return true;
      for (const each of this.put) if (state.next[line[each.option]!]! >= each.position) return true;
      return false;
    };
    let low = 0;
    let high = states.length;
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if (reached(states[middle]!)) high = middle;
      else low = middle;
    }
    return states[low]!;
  }
}
