import { resume } from "../construct/resume.ts";
import type { Plan } from "../plan/plan.ts";
import { compile } from "../problem/compile.ts";
import type { CompiledProblem } from "../problem/compiled-problem.ts";
import type { ProblemData } from "../problem/problem-data.ts";
import { validate } from "../problem/validate.ts";
import type { ProblemFault } from "../result.ts";
import { Decoder } from "../timing/decoder.ts";
import { finish } from "../work/work.ts";
import { deskOf } from "./desk.ts";
import { InsertionRoom } from "./insertion.ts";
import { movedRuns } from "./moved-runs.ts";
import { firstElsewhere, firstMissing } from "./plan-follows.ts";
import type { OpenDesk } from "./promise.ts";
import { lastEnds, standingOf, type RunTimes } from "./standing.ts";

/** A plan made ready for promises, or why it cannot be. */
export type PromiseDesk =
  | OpenDesk
  | { readonly status: "faulty-problem"; readonly faults: readonly ProblemFault[] }
  | {
      /** Timing the plan's runs in their order gives other times: it was edited, made for another problem, or an order that found no place held others up. */
      readonly status: "plan-does-not-follow";
      /** An order that would lie elsewhere, or have no place any more. */
      readonly orderId: string;
    };

/** Epoch seconds by which an order's last piece was promised, conditioning included, by order id. */
export type PromisedInstants = ReadonlyMap<string, number>;

/** [job] s, end of its last lot in the plan given; -1 where it has none. */
function plannedEnds({ data, jobs, origin }: CompiledProblem, plan: Plan): Float64Array {
  const ends = new Float64Array(jobs.count).fill(-1);
  const jobOf = new Map(data.jobs.map(({ orderId }, job) => [orderId, job]));
  for (const { orderId, end } of plan.lots) {
    const job = jobOf.get(orderId);
    if (job !== undefined) ends[job] = Math.max(ends[job]!, end - origin);
  }
  return ends;
}

/** [job] s by which the runs of an order must end: as promised, or as late as it was planned or has become; Infinity for orders without runs. */
function latestEnds(decoder: Decoder, plan: Plan, promised: PromisedInstants): Float64Array {
  const { problem } = decoder;
  const { data, origin } = problem;
  const planned = plannedEnds(problem, plan);
  return lastEnds(problem, decoder).map((end, job) => {
    if (end < 0) return Infinity;
    const { orderId, dueAt, conditioningSeconds } = data.jobs[job]!;
    const by = (promised.get(orderId) ?? dueAt) - conditioningSeconds - origin;
    return Math.max(end, planned[job]!, by);
  });
}

/** When the lots of the plan run, as a decoder of the problem would have it. */
function plannedTimes({ data, lots, origin }: CompiledProblem, plan: Plan, { option }: RunTimes): RunTimes {
  const jobOf = new Map(data.jobs.map(({ orderId }, job) => [orderId, job]));
  const start = new Int32Array(lots.count);
  const end = new Int32Array(lots.count);
  for (const planned of plan.lots) {
    const lot = lots.firstLot[jobOf.get(planned.orderId)!]! + planned.lot;
    start[lot] = planned.start - origin;
    end[lot] = planned.end - origin;
  }
  return { option, start, end };
}

/** How a plan is opened. */
export interface OpenPromiseOptions {
  /**
   * The plan is of the problem as it was before a change, such as a shift more: its runs keep their lines and their order, and are
   * timed anew. Nobody becomes later than promised, or than that timing makes them. Absent: no.
   */
  readonly retime?: boolean;
}

/**
 * Makes a plan ready to answer, order by order, when one more order would be finished if no other order became later than it was
 * promised: by its instant in `promised`, else its due date; an order that the plan finishes later than that keeps its planned
 * finish. Every line, mould and position is considered, the runs that stand keep their lines and their order, and all rules hold.
 * Answers are independent of one another: nothing is booked but what is held.
 */
export function openPromise(
  data: ProblemData,
  plan: Plan,
  promised: PromisedInstants = new Map(),
  { retime = false }: OpenPromiseOptions = {},
): PromiseDesk {
  const faults = validate(data);
  if (faults.length > 0) return { status: "faulty-problem", faults };
  const problem = compile(data);
  const decoder = new Decoder(problem, false);
  const sequences = finish(resume(decoder, plan));
  const elsewhere = retime ? firstMissing(decoder, plan) : firstElsewhere(decoder, plan);
  if (elsewhere !== null) return { status: "plan-does-not-follow", orderId: elsewhere };
  const moved = retime ? movedRuns(problem, plannedTimes(problem, plan, decoder), decoder) : [];
  const room = new InsertionRoom(standingOf(decoder, sequences, latestEnds(decoder, plan, promised)));
  room.prepare();
  return deskOf(room, moved);
}
