import { performance } from "node:perf_hooks";
import { startThread } from "@formweek/adapters/system";
import { threadSolveRunner } from "@formweek/adapters/thread";
import {
  solve,
  type ProblemData,
  type SolveParams,
  type SolveResult,
  type SolveStatistics,
} from "@formweek/scheduler";
import type { BenchInstance, Sequence } from "../fixtures/public-sets/bench-instance.ts";
import { benchProblem, sequenceOf } from "../fixtures/public-sets/bench-problem.ts";
import { objectiveOf } from "../fixtures/public-sets/objectives.ts";

export interface BenchAnswer {
  readonly sequence: Sequence;
  readonly objective: number;
  readonly statistics: SolveStatistics;
}

/** What the budget is measured by: the wall's clock, or the processor time of this process, which other work on the machine does not use up. */
export type BenchClock = "wall" | "cpu";

/** Milliseconds from any fixed origin. */
export const benchClock = (clock: BenchClock): (() => number) => CLOCKS[clock];

const CLOCKS: Readonly<Record<BenchClock, () => number>> = {
  wall: () => performance.now(),
  cpu: () => {
    const { user, system } = process.cpuUsage();
    return (user + system) / 1000;
  },
};

/** One run of the engine on an instance. Throws when the engine refuses the instance or its own plan. */
export function solveInstance(
  instance: BenchInstance,
  params: SolveParams,
  clock: BenchClock = "wall",
): BenchAnswer {
  const result = solve(benchProblem(instance), params, {
    monotonicMs: CLOCKS[clock],
    isCancelled: () => false,
    onProgress: () => undefined,
  });
  return answerOf(instance, result);
}

function answerOf(instance: BenchInstance, result: SolveResult): BenchAnswer {
  if (result.status === "cancelled") throw new Error("Cancelled, though nobody asked for it.");
  if (result.status === "faulty-problem")
    throw new Error(result.faults.map((fault) => fault.text).join("\n"));
  if (result.status === "rejected")
    throw new Error(result.violations.map((violation) => violation.text).join("\n"));
  const sequence = sequenceOf(instance, result.plan);
  return { sequence, objective: objectiveOf(instance, sequence), statistics: result.statistics };
}

/** A portfolio of as many searches as threads. */
export async function solveInThreads(
  problem: ProblemData,
  params: SolveParams,
  threads: number,
): Promise<SolveResult> {
  const runner = threadSolveRunner({
    startThread,
    progressEveryMs: 1000,
    plansEveryMs: 1000,
    stopGraceMs: 10_000,
  });
  return runner.solve({
    problem,
    params,
    threads,
    onProgress: () => undefined,
    signal: new AbortController().signal,
  });
}

/** A portfolio of as many searches as threads on one instance. */
export async function solveInstanceInThreads(
  instance: BenchInstance,
  params: SolveParams,
  threads: number,
): Promise<BenchAnswer> {
  return answerOf(instance, await solveInThreads(benchProblem(instance), params, threads));
}
