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

/**
 * Every place at which the options of a lot may stand, less those that the line by itself rules out; the one that could end first
 * comes first, then the lower option, then the lower position.
 */
export function placesFor(
  decoder: Decoder,
  sequences: Sequences,
  ask: { readonly options: readonly number[]; readonly latestEnd: Float64Array },
): { readonly places: readonly Place[]; readonly allowed: number } {
  const { problem } = decoder;
  const { lines, options } = problem;
  const plan: StandingPlan = { problem, sequences, end: decoder.end, latestEnd: ask.latestEnd };
  const places: Place[] = [];
  let allowed = 0;
  for (const option of ask.options) {
    const line = options.line[option]!;
    const { first, last } = allowedPositions(problem, sequences, option);
    allowed += last - first + 1;
    for (let position = first; position <= last; position++) {
      const before = position === 0 ? -1 : sequences.at[line]![position - 1]!;
      const free = before < 0 ? lines.freeAt[line]! : decoder.end[options.lot[before]!]!;
      const setup = before < 0 ? lines.initialSetup[line]! : options.setup[before]!;
      const place = { option, position, endsFrom: leastEnd(plan, { free, setup }, option) };
      if (place.endsFrom < NEVER && othersMayKeep(plan, place)) places.push(place);
    }
  }
  places.sort((a, b) => a.endsFrom - b.endsFrom || a.option - b.option || a.position - b.position);
  return { places, allowed };
}
