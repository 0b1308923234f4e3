import type { SolveProgressReport, SolveRunner, SolveTask } from "@formweek/application";
import type { SolveResult } from "@formweek/scheduler";
import { performance } from "node:perf_hooks";
import type { Worker } from "node:worker_threads";
import { newCancelFlag, raise } from "./cancel-flag.ts";
import { bestResult, mergedProgress, searchesOf } from "./portfolio.ts";
import type { SolveThreadData, SolveThreadMessage } from "./thread-protocol.ts";

export interface ThreadSolverOptions {
  /** Starts a thread from a module beside the caller, named without its ending. */
  readonly startThread: (caller: string, module: string, data: SolveThreadData) => Worker;
  readonly progressEveryMs: number;
  /** A search that has not ended so long after it was told to stop is ended by force, milliseconds. */
  readonly stopGraceMs: number;
}

/** A thread of the search ended without a result. */
export class SolveThreadDied extends Error {
  constructor(reason: string, cause?: unknown) {
    super(`A thread of the search ended without a result: ${reason}`, { cause });
    this.name = "SolveThreadDied";
  }
}

/** Runs each search in a thread of its own, so that the process answers while it computes and outlives its crash. */
export function threadSolveRunner(options: ThreadSolverOptions): SolveRunner {
  return { solve: (task) => runSearches(options, task) };
}

async function runSearches(options: ThreadSolverOptions, task: SolveTask): Promise<SolveResult> {
  const cancel = newCancelFlag();
  const report = pacedReports(options, task);
  const searches = searchesOf(task.params, task.threads).map((params, index) => {
    const data = { problem: task.problem, params, cancel, progressEveryMs: options.progressEveryMs };
    const worker = options.startThread(import.meta.url, "./solve-thread", data);
    return { worker, result: resultOf(worker, (progress) => report(index, progress)) };
  });
  const endByForce = (): void => searches.forEach(({ worker }) => void worker.terminate());
  const forget = onAbort(task.signal, () => {
    raise(cancel);
    const grace = setTimeout(endByForce, options.stopGraceMs);
    return () => clearTimeout(grace);
  });
  try {
    return bestResult(await Promise.all(searches.map(({ result }) => result)));
  } finally {
    forget();
    endByForce();
  }
}

/** Joins the reports of all searches, and hands them on no more often than asked for. */
function pacedReports(options: ThreadSolverOptions, task: SolveTask) {
  const latest: (SolveProgressReport | null)[] = searchesOf(task.params, task.threads).map(() => null);
  let nextAt = 0;
  return (index: number, progress: SolveProgressReport): void => {
    latest[index] = progress;
    const merged = mergedProgress(latest);
    if (merged === null || performance.now() < nextAt) return;
    nextAt = performance.now() + options.progressEveryMs;
    task.onProgress(merged);
  };
}

function resultOf(worker: Worker, onProgress: (progress: SolveProgressReport) => void): Promise<SolveResult> {
  return new Promise((resolve, reject) => {
    worker.on("message", (message: SolveThreadMessage) => {
      if (message.kind === "progress") onProgress(message.progress);
      else resolve(message.result);
    });
    worker.once("error", (error: unknown) => reject(new SolveThreadDied(String(error), error)));
    worker.once("exit", (code) => reject(new SolveThreadDied(`it exited with code ${code}`)));
  });
}

/** Calls `begin` when the signal is aborted, at once if it is already; the returned function undoes what `begin` left. */
function onAbort(signal: AbortSignal, begin: () => () => void): () => void {
  let undo = (): void => undefined;
  const aborted = (): void => void (undo = begin());
  if (signal.aborted) aborted();
  else signal.addEventListener("abort", aborted, { once: true });
  return () => {
    signal.removeEventListener("abort", aborted);
    undo();
  };
}
