import { readFileSync } from "node:fs";
import { join } from "node:path";
import { solve, type SolveEnv } from "@formweek/scheduler";
import { describe, expect, it } from "vitest";
import type { BenchInstance } from "../fixtures/public-sets/bench-instance.ts";
import { benchProblem, sequenceOf } from "../fixtures/public-sets/bench-problem.ts";
import { readOneTwt } from "../fixtures/public-sets/instance-formats.ts";
import { objectiveOf } from "../fixtures/public-sets/objectives.ts";

const quiet: SolveEnv = { monotonicMs: () => 0, isCancelled: () => false, onProgress: () => undefined };

/** The engine's objective after a number of steps, recomputed from its sequence. */
function solved(instance: BenchInstance, maxSteps: number): number {
  const result = solve(benchProblem(instance), { seed: 1, maxSteps, maxMs: null }, quiet);
  if (result.status !== "planned") throw new Error(JSON.stringify(result));
  const value = objectiveOf(instance, sequenceOf(instance, result.plan));
  expect(result.plan.objective.total).toBeCloseTo(value, 6);
  return value;
}

function identicalMachines(durations: readonly number[], machines: number): BenchInstance {
  const all = Array.from({ length: machines }, (_, machine) => machine);
  const noSetups = Array.from({ length: durations.length + 1 }, () => durations.map(() => 0));
  return {
    jobs: durations.length,
    machines,
    durations: durations.map((duration) => all.map(() => duration)),
    capable: durations.map(() => all),
    releases: durations.map(() => all.map(() => 0)),
    setups: all.map(() => noSetups),
    goal: { kind: "makespan" },
  };
}

const folder = join(import.meta.dirname, "../fixtures/one-twt");
const [, ...table] = readFileSync(join(folder, "best-known.csv"), "utf8").trim().split("\n");
const published = table
  .map((row) => row.split(","))
  .map(([name = "", value]) => ({ name, optimum: Number(value) }));

describe("the engine on published and textbook instances", () => {
  // OR-Library wt40 and wt50, optima of wtopt40 and wtopt50 (source and licence beside the files).
  it.each(published)("CV-39 reaches the optimum $optimum of $name", ({ name, optimum }) => {
    const instance = readOneTwt(readFileSync(join(folder, "instances", name), "utf8"));
    expect(solved(instance, 20_000)).toBe(optimum);
  });

  // Graham (1969): sets on which longest-first is at its worst (from memory); optima by trying every assignment.
  it("CV-35 finds the optimum where longest-first is at its worst", () => {
    expect(solved(identicalMachines([5, 5, 4, 4, 3, 3, 3], 3), 5_000)).toBe(9);
    expect(solved(identicalMachines([7, 7, 6, 6, 5, 5, 4, 4, 4], 4), 5_000)).toBe(12);
  });

  // Data of the index example in Pinedo's textbook (from memory), optimum by enumeration.
  it("CV-37 finds the optimum that dispatch by index misses", () => {
    const instance: BenchInstance = {
      ...identicalMachines([13, 9, 13, 10], 1),
      setups: [
        [
          [0, 4, 1, 3],
          [0, 0, 1, 0],
          [1, 2, 0, 3],
          [4, 3, 1, 0],
          [1, 1, 3, 4],
        ],
      ],
      goal: { kind: "weighted tardiness", weights: [2, 4, 2, 5], dues: [12, 37, 21, 22] },
    };
    expect(solved(instance, 2_000)).toBe(98);
  });
});
