import { addWork, NEVER, nextOpen } from "../problem/calendar.ts";
import type { CompiledProblem } from "../problem/compiled-problem.ts";
import type { Decoder } from "../timing/decoder.ts";
import { allowedPositions, lotSeconds, type Sequences } from "../timing/sequences.ts";

/** A position of a line for one option, with an instant (s) before which its run cannot end. */
export interface Place {
  readonly option: number;
  readonly position: number;
  readonly endsFrom: number;
}

/** Where a plan that stands lets a line begin anew. */
interface StandingPlan {
  readonly problem: CompiledProblem;
  readonly sequences: Sequences;
  /** [lot] s, end in the plan; -1 where it does not run */
  readonly end: Int32Array;
  /** [lot] s by which it must end */
  readonly latestEnd: Float64Array;
}

/** Earliest end of one change by itself: team work in any team's hours, then the tail in the line's. */
function changeEnd(problem: CompiledProblem, line: number, from: number, spec: number): number {
  if (spec < 0) return from;
  const { changes, lines, anyTeam } = problem;
  const work = changes.teamWork[spec]!;
  const tailFrom = work > 0 ? addWork(anyTeam, nextOpen(anyTeam, from), work) : from;
  return tailFrom >= NEVER ? NEVER : addWork(lines.calendar[line]!, tailFrom, changes.tail[spec]!);
}

function specOf(
  { lines, changes }: CompiledProblem,
  line: number,
  [from, to]: readonly [number, number],
): number {
  return changes.matrix[(lines.changeClass[line]! * changes.setupCount + from) * changes.setupCount + to]!;
}

/** A line after a run: free from an instant on (s), in a set-up (-1: the first run needs no change). */
interface LineEnd {
  readonly free: number;
  readonly setup: number;
}

/** Earliest instant at which the line can run the option, changed for it; its mould may be stripped for another line before. */
function readyFor(problem: CompiledProblem, { free, setup }: LineEnd, option: number): number {
  const { options, setups } = problem;
  const opens = options.availableFrom[option]!;
  const from = Math.max(free, opens);
  if (setup < 0) return from;
  const line = options.line[option]!;
  const to = options.setup[option]!;
  const direct = changeEnd(problem, line, from, specOf(problem, line, [setup, to]));
  const stripped = setups.stripped[setup]!;
  if (stripped === setup || direct === from) return direct;
  const bare = changeEnd(problem, line, free, specOf(problem, line, [setup, stripped]));
  if (bare >= NEVER) return direct;
  const mounted = changeEnd(problem, line, Math.max(bare, opens), specOf(problem, line, [stripped, to]));
  return Math.min(direct, mounted);
}

/**
 * Instant before which an option cannot end on its line; s, NEVER past the horizon. Warm-ups
 * are left out: they depend on where the stops fall, and a later start may have fewer.
 */
function leastEnd({ problem, sequences }: StandingPlan, before: LineEnd, option: number): number {
  const { jobs, lots, options, lines } = problem;
  const line = options.line[option]!;
  const wanted = Math.max(
    readyFor(problem, before, option),
    jobs.release[options.job[option]!]!,
    lots.fixedStart[options.lot[option]!]!,
  );
  const calendar = lines.runCalendar[line]!;
  const start = wanted >= NEVER ? NEVER : nextOpen(calendar, wanted);
  return start >= NEVER ? NEVER : addWork(calendar, start, lotSeconds(problem, sequences, option));
}

/** True when the runs behind an inserted one could still be in time as far as their own line tells. */
function othersMayKeep(plan: StandingPlan, place: Place): boolean {
  const { problem, sequences, end, latestEnd } = plan;
  const { options } = problem;
  const line = options.line[place.option]!;
  let free = place.endsFrom;
  let setup = options.setup[place.option]!;
  for (let p = place.position; p < sequences.length[line]!; p++) {
    const option = sequences.at[line]![p]!;
    const lot = options.lot[option]!;
    free = leastEnd(plan, { free, setup }, option);
    if (free > latestEnd[lot]! || free >= NEVER) return false;
    setup = options.setup[option]!;
    // behind a gap the line may be as it was
    if (free <= end[lot]!) return true;
  }
  return true;
}

