import { createRandom } from "../chance/random.ts";
import type { CompiledProblem } from "../problem/compiled-problem.ts";
import { Decoder } from "../timing/decoder.ts";
import type { Sequences } from "../timing/sequences.ts";
import type { Work } from "../work/work.ts";
import { DurationDraws } from "./draw-durations.ts";
import type { Simulation, SimulatedOrder, SimulationParams } from "./simulation.ts";

/** A plan to be played. */
export interface PlayedPlan {
  readonly problem: CompiledProblem;
  readonly sequences: Sequences;
  /** [job] s at which its last lot ends as planned; -1 where it is not planned */
  readonly end: Float64Array;
  /** [job] s by which it must end */
  readonly by: Float64Array;
}

/** Ends of one order over all plays, ascending, Infinity where it does not end in the horizon. */
type Ends = Float64Array;

/** [job] s at which the last lot of each ends in the play timed last; Infinity where one of them does not. */
function noteEnds({ problem, option, end }: Decoder, { pieces }: Sequences, into: Float64Array): void {
  const { lots } = problem;
  into.fill(-1);
  for (let lot = 0; lot < lots.count; lot++) {
    if (pieces[lot] === 0) continue;
    const job = lots.job[lot]!;
    const at = option[lot]! < 0 ? Infinity : end[lot]!;
    if (at > into[job]!) into[job] = at;
  }
}

/** How many of ascending ends are not after an instant. */
function countBy(ends: Ends, at: number): number {
  let low = 0;
  let high = ends.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (ends[middle]! <= at) low = middle + 1;
    else high = middle;
  }
  return low;
}

function meanOf(ends: Ends, finished: number): number | null {
  if (finished === 0) return null;
  let sum = 0;
  for (let i = 0; i < finished; i++) sum += ends[i]!;
  return sum / finished;
}

function simulatedOrder({ problem, end, by }: PlayedPlan, job: number, ends: Ends): SimulatedOrder {
  const { data, origin } = problem;
  const { orderId, conditioningSeconds } = data.jobs[job]!;
  const instant = (at: number): number => origin + at + conditioningSeconds;
  const quantile = (share: number): number | null => {
    const at = ends[Math.ceil(share * ends.length - 1e-9) - 1]!;
    return at < Infinity ? instant(at) : null;
  };
  const finished = countBy(ends, problem.horizon);
  const mean = meanOf(ends, finished);
  return {
    orderId,
    by: instant(by[job]!),
    plannedFinish: instant(end[job]!),
    inTime: countBy(ends, by[job]!) / ends.length,
    finish50: quantile(0.5),
    finish80: quantile(0.8),
    finish95: quantile(0.95),
    meanFinish: mean === null ? null : instant(mean),
    unfinished: (ends.length - finished) / ends.length,
  };
}

/**
 * Plays a plan many times under random failures and durations: its lots keep their lines and their order there, and each begins as
 * soon as its line, mould, team, operators and material allow, be that before or after it was planned, but not before its earliest or
 * pinned start. What lines share goes to the one that can begin first, as in the plan. Pauses after every play. Same plan, params, seed:
 * same answer. O(runs × decode); keeps one number for each run and order.
 */
export function* simulate(plan: PlayedPlan, params: SimulationParams): Work<Simulation> {
  const { problem, end, by } = plan;
  const { data, jobs } = problem;
  const draws = new DurationDraws(problem, plan.sequences, params.spreads, createRandom(params.seed));
  const sequences: Sequences = { ...plan.sequences, drawn: draws.drawn };
  const decoder = new Decoder(problem, false);
  const last = new Float64Array(jobs.count);
  const planned = data.jobs.flatMap((_, job) => (end[job]! >= 0 ? [job] : []));
  const endsOf = new Map<number, Ends>(planned.map((job) => [job, new Float64Array(params.runs)]));
  for (let run = 0; run < params.runs; run++) {
    draws.next();
    decoder.decode(sequences);
    noteEnds(decoder, sequences, last);
    for (const [job, ends] of endsOf) ends[run] = last[job]!;
    params.onRun?.(run + 1);
    yield;
  }
  for (const ends of endsOf.values()) ends.sort();
  const orders = planned.map((job) => simulatedOrder(plan, job, endsOf.get(job)!));
  const jobOf = new Map(planned.map((job) => [data.jobs[job]!.orderId, job]));
  return {
    status: "simulated",
    runs: params.runs,
    orders: orders.sort((a, b) => (a.orderId < b.orderId ? -1 : 1)),
    expectedLateOrders: planned.reduce(
      (sum, job) => sum + 1 - countBy(endsOf.get(job)!, by[job]!) / params.runs,
      0,
    ),
    chanceBy: (orderId, instant) => {
      const job = jobOf.get(orderId);
      if (job === undefined) return null;
      const at = instant - problem.origin - data.jobs[job]!.conditioningSeconds;
      return countBy(endsOf.get(job)!, at) / params.runs;
    },
  };
}
