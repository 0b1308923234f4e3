import type { ProblemData } from "@formweek/scheduler";

/** How many times its own weight an order counts in planning while it is held for a customer who was given its date. */
const HELD_WEIGHT = 10;

/**
 * The problem in which a held order goes before others of its weight: nobody may sell the hours that a customer was promised,
 * a planning run no more than a seller. The problem itself where nothing is held.
 */
export function keepPromises(problem: ProblemData, heldOrderIds: ReadonlySet<string>): ProblemData {
  if (!problem.jobs.some(({ orderId }) => heldOrderIds.has(orderId))) return problem;
  const jobs = problem.jobs.map((job) =>
    heldOrderIds.has(job.orderId) ? { ...job, weight: job.weight * HELD_WEIGHT } : job,
  );
  return { ...problem, jobs };
}
