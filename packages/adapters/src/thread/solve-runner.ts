import type { SolveProgressReport, SolveRunner, SolveTask } from "@formweek/application";
import {
  PortfolioCourse,
  type NextMove,
  type Plan,
  type SolveParams,
  type SolveResult,
} from "@formweek/scheduler";
import { performance } from "node:perf_hooks";
import type { Worker } from "node:worker_threads";
import { newCancelFlag, raise } from "./cancel-flag.ts";
import { GroupThread, type GroupAnswer } from "./group-thread.ts";
import { membersByThread, mergedProgress } from "./portfolio.ts";
import type { SolveThreadData } from "./thread-protocol.ts";

export interface ThreadSolverOptions {
  /** Starts a thread from a module beside the caller, named without its ending. */
  readonly startThread: (caller: string, module: string, data: SolveThreadData) => Worker;
  readonly progressEveryMs: number;
  /** Least time between two plans that are handed out on the way. */
  readonly plansEveryMs: number;
  /** A search that has not ended so long after it was told to stop is ended by force, milliseconds. */
  readonly stopGraceMs: number;
}

/** Runs the searches in threads of their own, so that the process answers while they compute and outlives their crash. */
export function threadSolveRunner(options: ThreadSolverOptions): SolveRunner {
  return { solve: (task) => runPortfolio(options, task) };
}

interface Carrier {
  readonly members: readonly number[];
  readonly thread: GroupThread;
}

async function runPortfolio(options: ThreadSolverOptions, task: SolveTask): Promise<SolveResult> {
  const cancel = newCancelFlag();
  const params = { ...task.params, members: task.params.members ?? task.threads };
  const groups = membersByThread(params, task.threads);
  const report = pacedReports(options, task, groups.length);
  const onBetterPlan = onlyBetter(task);
  const carriers = groups.map((members, index): Carrier => {
    const group = { problem: task.problem, params, members };
    const { progressEveryMs } = options;
    // threads take turns, so that all together hand out no more plans than asked for
    const plansEveryMs = task.onBetterPlan === undefined ? null : options.plansEveryMs * groups.length;
    const data = { task: group, cancel, progressEveryMs, plansEveryMs };
    const worker = options.startThread(import.meta.url, "./solve-thread", data);
    return {
      members,
      thread: new GroupThread(worker, { onProgress: (progress) => report(index, progress), onBetterPlan }),
    };
  });
  const endByForce = (): void => carriers.forEach(({ thread }) => thread.end());
  const forget = onAbort(task.signal, () => {
    raise(cancel);
    const grace = setTimeout(endByForce, options.stopGraceMs);
    return () => clearTimeout(grace);
  });
  try {
    return await drive(params, carriers);
  } finally {
    forget();
    endByForce();
  }
}

/** Takes the threads through the portfolio's rounds to the winner's plan, or to what stood in the way of a first plan. */
async function drive(params: SolveParams, carriers: readonly Carrier[]): Promise<SolveResult> {
  const opened = await Promise.all(carriers.map(({ thread }) => thread.answer()));
  // a cancel may reach some before their first plan; the others have one, and end their first round at once
  const ready = carriers.filter((_, index) => opened[index]!.kind === "ready");
  if (ready.length === 0) return resultIn(opened[0]!);
  const course = new PortfolioCourse(params);
  // threads count their budget from their own start, not from when they were asked for
  const startedMs = performance.now() - Math.max(...opened.map(readyMs));
  const elapsed = (): number => performance.now() - startedMs;
  let move: NextMove = course.first(elapsed());
  while (move.kind === "round") {
    const order = move;
    const answers = await Promise.all(ready.map(({ thread }) => thread.ask(order)));
    const standings = answers.flatMap((answer) => (answer.kind === "standings" ? answer.standings : []));
    move = course.next(standings, elapsed());
  }
  const { winner } = move;
  const carrier = ready.find(({ members }) => members.includes(winner.member)) ?? ready[0]!;
  return resultIn(await carrier.thread.ask({ kind: "finish", winner }));
}

function resultIn(answer: GroupAnswer): SolveResult {
  if (answer.kind === "result") return answer.result;
  throw new Error(`A thread of the search answered "${answer.kind}" where its result was due.`);
}

const readyMs = (answer: GroupAnswer): number => (answer.kind === "ready" ? answer.elapsedMs : 0);

/** Joins the reports of all threads, and hands them on no more often than asked for. */
function pacedReports(options: ThreadSolverOptions, task: SolveTask, threads: number) {
  const latest = Array.from({ length: threads }, (): SolveProgressReport | null => null);
  let nextAt = 0;
  return (index: number, progress: SolveProgressReport): void => {
    latest[index] = progress;
    const merged = mergedProgress(latest);
    if (merged === null || performance.now() < nextAt) return;
    nextAt = performance.now() + options.progressEveryMs;
    task.onProgress(merged);
  };
}

/** Hands a thread's plan on where no other thread has handed on a better one. */
function onlyBetter({ onBetterPlan }: SolveTask) {
  let best = Infinity;
  return (plan: Plan): void => {
    if (plan.objective.total >= best) return;
    best = plan.objective.total;
    onBetterPlan?.(plan);
  };
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
