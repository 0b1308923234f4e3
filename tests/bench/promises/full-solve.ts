import { solve, type OpenDesk, type PromisedOrder, type ProblemData } from "@formweek/scheduler";
import { benchClock, type BenchClock } from "../bench-solve.ts";

/** Weight of the orders that stand beside the one promised: one of them late is worse than any finish of that. */
const STANDING_WEIGHT = 1000;

/** The problem in which nothing counts but that the orders that stand keep their limits and the promised one is finished early. */
function aimedAt(desk: OpenDesk, { order }: PromisedOrder): ProblemData {
  const { problem } = desk;
  const jobs = problem.jobs.map((job) => {
    const limit = desk.limitOf(job.orderId);
    return { ...job, dueAt: limit?.by ?? problem.horizon.end, weight: STANDING_WEIGHT };
  });
  return {
    ...problem,
    jobs: [...jobs, { ...order, dueAt: problem.horizon.start, weight: 1 }],
    objective: {
      ...problem.objective,
      tardinessPerWeightHour: 1,
      lateOrderPerWeight: 1,
      changePerMachineHour: 0.01,
      changePerTeamHour: 0,
      scrapPerKg: 0,
      unplannedPerWeight: 100_000,
    },
  };
}

/** Hours by which a solve of the whole problem, from the promised plan on, finishes the order earlier with nobody later; 0 where it does not. */
export function hoursBeaten(
  desk: OpenDesk,
  promise: PromisedOrder,
  { seconds, seed, clock }: { readonly seconds: number; readonly seed: number; readonly clock: BenchClock },
): number {
  const problem = aimedAt(desk, promise);
  const result = solve(
    problem,
    { seed, maxSteps: null, maxMs: seconds * 1000, startFrom: promise.plan() },
    { monotonicMs: benchClock(clock), isCancelled: () => false, onProgress: () => undefined },
  );
  if (result.status !== "planned") throw new Error(`The planner's answer is ${result.status}.`);
  const finishes = new Map<string, number>();
  for (const { orderId, finish } of result.plan.lots)
    finishes.set(orderId, Math.max(finish, finishes.get(orderId) ?? finish));
  const isKept = problem.jobs
    .slice(0, -1)
    .every(
      ({ orderId, dueAt }) => desk.limitOf(orderId) === null || (finishes.get(orderId) ?? Infinity) <= dueAt,
    );
  const finish = finishes.get(promise.order.orderId) ?? Infinity;
  return isKept ? Math.max(0, (promise.finish - finish) / 3600) : 0;
}
