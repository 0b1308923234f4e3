import type { ProblemData } from "./problem-data.ts";

/** Ways to make an order, over all orders, up to which a first plan takes so little time that a cancel waits for it. */
const SMALL_WAYS = 20_000;

/** True where a first plan takes long enough to be noticed. */
export function isLarge({ jobs }: ProblemData): boolean {
  return jobs.reduce((sum, { options }) => sum + options.length, 0) > SMALL_WAYS;
}
