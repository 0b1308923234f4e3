import { openGroup, type MemberGroup, type Plan, type SolveProgress } from "@formweek/scheduler";
import { performance } from "node:perf_hooks";
import { parentPort, workerData, type MessagePort } from "node:worker_threads";
import { isRaised } from "./cancel-flag.ts";
import type { SolveThreadData, SolveThreadMessage, SolveThreadOrder } from "./thread-protocol.ts";

/** Entry of a solve thread: it carries some members of a portfolio, and ends when it is ended. */
function run(data: SolveThreadData, port: MessagePort): void {
  const { task, cancel, progressEveryMs, plansEveryMs } = data;
  const start = performance.now();
  const say = (message: SolveThreadMessage): void => void port.postMessage(message);
  let nextReportMs = 0;
  const monotonicMs = (): number => performance.now() - start;
  const betterPlan = plansEveryMs === null ? () => null : pacedPlans(plansEveryMs, monotonicMs);
  const onProgress = (told: SolveProgress): void => {
    const { share, steps, elapsedMs, bestTotal, lateOrders } = told;
    if (elapsedMs < nextReportMs) return;
    nextReportMs = elapsedMs + progressEveryMs;
    say({ kind: "progress", progress: { share, steps, elapsedMs, bestTotal, lateOrders } });
    const plan = betterPlan(told);
    if (plan !== null) say({ kind: "better plan", plan });
  };
  const opened = openGroup(task, { monotonicMs, isCancelled: isRaised(cancel), onProgress });
  if (opened.status !== "open") {
    say({ kind: "result", result: opened });
    return;
  }
  port.on("message", (order: SolveThreadOrder) => say(answer(opened.group, order)));
  say({ kind: "ready", elapsedMs: monotonicMs() });
}

/** A plan takes time from the search: at most one part in so many. */
const SEARCH_PER_PLAN = 20;

/** Makes the best plan where it is better than the one made last, and where that is long enough ago. */
function pacedPlans(everyMs: number, monotonicMs: () => number) {
  let [nextMs, best] = [0, Infinity];
  return ({ bestTotal, bestPlan }: SolveProgress): Plan | null => {
    const fromMs = monotonicMs();
    if (fromMs < nextMs || bestTotal >= best) return null;
    const plan = bestPlan();
    if (plan !== null) best = bestTotal;
    nextMs = fromMs + Math.max(everyMs, SEARCH_PER_PLAN * (monotonicMs() - fromMs));
    return plan;
  };
}

function answer(group: MemberGroup, order: SolveThreadOrder): SolveThreadMessage {
  if (order.kind === "finish") return { kind: "result", result: group.finish(order.winner) };
  return { kind: "standings", standings: group.runRound(order.round, order.adoptions) };
}

if (parentPort !== null) run(workerData as SolveThreadData, parentPort);
