import { assembleProblem } from "@formweek/application";
import { generatePlant } from "@formweek/demo-plant";
import { solve, type Plan, type ProblemData, type SolveParams } from "@formweek/scheduler";
import { benchClock } from "../bench-solve.ts";
import type { CancelAnswer, CancelTask } from "./cancel-latency.ts";

const clock = benchClock("cpu");
const params: SolveParams = { seed: 1, maxSteps: null, maxMs: null };
const { afterMs, resumes } = JSON.parse(process.argv[2] ?? "null") as CancelTask;

/** A plan to go on from, made in few steps. */
function planOf(problem: ProblemData): Plan {
  const env = { monotonicMs: clock, isCancelled: () => false, onProgress: () => undefined };
  const result = solve(problem, { ...params, maxSteps: 1 }, env);
  if (result.status !== "planned") throw new Error(`No plan to go on from: ${result.status}.`);
  return result.plan;
}

const book = generatePlant({ lines: 40, orders: 2000, seed: 1 });
const { problem } = assembleProblem({ ...book, pins: [], now: 0 });
const start = resumes ? { startFrom: planOf(problem) } : {};
const cancelAt = clock() + afterMs;
const result = solve(
  problem,
  { ...params, ...start },
  { monotonicMs: clock, isCancelled: () => clock() >= cancelAt, onProgress: () => undefined },
);
const answer: CancelAnswer = { status: result.status, latencyMs: clock() - cancelAt };
process.send?.(answer, () => {
  process.disconnect();
});
