import { NEVER } from "../problem/calendar.ts";
import type { CompiledProblem } from "../problem/compiled-problem.ts";
import { JobRoom } from "../problem/job-room.ts";
import { MOST_LOTS } from "../problem/lot-rule.ts";
import type { Job } from "../problem/problem-data.ts";
import type { DecoderState } from "../timing/decoder-state.ts";
import { Decoder } from "../timing/decoder.ts";
import { insertOption, removeAt, type Sequences } from "../timing/sequences.ts";
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

/** The standing sequences, with room for the lots of one order more on every line. */
function roomySequences({ sequences: { at, length, pieces, turn } }: Standing, lots: number): Sequences {
  const into = {
    at: at.map((row, line) => {
      const roomy = new Int32Array(length[line]! + MOST_LOTS);
      roomy.set(row.subarray(0, length[line]));
      return roomy;
    }),
    length: length.slice(),
    pieces: new Float64Array(lots),
    turn: new Uint8Array(lots),
    drawn: null,
  };
  into.pieces.set(pieces);
  into.turn.set(turn);
  return into;
}

/**
 * One order more being put into a plan that stands, lot by lot, so that every other lot is in time. Its arrays serve one order after
 * the other, so what it says of one must be taken before the next begins.
 */
export class Insertion {
  readonly standing: Standing;
  readonly sequences: Sequences;
  /** [lot] s by which it must end, those of the order included */
  readonly latestEnd: Float64Array;
  decodes = 0;
  /** the sequences as they are, timed; and with a lot on trial */
  private readonly base: Decoder;
  private readonly trial: Decoder;
  private readonly room: JobRoom;
  /** of the standing sequences */
  private states: DecoderState[];
  private statesAreUsual = true;
  /** states from which the base does not time the sequences as they are, and not as they stood; `states.length` for none */
  private untimedFrom: number;
  private changedFrom: number;
  /** lots of the order that have their places */
  private readonly put: Place[] = [];
  private readonly noLimit: Float64Array;

  constructor(standing: Standing, mostOptions: number) {
    this.standing = standing;
    this.room = new JobRoom(standing.problem, mostOptions);
    const { problem } = this.room;
    this.sequences = roomySequences(standing, problem.lots.count);
    this.latestEnd = new Float64Array(problem.lots.count);
    this.noLimit = new Float64Array(problem.lots.count).fill(Infinity);
    this.base = new Decoder(problem, false);
    this.trial = new Decoder(problem, false);
    this.states = [];
    this.untimedFrom = 0;
    this.changedFrom = 0;
    this.keepStates();
  }

  get problem(): CompiledProblem {
    return this.room.problem;
  }

  /** The order's first lot. */
  get firstLot(): number {
    return this.standing.problem.lots.count;
  }

  /** True when there is room for the order. */
  fits(order: Job): boolean {
    return this.room.fits(order);
  }

