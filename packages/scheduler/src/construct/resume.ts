import type { Plan, PlannedLot } from "../plan/plan.ts";
import type { CompiledProblem } from "../problem/compiled-problem.ts";
import type { Decoder } from "../timing/decoder.ts";
import { allowedPositions, emptySequences, insertOption, type Sequences } from "../timing/sequences.ts";
import type { Work } from "../work/work.ts";
import { TURN_NAMES } from "../timing/turns.ts";

/** Positions of lines and set-ups by their ids. */
interface Places {
  readonly line: ReadonlyMap<string, number>;
  readonly setup: ReadonlyMap<string, number>;
}

function placesOf({ data }: CompiledProblem): Places {
  return {
    line: new Map(data.lines.map(({ id }, line) => [id, line])),
    setup: new Map(data.setups.map(({ id }, setup) => [id, setup])),
  };
}

/** The option of the job's lot of that number (from 0) in which the planned lot runs, or null. */
function optionOf(
  { lots, options }: CompiledProblem,
  places: Places,
  ask: { readonly job: number; readonly planned: PlannedLot; readonly number: number },
): number | null {
  const lot = lots.firstLot[ask.job]! + ask.number;
  if (lot >= lots.firstLot[ask.job + 1]!) return null;
  const line = places.line.get(ask.planned.lineId);
  const setup = places.setup.get(ask.planned.setupId);
  for (let option = lots.firstOption[lot]!; option < lots.firstOption[lot + 1]!; option++)
    if (options.line[option] === line && options.setup[option] === setup) return option;
  return null;
}

/** True when the problem lets the order be made in lots of just these pieces. */
function isSplitAllowed({ jobs, lots }: CompiledProblem, job: number, pieces: readonly number[]): boolean {
  const most = lots.firstLot[job + 1]! - lots.firstLot[job]!;
  const least = lots.leastPieces[job]!;
  const unit = lots.unitPieces[job]!;
  return (
    pieces.length <= most &&
    pieces.reduce((sum, each) => sum + each, 0) === jobs.pieces[job] &&
    pieces.every((each) => each >= least) &&
    pieces.filter((each) => each % unit !== 0).length <= 1
  );
}

/** What runs of an order, lot by lot: as the plan has it where the problem allows that, else whole at the first place that may make it. */
function chosenOf(
  problem: CompiledProblem,
  places: Places,
  ask: { readonly job: number; readonly planned: readonly PlannedLot[]; readonly whole: boolean },
): readonly { readonly lot: PlannedLot; readonly option: number }[] {
  const { job, planned, whole } = ask;
  const pieces = planned.map((lot) => lot.pieces);
  if (planned.length > 1 && !whole && isSplitAllowed(problem, job, pieces)) {
    const chosen = planned.flatMap((lot) => {
      const option = optionOf(problem, places, { job, planned: lot, number: lot.lot });
      return option === null ? [] : [{ lot, option }];
    });
    if (chosen.length === planned.length) return chosen;
  }
  for (const lot of planned) {
    const option = optionOf(problem, places, { job, planned: lot, number: 0 });
    if (option !== null) return [{ lot, option }];
  }
  return [];
}

function sequencesOf(
  problem: CompiledProblem,
  places: Places,
  { plan, whole }: { readonly plan: Plan; readonly whole: ReadonlySet<number> },
): Sequences {
  const { lots: compiledLots, options } = problem;
  const lotsOf = new Map<string, PlannedLot[]>();
  for (const lot of plan.lots) lotsOf.set(lot.orderId, [...(lotsOf.get(lot.orderId) ?? []), lot]);
  const sequences = emptySequences(problem);
  const chosen = problem.data.jobs.flatMap(({ orderId }, job) => {
    const planned = lotsOf.get(orderId) ?? [];
    const runs = chosenOf(problem, places, { job, planned, whole: whole.has(job) });
    if (runs.length > 1) {
      for (const { lot } of runs) sequences.pieces[compiledLots.firstLot[job]! + lot.lot] = lot.pieces;
    }
    return runs;
  });
  chosen.sort((a, b) => a.lot.start - b.lot.start || a.lot.end - b.lot.end || a.option - b.option);
  for (const { lot, option } of chosen) {
    sequences.turn[options.lot[option]!] = Math.max(0, TURN_NAMES.indexOf(lot.turn ?? null));
    // a sequence may have been pinned since: pinned orders come first, by rank
    const { last } = allowedPositions(problem, sequences, option);
    insertOption(sequences, options.line[option]!, last, option);
  }
  return sequences;
}

/** Jobs of which the decoder could not place every lot. */
function tornJobs({ problem, option }: Decoder, { pieces }: Sequences): number[] {
  const torn = new Set<number>();
  pieces.forEach((each, lot) => {
    const job = problem.lots.job[lot]!;
    if (each > 0 && each < problem.jobs.pieces[job]! && option[lot]! < 0) torn.add(job);
  });
  return [...torn];
}

/**
 * The sequences of a plan, for a problem that may have changed since: orders that are gone, and runs that the problem no
 * longer allows, are passed over; new orders are left to the search; an order whose lots do not all find room any more is
 * put together again. Leaves the plan of the sequences in the decoder. O(lots × log), once per order put together.
 */
export function* resume(decoder: Decoder, plan: Plan): Work<Sequences> {
  const whole = new Set<number>();
  const places = placesOf(decoder.problem);
  for (;;) {
    yield;
    const sequences = sequencesOf(decoder.problem, places, { plan, whole });
    yield;
    if (decoder.decode(sequences) < Infinity) return sequences;
    for (const job of tornJobs(decoder, sequences)) whole.add(job);
  }
}
