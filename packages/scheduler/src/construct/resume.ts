import type { Plan } from "../plan/plan.ts";
import type { CompiledProblem } from "../problem/compiled-problem.ts";
import { allowedPositions, emptySequences, insertOption, type Sequences } from "../timing/sequences.ts";

/** Options of the problem by order, line and set-up. */
function optionsByName({ data, options }: CompiledProblem): Map<string, number> {
  const byName = new Map<string, number>();
  for (let option = 0; option < options.count; option++) {
    const order = data.jobs[options.job[option]!]!.orderId;
    const setup = data.setups[options.setup[option]!]!.id;
    byName.set(JSON.stringify([order, data.lines[options.line[option]!]!.id, setup]), option);
  }
  return byName;
}

/**
 * The sequences of a plan, for a problem that may have changed since: orders that are gone, and runs that the problem no
 * longer allows, are passed over; new orders are left to the search. O(lots × log).
 */
export function resume(problem: CompiledProblem, plan: Plan): Sequences {
  const byName = optionsByName(problem);
  const sequences = emptySequences(problem);
  const lots = [...plan.lots].sort((a, b) => a.start - b.start || a.end - b.end);
  for (const lot of lots) {
    const option = byName.get(JSON.stringify([lot.orderId, lot.lineId, lot.setupId]));
    if (option === undefined) continue;
    // a sequence may have been pinned since: pinned orders come first, by rank
    const { last } = allowedPositions(problem, sequences, option);
    insertOption(sequences, problem.options.line[option]!, last, option);
  }
  return sequences;
}
