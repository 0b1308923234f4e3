import { openGroup, type MemberGroup, type SolveProgress } from "@formweek/scheduler";
import { performance } from "node:perf_hooks";
import { parentPort, workerData, type MessagePort } from "node:worker_threads";
import { isRaised } from "./cancel-flag.ts";
import type { SolveThreadData, SolveThreadMessage, SolveThreadOrder } from "./thread-protocol.ts";

/** Entry of a solve thread: it carries some members of a portfolio, and ends when it is ended. */
function run({ task, cancel, progressEveryMs }: SolveThreadData, port: MessagePort): void {
  const start = performance.now();
  const say = (message: SolveThreadMessage): void => void port.postMessage(message);
  let nextReportMs = 0;
  const onProgress = ({ share, steps, elapsedMs, bestTotal, lateOrders }: SolveProgress): void => {
    if (elapsedMs < nextReportMs) return;
    nextReportMs = elapsedMs + progressEveryMs;
    say({ kind: "progress", progress: { share, steps, elapsedMs, bestTotal, lateOrders } });
  };
  const monotonicMs = (): number => performance.now() - start;
  const opened = openGroup(task, { monotonicMs, isCancelled: isRaised(cancel), onProgress });
  if (opened.status !== "open") {
    say({ kind: "result", result: opened });
    return;
  }
  port.on("message", (order: SolveThreadOrder) => say(answer(opened.group, order)));
  say({ kind: "ready", elapsedMs: monotonicMs() });
}

function answer(group: MemberGroup, order: SolveThreadOrder): SolveThreadMessage {
  if (order.kind === "finish") return { kind: "result", result: group.finish(order.winner) };
  return { kind: "standings", standings: group.runRound(order.round, order.adoptions) };
}

if (parentPort !== null) run(workerData as SolveThreadData, parentPort);