  /** From now on it is about this order, in one lot that has no place yet. `freed`: orders that may end at any time. */
  begin(order: Job, freed: ReadonlySet<string>): void {
    const { standing, sequences, latestEnd } = this;
    const { lots, data } = standing.problem;
    const isTimedAsBefore = this.room.write(order);
    standing.sequences.at.forEach((row, line) => {
      sequences.length[line] = standing.sequences.length[line]!;
      sequences.at[line]!.set(row.subarray(0, sequences.length[line]));
    });
    sequences.pieces.fill(0, this.firstLot);
    sequences.pieces[this.firstLot] = order.pieces;
    latestEnd.fill(Infinity, this.firstLot);
    for (let lot = 0; lot < lots.count; lot++) {
      const job = lots.job[lot]!;
      const by = standing.latestEnd[job]!;
      latestEnd[lot] = by < ANY_TIME && freed.size > 0 && freed.has(data.jobs[job]!.orderId) ? ANY_TIME : by;
    }
    this.put.length = 0;
    this.decodes = 0;
    if (!isTimedAsBefore || !this.statesAreUsual) this.keepStates();
    else {
      this.untimedFrom = this.changedFrom;
      this.changedFrom = this.states.length;
    }
    this.statesAreUsual = isTimedAsBefore;
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
    if (options.length === 0) return null;
    const { latestEnd, trial } = this;
    const lot = this.problem.options.lot[options[0]!]!;
    let best: Place | null = null;
    let bestEnd = by;
    for (const place of placesFor(this.timedBase(), this.sequences, { options, latestEnd })) {
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
    latestEnd[lot] = Infinity;
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
    if (options.length === 0) return null;
    const { latestEnd, sequences } = this;
    const lot = this.problem.options.lot[options[0]!]!;
    const holds = (place: Place, count: number): boolean => {
      sequences.pieces[lot] = steps.first + count * steps.unit;
      return this.holdsAt(place);
    };
    const bounds = mostPieces(this.timedBase(), sequences, { options, latestEnd, by, steps });
    let best: Place | null = null;
    let least = -1;
    latestEnd[lot] = by;
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
    latestEnd[lot] = Infinity;
    return best === null ? null : { place: best, pieces: steps.first + least * steps.unit };
  }

  /** When the lot put in at the place ends, s. */
  endOf({ option }: Place): number {
    return this.timedBase().end[this.problem.options.lot[option]!]!;
  }

  /** The plan as it is now, timed as a whole. What is asked next may overwrite it. */
  timed(): Decoder {
    this.decodes++;
    this.trial.decode(this.sequences);
    return this.trial;
  }

  /** Lots of the order that have their places, in the order in which they got them. */
  get placed(): readonly Place[] {
    return this.put;
  }

  /** Gives a lot its place, where it must end by an instant from now on. */
  putIn(place: Place, by: number): void {
    const { options } = this.problem;
    this.latestEnd[options.lot[place.option]!] = by;
    insertOption(this.sequences, options.line[place.option]!, place.position, place.option);
    this.put.push(place);
    this.untimedFrom = Math.min(this.untimedFrom, this.stateBefore(place));
  }

  /** Takes the lot put in last out again. */
  takeBack(): void {
    const place = this.put.at(-1)!;
    const { options } = this.problem;
    this.untimedFrom = Math.min(this.untimedFrom, this.stateBefore(place));
    this.put.pop();
    removeAt(this.sequences, options.line[place.option]!, place.position);
    this.latestEnd[options.lot[place.option]!] = Infinity;
  }

  /** Times the standing sequences, and keeps states on the way. */
  private keepStates(): void {
    const runs = this.sequences.length.reduce((sum, length) => sum + length, 0);
    this.states = this.base.decodeKeeping(this.sequences, Math.max(1, Math.ceil(runs / KEPT_STATES)));
    this.untimedFrom = this.states.length;
    this.changedFrom = this.states.length;
  }

  /** The decoder that has timed the sequences as they are. */
  private timedBase(): Decoder {
    const from = this.states[this.untimedFrom];
    if (from !== undefined) {
      this.base.decodeFrom(from, this.sequences, this.noLimit);
      this.changedFrom = Math.min(this.changedFrom, this.untimedFrom);
      this.untimedFrom = this.states.length;
    }
    return this.base;
  }

  /** True when every lot is in time with one more at the place, that one too. Leaves the plan in the trial's decoder. */
  private holdsAt(place: Place): boolean {
    const line = this.problem.options.line[place.option]!;
    this.decodes++;
    insertOption(this.sequences, line, place.position, place.option);
    const state = this.states[this.stateBefore(place)]!;
    const holds = this.trial.decodeFrom(state, this.sequences, this.latestEnd);
    removeAt(this.sequences, line, place.position);
    return holds;
  }

  /** The last state from which neither the place nor those of the lots put in have been looked at yet: the run before each is still to come. */
  private stateBefore(place: Place): number {
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
    return low;
  }
}

/** Room for more options than most orders have, so that arrays need not be made anew. */
const USUAL_OPTIONS = 64;

/** Insertions into one plan that stands, each lent to one question at a time: questions that pause may overlap. */
export class InsertionRoom {
  readonly standing: Standing;
  private readonly idle: Insertion[] = [];

  constructor(standing: Standing) {
    this.standing = standing;
  }

  /** Makes the arrays of the first question ahead of it. */
  prepare(): void {
    this.giveBack(new Insertion(this.standing, USUAL_OPTIONS));
  }

  /** An insertion of the order, for its asker alone until it is given back. */
  lend(order: Job, freed: ReadonlySet<string> = new Set()): Insertion {
    const own = this.idle.pop();
    const insertion =
      own?.fits(order) === true
        ? own
        : new Insertion(this.standing, Math.max(USUAL_OPTIONS, order.options.length));
    insertion.begin(order, freed);
    return insertion;
  }

  giveBack(insertion: Insertion): void {
    this.idle.push(insertion);
  }
}
