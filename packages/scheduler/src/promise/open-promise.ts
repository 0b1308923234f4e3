import { resume } from "../construct/resume.ts";
import type { Plan } from "../plan/plan.ts";
import { compile } from "../problem/compile.ts";
import type { CompiledProblem } from "../problem/compiled-problem.ts";
import type { Job, ProblemData } from "../problem/problem-data.ts";
import { jobFaults } from "../problem/validate-jobs.ts";
import { validate } from "../problem/validate.ts";
import { fault } from "../problem/fault.ts";
import type { ProblemFault } from "../result.ts";
import { Decoder } from "../timing/decoder.ts";
import type { Sequences } from "../timing/sequences.ts";
import { insertEarliest } from "./insert-earliest.ts";
import type { PromiseAnswer } from "./promise.ts";
import { finish } from "../work/work.ts";

/** A plan made ready for promises, or why it cannot be. */
export type PromiseDesk =
  | { readonly status: "open"; readonly promise: (order: Job) => PromiseAnswer }
  | { readonly status: "faulty-problem"; readonly faults: readonly ProblemFault[] }
  | {
      /** Timing the plan's runs in their order gives other times: it was edited, made for another problem, or an order that found no place held others up. */
      readonly status: "plan-does-not-follow";
      /** An order that would lie elsewhere. */
      readonly orderId: string;
    };

/** Epoch seconds by which an order's last piece was promised, conditioning included, by order id. */
export type PromisedInstants = ReadonlyMap<string, number>;

/** An order whose runs are not where the plan has them; null when the decoder times the plan as it is. */
function firstElsewhere({ problem, option, start, end, copy }: Decoder, plan: Plan): string | null {
  const { data, lots, options, origin, moulds } = problem;
  const jobOf = new Map(data.jobs.map(({ orderId }, job) => [orderId, job]));
  const copyOf = new Map(
    plan.segments.flatMap((segment) =>
      segment.kind === "run" && segment.mould !== null
        ? [[`${segment.lot} ${segment.orderId}`, segment.mould] as const]
        : [],
    ),
  );
  for (const lot of plan.lots) {
    const job = jobOf.get(lot.orderId);
    const index = job === undefined ? -1 : lots.firstLot[job]! + lot.lot;
    const chosen = job === undefined || index >= lots.firstLot[job + 1]! ? -1 : option[index]!;
    if (chosen < 0) return lot.orderId;
    const mould = copyOf.get(`${lot.lot} ${lot.orderId}`);
    const sameCopy =
      mould === undefined
        ? copy[index]! < 0
        : copy[index]! >= 0 &&
          mould.mouldId === data.moulds[moulds.mouldOfCopy[copy[index]!]!]!.id &&
          mould.copy === copy[index]! - moulds.firstCopy[moulds.mouldOfCopy[copy[index]!]!]!;
    const same =
      sameCopy &&
      data.lines[options.line[chosen]!]!.id === lot.lineId &&
      data.setups[options.setup[chosen]!]!.id === lot.setupId &&
      origin + start[index]! === lot.start &&
      origin + end[index]! === lot.end;
    if (!same) return lot.orderId;
  }
  return null;
}

/** [job] s by which the runs of an order must end; Infinity for orders without runs. */
function latestEnds(decoder: Decoder, promised: PromisedInstants): Float64Array {
  const { data, lots, jobs, origin } = decoder.problem;
  const planned = new Float64Array(jobs.count).fill(-Infinity);
  for (let lot = 0; lot < lots.count; lot++) {
    const job = lots.job[lot]!;
    if (decoder.option[lot]! >= 0) planned[job] = Math.max(planned[job]!, decoder.end[lot]!);
  }
  return planned.map((end, job) => {
    if (end < 0) return Infinity;
    const { orderId, dueAt, conditioningSeconds } = data.jobs[job]!;
    return Math.max(end, (promised.get(orderId) ?? dueAt) - conditioningSeconds - origin);
  });
}

function faultsOfOrder(data: ProblemData, order: Job): readonly ProblemFault[] {
  const faults = jobFaults({ ...data, jobs: [order] });
  if (!data.jobs.some(({ orderId }) => orderId === order.orderId)) return faults;
  const text = `There is an order ${order.orderId} already.`;
  return [...faults, fault("duplicate-order", order.orderId, text, "Give the new order an id of its own.")];
}

interface Standing {
  readonly problem: CompiledProblem;
  readonly sequences: Sequences;
  readonly latestEnd: Float64Array;
}

function answer({ problem, sequences, latestEnd }: Standing, order: Job): PromiseAnswer {
  const faults = faultsOfOrder(problem.data, order);
  if (faults.length > 0) return { status: "faulty-order", faults };
  return insertEarliest({ problem, sequences, latestEnd }, order);
}

/**
 * Makes a plan ready to answer, order by order, when one more order would be finished if no other order became later than it was
 * promised: by its instant in `promised`, else its due date; an order that the plan finishes later than that keeps its planned
 * finish. Every line, mould and position is considered, the runs that stand keep their lines and their order, and all rules hold.
 * The new order is made in one lot. Answers are independent of one another: nothing is booked.
 */
export function openPromise(
  data: ProblemData,
  plan: Plan,
  promised: PromisedInstants = new Map(),
): PromiseDesk {
  const faults = validate(data);
  if (faults.length > 0) return { status: "faulty-problem", faults };
  const problem = compile(data);
  const decoder = new Decoder(problem, false);
  const sequences = finish(resume(decoder, plan));
  const elsewhere = firstElsewhere(decoder, plan);
  if (elsewhere !== null) return { status: "plan-does-not-follow", orderId: elsewhere };
  const standing = { problem, sequences, latestEnd: latestEnds(decoder, promised) };
  return { status: "open", promise: (order) => answer(standing, order) };
}
