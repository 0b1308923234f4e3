import type { Plan, PlannedLot } from "../plan/plan.ts";
import type { CompiledProblem } from "../problem/compiled-problem.ts";
import type { Decoder } from "../timing/decoder.ts";
import { allowedPositions, emptySequences, insertOption, type Sequences } from "../timing/sequences.ts";

/** Options of the problem by lot (0-based within its order), line and set-up. */
type OptionsByName = ReadonlyMap<string, number>;

function nameOf(lot: PlannedLot, number: number): string {
  return JSON.stringify([lot.orderId, number, lot.lineId, lot.setupId]);
}

function optionsByName({ data, options, lots }: CompiledProblem): OptionsByName {
  const byName = new Map<string, number>();
  for (let option = 0; option < options.count; option++) {
    const job = options.job[option]!;
    const number = options.lot[option]! - lots.firstLot[job]!;
    const order = data.jobs[job]!.orderId;
    const setup = data.setups[options.setup[option]!]!.id;
    byName.set(JSON.stringify([order, number, data.lines[options.line[option]!]!.id, setup]), option);
  }
  return byName;
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
  byName: OptionsByName,
  ask: { readonly job: number; readonly planned: readonly PlannedLot[]; readonly whole: boolean },
): readonly { readonly lot: PlannedLot; readonly option: number }[] {
  const { job, planned, whole } = ask;
  const pieces = planned.map((lot) => lot.pieces);
  if (planned.length > 1 && !whole && isSplitAllowed(problem, job, pieces)) {
    const chosen = planned.flatMap((lot) => {
      const option = byName.get(nameOf(lot, lot.lot));
      return option === undefined ? [] : [{ lot, option }];
    });
    if (chosen.length === planned.length) return chosen;
  }
  for (const lot of planned) {
    const option = byName.get(nameOf(lot, 0));
    if (option !== undefined) return [{ lot, option }];
  }
  return [];
}

function sequencesOf(problem: CompiledProblem, plan: Plan, whole: ReadonlySet<number>): Sequences {
  const { lots: compiledLots, options } = problem;
  const byName = optionsByName(problem);
  const lotsOf = new Map<string, PlannedLot[]>();
  for (const lot of plan.lots) lotsOf.set(lot.orderId, [...(lotsOf.get(lot.orderId) ?? []), lot]);
  const sequences = emptySequences(problem);
  const chosen = problem.data.jobs.flatMap(({ orderId }, job) => {
    const planned = lotsOf.get(orderId) ?? [];
    const runs = chosenOf(problem, byName, { job, planned, whole: whole.has(job) });
    if (runs.length > 1) {
      for (const { lot } of runs) sequences.pieces[compiledLots.firstLot[job]! + lot.lot] = lot.pieces;
    }
    return runs;
  });
  chosen.sort((a, b) => a.lot.start - b.lot.start || a.lot.end - b.lot.end || a.option - b.option);
  for (const { option } of chosen) {
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
export function resume(decoder: Decoder, plan: Plan): Sequences {
  const whole = new Set<number>();
  for (;;) {
    const sequences = sequencesOf(decoder.problem, plan, whole);
    if (decoder.decode(sequences) < Infinity) return sequences;
    for (const job of tornJobs(decoder, sequences)) whole.add(job);
  }
}
