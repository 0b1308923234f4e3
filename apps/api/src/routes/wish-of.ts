import type { SolveRequest } from "@formweek/contracts";

type Budget = Pick<SolveRequest, "seconds" | "steps" | "seed" | "threads">;

/** A budget as it was asked for; what was left out is for the planner to say. */
export function wishOf({ seconds, steps, seed, threads }: Budget) {
  return { seconds: seconds ?? null, steps: steps ?? null, seed: seed ?? null, threads: threads ?? null };
}
