import { breakdownOf } from "../plan/breakdown.ts";
import type { ObjectiveBreakdown } from "../plan/plan.ts";
import type { CompiledProblem } from "../problem/compiled-problem.ts";
import type { Decoder } from "../timing/decoder.ts";
import type { Sequences } from "../timing/sequences.ts";

/** When lots run. */
export interface RunTimes {
  /** [lot] option that runs or -1; start and end, s */
  readonly option: Int32Array;
  readonly start: Int32Array;
  readonly end: Int32Array;
}

/** A plan that stands, and by when its orders must be done. */
export interface Standing extends RunTimes {
  readonly problem: CompiledProblem;
  readonly sequences: Sequences;
  /** [job] s by which its lots must end; Infinity for orders without runs */
  readonly latestEnd: Float64Array;
  readonly objective: ObjectiveBreakdown;
}

/** [job] s at which the last of its lots ends; -1 where none runs. */
export function lastEnds({ jobs, lots }: CompiledProblem, { option, end }: RunTimes): Float64Array {
  const last = new Float64Array(jobs.count).fill(-1);
  for (let lot = 0; lot < lots.count; lot++) {
    const job = lots.job[lot]!;
    if (option[lot]! >= 0 && end[lot]! > last[job]!) last[job] = end[lot]!;
  }
  return last;
}

/** The plan that the decoder timed last, to stand with these limits. */
export function standingOf(decoder: Decoder, sequences: Sequences, latestEnd: Float64Array): Standing {
  const { problem, option, start, end } = decoder;
  return {
    problem,
    sequences,
    latestEnd,
    option: option.slice(),
    start: start.slice(),
    end: end.slice(),
    objective: breakdownOf(decoder.sums, problem.data.objective),
  };
}
