import { solve, type SolveProgress } from "@formweek/scheduler";
import { performance } from "node:perf_hooks";
import { parentPort, workerData } from "node:worker_threads";
import { isRaised } from "./cancel-flag.ts";
import type { SolveThreadData, SolveThreadMessage } from "./thread-protocol.ts";

/** Entry of a solve thread: one search, then the end. */
function run({ problem, params, cancel, progressEveryMs }: SolveThreadData): void {
  const start = performance.now();
  let nextReportMs = 0;
  const onProgress = ({ share, steps, elapsedMs, bestTotal, lateOrders }: SolveProgress): void => {
    if (elapsedMs < nextReportMs) return;
    nextReportMs = elapsedMs + progressEveryMs;
    say({ kind: "progress", progress: { share, steps, elapsedMs, bestTotal, lateOrders } });
  };
  const result = solve(problem, params, {
    monotonicMs: () => performance.now() - start,
    isCancelled: isRaised(cancel),
    onProgress,
  });
  say({ kind: "result", result });
}

function say(message: SolveThreadMessage): void {
  parentPort?.postMessage(message);
}

if (parentPort !== null) run(workerData as SolveThreadData);