/** The option's place at a position with the bound of its end: NEVER where the line by itself rules it out. */
function placeAt(plan: StandingPlan, option: number, position: number): Place {
  const { lines, options } = plan.problem;
  const line = options.line[option]!;
  const before = position === 0 ? -1 : plan.sequences.at[line]![position - 1]!;
  const free = before < 0 ? lines.freeAt[line]! : plan.end[options.lot[before]!]!;
  const setup = before < 0 ? lines.initialSetup[line]! : options.setup[before]!;
  const place = { option, position, endsFrom: leastEnd(plan, { free, setup }, option) };
  return place.endsFrom < NEVER && othersMayKeep(plan, place) ? place : { ...place, endsFrom: NEVER };
}

/** Every position at which the options may stand. */
function* allowedPlaces(
  { problem, sequences }: StandingPlan,
  asked: readonly number[],
): Generator<readonly [option: number, position: number], undefined, undefined> {
  for (const option of asked) {
    const { first, last } = allowedPositions(problem, sequences, option);
    for (let position = first; position <= last; position++) yield [option, position];
  }
}

/** Positions at which the options may stand, of all of them. */
export function countPlaces(
  problem: CompiledProblem,
  sequences: Sequences,
  asked: readonly number[],
): number {
  return asked.reduce((sum, option) => {
    const { first, last } = allowedPositions(problem, sequences, option);
    return sum + last - first + 1;
  }, 0);
}

interface PlacesAsk {
  /** Of one lot. */
  readonly options: readonly number[];
  /** [lot] s by which it must end */
  readonly latestEnd: Float64Array;
}

/**
 * Every place at which the options of a lot may stand, less those that the line by itself rules out; the one that could end first
 * comes first, then the lower option, then the lower position. The decoder has timed the sequences last.
 */
export function placesFor(decoder: Decoder, sequences: Sequences, ask: PlacesAsk): readonly Place[] {
  const plan: StandingPlan = {
    problem: decoder.problem,
    sequences,
    end: decoder.end,
    latestEnd: ask.latestEnd,
  };
  const places: Place[] = [];
  for (const [option, position] of allowedPlaces(plan, ask.options)) {
    const place = placeAt(plan, option, position);
    if (place.endsFrom < NEVER) places.push(place);
  }
  return places.sort((a, b) => a.endsFrom - b.endsFrom || a.option - b.option || a.position - b.position);
}

/** Sizes that a lot may have: `first` pieces and up to `count` units more. */
export interface LotSteps {
  readonly first: number;
  readonly unit: number;
  readonly count: number;
}

/** A place, and the most units above the first pieces with which the line by itself could end by an instant there. */
export interface RoomyPlace {
  readonly place: Place;
  readonly most: number;
}

/** Every place at which a lot of the first pieces could end by an instant for all that its line tells; the roomiest comes first. */
export function mostPieces(
  decoder: Decoder,
  sequences: Sequences,
  ask: PlacesAsk & { readonly by: number; readonly steps: LotSteps },
): readonly RoomyPlace[] {
  const { options, latestEnd, by, steps } = ask;
  const plan: StandingPlan = { problem: decoder.problem, sequences, end: decoder.end, latestEnd };
  const fits = (option: number, position: number, count: number): boolean => {
    sequences.pieces[decoder.problem.options.lot[option]!] = steps.first + count * steps.unit;
    return placeAt(plan, option, position).endsFrom <= by;
  };
  const roomy: RoomyPlace[] = [];
  for (const [option, position] of allowedPlaces(plan, options)) {
    if (!fits(option, position, 0)) continue;
    let most = 0;
    for (let high = steps.count; most < high;) {
      const middle = Math.ceil((most + high) / 2);
      if (fits(option, position, middle)) most = middle;
      else high = middle - 1;
    }
    roomy.push({ place: { option, position, endsFrom: 0 }, most });
  }
  return roomy.sort(
    (a, b) => b.most - a.most || a.place.option - b.place.option || a.place.position - b.place.position,
  );
}
