import { whyUnplanned } from "../explain/why-unplanned.ts";
import { addedCost, breakdownOf } from "../plan/breakdown.ts";
import { buildPlan, changeSegment, mouldCopyOf } from "../plan/build-plan.ts";
import type { ChangeSegment, Plan } from "../plan/plan.ts";
import { withJob } from "../problem/compile.ts";
import type { CompiledProblem } from "../problem/compiled-problem.ts";
import type { Job } from "../problem/problem-data.ts";
import { Decoder } from "../timing/decoder.ts";
import { copyLots, emptySequences, insertOption, type Sequences } from "../timing/sequences.ts";
import type { Insertion } from "./insertion.ts";
import { movedRuns } from "./moved-runs.ts";
import { countPlaces, type Place } from "./place-bounds.ts";
import type { DisplacedOrder, OpenDesk, PromisedLot, PromisedOrder } from "./promise.ts";
import { lastEnds, standingOf, type Standing } from "./standing.ts";

/** The plan of sequences, in ids and epoch seconds. */
export function planOf(problem: CompiledProblem, sequences: Sequences): Plan {
  const decoder = new Decoder(problem, true);
  decoder.decode(sequences);
  return buildPlan(problem, decoder, whyUnplanned(decoder));
}

/** The change that serves a lot in the plan timed last. */
function changeFor(decoder: Decoder, lot: number): ChangeSegment | null {
  const row = decoder.option[lot]! < 0 ? -1 : decoder.change[lot]!;
  return row < 0 ? null : changeSegment(decoder.problem, decoder.log, row);
}

function promisedLot(decoder: Decoder, sequences: Sequences, lot: number): PromisedLot {
  const { problem } = decoder;
  const { data, lots, options, origin } = problem;
  const option = decoder.option[lot]!;
  const line = options.line[option]!;
  const position = sequences.at[line]!.indexOf(option);
  const next = position + 1 < sequences.length[line]! ? sequences.at[line]![position + 1]! : -1;
  const end = origin + decoder.end[lot]!;
  return {
    pieces: sequences.pieces[lot]!,
    lineId: data.lines[line]!.id,
    setupId: data.setups[options.setup[option]!]!.id,
    mould: mouldCopyOf(problem, decoder.copy[lot]!),
    position,
    start: origin + decoder.start[lot]!,
    end,
    finish: end + data.jobs[lots.job[lot]!]!.conditioningSeconds,
    changeBefore: changeFor(decoder, lot),
    changeAfter: next < 0 ? null : changeFor(decoder, options.lot[next]!),
  };
}

/** Orders that the decoder, which timed the plan with the order last, finishes after their limits. */
function displacedOrders(standing: Standing, decoder: Decoder): readonly DisplacedOrder[] {
  const { data, origin } = decoder.problem;
  const before = lastEnds(standing.problem, standing);
  const after = lastEnds(decoder.problem, decoder);
  const displaced: DisplacedOrder[] = [];
  standing.latestEnd.forEach((by, job) => {
    if (after[job]! <= by) return;
    const { orderId, conditioningSeconds } = data.jobs[job]!;
    const instant = (end: number): number => origin + end + conditioningSeconds;
    displaced.push({
      orderId,
      by: instant(by),
      finishBefore: instant(before[job]!),
      finish: instant(after[job]!),
    });
  });
  return displaced.sort((a, b) => (a.orderId < b.orderId ? -1 : 1));
}

/** What an insertion came to, apart from its arrays. */
interface Outcome {
  readonly standing: Standing;
  readonly order: Job;
  readonly places: readonly Place[];
  /** Of the order's lots, by their numbers. */
  readonly pieces: readonly number[];
}

/** The plan with the order in it, in arrays of its own. */
function inserted({ standing, order, places, pieces }: Outcome): {
  readonly problem: CompiledProblem;
  readonly sequences: Sequences;
} {
  const problem = withJob(standing.problem, order);
  const sequences = emptySequences(problem);
  standing.sequences.at.forEach((row, line) => {
    sequences.length[line] = standing.sequences.length[line]!;
    sequences.at[line]!.set(row.subarray(0, sequences.length[line]));
  });
  copyLots(standing.sequences, sequences);
  sequences.pieces.set(pieces, standing.problem.lots.count);
  for (const { option, position } of places)
    insertOption(sequences, problem.options.line[option]!, position, option);
  return { problem, sequences };
}

/** The plan with the order in it, to stand in turn. */
function heldPlan(outcome: Outcome, by: number | undefined): Standing {
  const { standing } = outcome;
  const { problem, sequences } = inserted(outcome);
  const decoder = new Decoder(problem, false);
  decoder.decode(sequences);
  const { dueAt, conditioningSeconds } = problem.data.jobs.at(-1)!;
  const ends = lastEnds(problem, decoder);
  const own = (by ?? dueAt) - conditioningSeconds - problem.origin;
  const latestEnd = ends.map((end, job) => Math.max(end, standing.latestEnd[job] ?? own));
  return standingOf(decoder, sequences, latestEnd);
}

/**
 * What the insertion, in which all lots of the order have their places, promises; `deskOf` opens the desk on what stands then. The answer
 * holds nothing of the insertion.
 */
export function promisedOrder(insertion: Insertion, deskOf: (standing: Standing) => OpenDesk): PromisedOrder {
  const { standing, problem, sequences, firstLot } = insertion;
  const { data } = problem;
  const decoder = insertion.timed();
  const order = data.jobs.at(-1)!;
  const ownLots = problem.lots.firstLot[data.jobs.length]! - firstLot;
  const outcome: Outcome = {
    standing,
    order,
    places: [...insertion.placed],
    pieces: [...sequences.pieces.subarray(firstLot, firstLot + ownLots)],
  };
  const lots: PromisedLot[] = [];
  for (let lot = firstLot; lot < problem.lots.count; lot++)
    if (decoder.option[lot]! >= 0) lots.push(promisedLot(decoder, sequences, lot));
  const objective = breakdownOf(decoder.sums, data.objective);
  return {
    order,
    finish: Math.max(...lots.map(({ finish }) => finish)),
    lots: lots.sort((a, b) => a.start - b.start),
    moved: movedRuns(problem, standing, decoder),
    displaced: displacedOrders(standing, decoder),
    objective,
    price: addedCost(objective, standing.objective, data.objective),
    places: countPlaces(problem, standing.sequences, insertion.optionsOf(0)),
    decodes: insertion.decodes,
    plan: () => {
      const plan = inserted(outcome);
      return planOf(plan.problem, plan.sequences);
    },
    hold: (by) => deskOf(heldPlan(outcome, by)),
  };
}
