import { assembleProblem } from "@formweek/application";
import { solve, type SolveParams } from "@formweek/scheduler";
import { benchClock } from "../bench-solve.ts";
import type { CancelAnswer, CancelTask } from "./cancel-latency.ts";

const clock = benchClock("cpu");
const params: SolveParams = { seed: 1, maxSteps: null, maxMs: null };

process.once("message", (message) => {
  const { book, startFrom, afterMs } = message as CancelTask;
  const { problem } = assembleProblem({ ...book, pins: [], now: 0 });
  const cancelAt = clock() + afterMs;
  const result = solve(
    problem,
    { ...params, ...(startFrom === null ? {} : { startFrom }) },
    { monotonicMs: clock, isCancelled: () => clock() >= cancelAt, onProgress: () => undefined },
  );
  const answer: CancelAnswer = { status: result.status, latencyMs: clock() - cancelAt };
  process.send?.(answer, () => {
    process.disconnect();
  });
});
