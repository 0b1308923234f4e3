import { whyUnplanned } from "../explain/why-unplanned.ts";
import { buildPlan, changeSegment, mouldCopyOf } from "../plan/build-plan.ts";
import type { ChangeSegment, Plan } from "../plan/plan.ts";
import { withJob } from "../problem/compile.ts";
import type { CompiledProblem } from "../problem/compiled-problem.ts";
import type { Job } from "../problem/problem-data.ts";
import type { DecoderState } from "../timing/decoder-state.ts";
import { Decoder } from "../timing/decoder.ts";
import { copyLots, emptySequences, insertOption, removeAt, type Sequences } from "../timing/sequences.ts";
import { placesFor, type Place } from "./place-bounds.ts";
import type { MovedRun, PromiseAnswer, PromisedRun } from "./promise.ts";
import { refusalsOf } from "./refusals.ts";

/** States of the standing plan's decode that are kept: a trial goes on from the last one before its place. */
const KEPT_STATES = 48;

/** A plan that stands, as sequences, and by when its orders must be done. */
export interface StandingSequences {
  readonly problem: CompiledProblem;
  readonly sequences: Sequences;
  /** [job] s; Infinity for orders without runs */
  readonly latestEnd: Float64Array;
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

/** [lot] s by which each must end: all of an order's lots by its promise, lots that do not run at any time. */
function lotLimits(problem: CompiledProblem, latestEnd: Float64Array): Float64Array {
  const { lots } = problem;
  return Float64Array.from(lots.job, (job) => latestEnd[job] ?? Infinity);
}

/** The last state from which the line's place has not been looked at yet: the run before it is still to come. */
function stateBefore(states: readonly DecoderState[], line: number, position: number): DecoderState {
  let low = 0;
  let high = states.length;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (states[middle]!.next[line]! < position) low = middle;
    else high = middle;
  }
  return states[low]!;
}

interface Trial {
  readonly decoder: Decoder;
  readonly sequences: Sequences;
  readonly states: readonly DecoderState[];
  readonly latestEnd: Float64Array;
  readonly lot: number;
}

/** True when every lot is in time with the new one at the place, the new one by its own limit. Leaves the plan in the decoder. */
function holdsAt({ decoder, sequences, states, latestEnd }: Trial, { option, position }: Place): boolean {
  const line = decoder.problem.options.line[option]!;
  insertOption(sequences, line, position, option);
  const holds = decoder.decodeFrom(stateBefore(states, line, position), sequences, latestEnd);
  removeAt(sequences, line, position);
  return holds;
}

/** The place that ends first; of equals the lower option, then the lower position. */
function earliest(
  trial: Trial,
  places: readonly Place[],
): { readonly best: Place | null; readonly decodes: number } {
  const { decoder, latestEnd, lot } = trial;
  let best: Place | null = null;
  let bestEnd = Infinity;
  let decodes = 0;
  for (const place of places) {
    if (place.endsFrom > bestEnd) break;
    const wins =
      best === null ||
      place.option < best.option ||
      (place.option === best.option && place.position < best.position);
    latestEnd[lot] = wins ? bestEnd : bestEnd - 1;
    decodes++;
    if (!holdsAt(trial, place) || decoder.option[lot]! < 0) continue;
    best = place;
    bestEnd = decoder.end[lot]!;
  }
  return { best, decodes };
}

function movedRuns(before: Decoder, after: Decoder): readonly MovedRun[] {
  const { data, lots, options, origin } = after.problem;
  const moved: MovedRun[] = [];
  for (let lot = 0; lot < before.option.length; lot++) {
    const option = before.option[lot]!;
    if (option < 0 || (before.start[lot] === after.start[lot] && before.end[lot] === after.end[lot]))
      continue;
    const job = lots.job[lot]!;
    moved.push({
      orderId: data.jobs[job]!.orderId,
      lot: lot - lots.firstLot[job]!,
      lineId: data.lines[options.line[option]!]!.id,
      startBefore: origin + before.start[lot]!,
      start: origin + after.start[lot]!,
      endBefore: origin + before.end[lot]!,
      end: origin + after.end[lot]!,
    });
  }
  return moved.sort(
    (a, b) => a.start - b.start || (a.orderId < b.orderId ? -1 : a.orderId > b.orderId ? 1 : a.lot - b.lot),
  );
}

