import { performance } from "node:perf_hooks";
import { startThread } from "@formweek/adapters/system";
import { solve, type SolveParams, type SolveStatistics } from "@formweek/scheduler";
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
  if (result.status === "faulty-problem")
    throw new Error(result.faults.map((fault) => fault.text).join("\n"));
  if (result.status === "rejected")
    throw new Error(result.violations.map((violation) => violation.text).join("\n"));
  const sequence = sequenceOf(instance, result.plan);
  return { sequence, objective: objectiveOf(instance, sequence), statistics: result.statistics };
}

function solveInThread(instance: BenchInstance, params: SolveParams): Promise<BenchAnswer> {
  return new Promise((resolve, reject) => {
    const worker = startThread(import.meta.url, "./bench-thread", { instance, params });
    worker.once("message", resolve);
    worker.once("error", reject);
  });
}

/** Several seeds side by side on the same instance, each in a thread of its own; the answers in order of their seeds. */
export function solveWithSeeds(
  instance: BenchInstance,
  params: SolveParams,
  threads: number,
): Promise<BenchAnswer[]> {
  const seeds = Array.from({ length: threads }, (_, thread) => params.seed + thread);
  return Promise.all(seeds.map((seed) => solveInThread(instance, { ...params, seed })));
}