/** The change that serves a lot in the plan timed last. */
function changeFor(decoder: Decoder, lot: number): ChangeSegment | null {
  const row = decoder.option[lot]! < 0 ? -1 : decoder.change[lot]!;
  return row < 0 ? null : changeSegment(decoder.problem, decoder.log, row);
}

/** The plan of sequences in which the new order has its place. */
function planOf(problem: CompiledProblem, sequences: Sequences, { option, position }: Place): Plan {
  const decoder = new Decoder(problem, true);
  insertOption(sequences, problem.options.line[option]!, position, option);
  decoder.decode(sequences);
  removeAt(sequences, problem.options.line[option]!, position);
  return buildPlan(problem, decoder, whyUnplanned(decoder));
}

/** What the trial's decoder found for the new order's place, against the plan as it stood. */
function describe(trial: Trial, base: Decoder, place: Place): Omit<PromisedRun, "places" | "decodes"> {
  const { decoder, sequences, lot } = trial;
  const { problem } = decoder;
  const { data, lots, options, origin } = problem;
  const { option, position } = place;
  const line = options.line[option]!;
  const order = data.jobs[lots.job[lot]!]!;
  const next = position < sequences.length[line]! ? options.lot[sequences.at[line]![position]!]! : -1;
  const end = origin + decoder.end[lot]!;
  return {
    orderId: order.orderId,
    lineId: data.lines[line]!.id,
    setupId: data.setups[options.setup[option]!]!.id,
    mould: mouldCopyOf(problem, decoder.copy[lot]!),
    position,
    start: origin + decoder.start[lot]!,
    end,
    finish: end + order.conditioningSeconds,
    changeBefore: changeFor(decoder, lot),
    changeAfter: next < 0 ? null : changeFor(decoder, next),
    moved: movedRuns(base, decoder),
    plan: () => planOf(problem, sequences, place),
  };
}

/**
 * Finds the place for one order, in one lot, at which it ends first and every other order ends by its limit; tries all places that
 * bounds cannot rule out, the most promising first. Exact: what it answers is the best of all places under all rules.
 */
export function insertEarliest(standing: StandingSequences, order: Job): PromiseAnswer {
  const problem = withJob(standing.problem, order);
  const sequences = widened(standing.sequences, problem);
  const latestEnd = lotLimits(problem, standing.latestEnd);
  const { lots, jobs } = problem;
  const lot = lots.firstLot[jobs.count - 1]!;
  const options = Array.from(
    { length: lots.firstOption[lot + 1]! - lots.firstOption[lot]! },
    (_, i) => lots.firstOption[lot]! + i,
  );
  const base = new Decoder(problem, false);
  const runs = sequences.length.reduce((sum, length) => sum + length, 0);
  const states = base.decodeKeeping(sequences, Math.max(1, Math.ceil(runs / KEPT_STATES)));
  const { places, allowed } = placesFor(base, sequences, { options, latestEnd });
  const decoder = new Decoder(problem, false);
  const trial: Trial = { decoder, sequences, states, latestEnd, lot };
  const { best, decodes } = earliest(trial, places);
  if (best === null) {
    const reasons = refusalsOf(decoder, sequences, { lot, options, latestEnd });
    return { status: "refused", reasons, decodes };
  }
  // the last trial need not have been the best one
  latestEnd[lot] = Infinity;
  holdsAt(trial, best);
  return {
    status: "promised",
    promise: { ...describe(trial, base, best), places: allowed, decodes: decodes + 1 },
  };
}
