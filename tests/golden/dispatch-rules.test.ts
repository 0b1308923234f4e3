import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { readOneTwt } from "../fixtures/public-sets/instance-formats.ts";
import {
  atcsIndex,
  atcsSequence,
  earliestDueFirst,
  fewestLate,
  figuresOf,
  flowShopMakespan,
  johnson,
  longestFirst,
  longestFirstMakespan,
  permutations,
  shortestFirst,
  weightedShortestFirst,
  type Setup,
  type TextbookJob,
} from "./dispatch-rules.ts";

function jobsOf(
  durations: readonly number[],
  dues: readonly number[],
  weights?: readonly number[],
): TextbookJob[] {
  return durations.map((duration, index) => ({
    duration,
    due: dues[index] ?? 0,
    weight: weights?.[index] ?? 1,
  }));
}

function best(values: readonly number[]): number {
  return Math.min(...values);
}

/** Least greatest load over all assignments of jobs to machines, by trying them all. */
function leastMakespan(durations: readonly number[], machines: number): number {
  const loads = Array.from({ length: machines }, () => 0);
  const place = (job: number): number => {
    const duration = durations[job];
    if (duration === undefined) return Math.max(...loads);
    let least = Infinity;
    for (let machine = 0; machine < machines; machine += 1) {
      loads[machine] = (loads[machine] ?? 0) + duration;
      least = Math.min(least, place(job + 1));
      loads[machine] = (loads[machine] ?? 0) - duration;
    }
    return least;
  };
  return place(0);
}

describe("dispatch rules against worked examples", () => {
  // Classic five-job set of operations management textbooks (from memory); figures recomputed by hand.
  it("CV-31 gives the averages of flow and lateness of four rules", () => {
    const jobs = jobsOf([6, 2, 8, 3, 9], [8, 6, 18, 15, 23]);
    const averages = (sequence: readonly number[]) => {
      const { totalFlow, totalTardiness } = figuresOf(jobs, sequence);
      return [sequence.map((job) => "ABCDE"[job]).join(""), totalFlow / 5, totalTardiness / 5];
    };
    expect(averages([0, 1, 2, 3, 4])).toEqual(["ABCDE", 15.4, 2.2]);
    expect(averages(shortestFirst(jobs))).toEqual(["BDACE", 13, 1.8]);
    expect(averages(earliestDueFirst(jobs))).toEqual(["BADCE", 13.6, 1.2]);
    expect(averages(longestFirst(jobs))).toEqual(["ECADB", 20.6, 9.6]);
  });

  // Moore (1968); data of Pinedo, "Scheduling" (from memory), optimum by enumeration.
  it("CV-32 finds the fewest late jobs", () => {
    const jobs = jobsOf([7, 8, 4, 6, 6], [9, 17, 18, 19, 20]);
    const { onTime, late } = fewestLate(jobs);
    expect([onTime, late]).toEqual([
      [2, 3, 4],
      [0, 1],
    ]);
    expect(figuresOf(jobs, [...onTime, ...late]).lateJobs).toBe(2);
    expect(best(permutations(5).map((sequence) => figuresOf(jobs, sequence).lateJobs))).toBe(2);
  });

  // Johnson (1954); textbook data (from memory), optimum by enumeration.
  it("CV-33 sequences two machines in a row", () => {
    const jobs = [
      [5, 2],
      [3, 6],
      [8, 4],
      [10, 7],
      [7, 12],
    ] as const;
    const sequence = johnson(jobs);
    expect(sequence.map((job) => "ABCDE"[job]).join("")).toBe("BEDCA");
    expect(flowShopMakespan(jobs, sequence)).toBe(35);
    expect(best(permutations(5).map((order) => flowShopMakespan(jobs, order)))).toBe(35);
  });

  // McNaughton (1959): with pauses the makespan is the greater of the longest job and the mean load.
  it("CV-34 bounds the makespan with pauses", () => {
    const bound = (durations: readonly number[], machines: number) =>
      Math.max(...durations, durations.reduce((sum, duration) => sum + duration, 0) / machines);
    expect([bound([10, 8, 4, 14], 3), bound([9, 4, 3, 2], 2)]).toEqual([14, 9]);
  });

  // Graham (1969): longest first is at most 4/3 - 1/(3m) of the optimum, and these two sets reach it (from memory).
  it("CV-35 reaches the worst case of longest first", () => {
    const three = [5, 5, 4, 4, 3, 3, 3];
    const four = [7, 7, 6, 6, 5, 5, 4, 4, 4];
    expect([longestFirstMakespan(three, 3), leastMakespan(three, 3)]).toEqual([11, 9]);
    expect([longestFirstMakespan(four, 4), leastMakespan(four, 4)]).toEqual([15, 12]);
    // (4m - 1) / 3m for 3 and 4 machines.
    expect([11, 9, 15, 12]).toEqual([4 * 3 - 1, 3 * 3, 4 * 4 - 1, 3 * 4]);
  });

  // Lee, Bhaskaran and Pinedo (1997); data of the example in Pinedo's textbook (from memory).
  const jobs = jobsOf([13, 9, 13, 10], [12, 37, 21, 22], [2, 4, 2, 5]);
  const scale = { dueScale: 5, meanDuration: 11.25, setup: { scale: 7, mean: 2 } };
  const setups = [
    [0, 4, 1, 3],
    [0, 0, 1, 0],
    [1, 2, 0, 3],
    [4, 3, 1, 0],
  ];
  const setup: Setup = (before, job) => (before === null ? [1, 1, 3, 4][job] : setups[before]?.[job]) ?? NaN;

  it("CV-36 gives the index of each job at time 0", () => {
    const indices = jobs.map((job, index) => atcsIndex(job, { time: 0, setup: setup(null, index) }, scale));
    [0.143, 0.252, 0.108, 0.304].forEach((value, index) => {
      expect(Math.abs((indices[index] ?? NaN) - value)).toBeLessThan(1e-3);
    });
    expect(indices.indexOf(Math.max(...indices))).toBe(3);
  });

  it("CV-37 shows that the index is not the optimum", () => {
    const value = (sequence: readonly number[]) => figuresOf(jobs, sequence, setup).weightedTardiness;
    const dispatched = atcsSequence(jobs, scale, setup);
    expect([dispatched, value(dispatched)]).toEqual([[3, 1, 0, 2], 118]);
    const optimum = permutations(4).reduce((a, b) => (value(b) < value(a) ? b : a));
    expect([optimum, value(optimum)]).toEqual([[1, 3, 2, 0], 98]);
  });

  // OR-Library, wt40 no. 1 (licence and source beside the file): optimum 913; the rules' figures recomputed.
  it("CV-38 gives the figures of six rules on wt40 no. 1", () => {
    const file = join(import.meta.dirname, "../fixtures/one-twt/instances/wt40_001.txt");
    const { durations, goal } = readOneTwt(readFileSync(file, "utf8"));
    const { dues, weights } = goal as Extract<typeof goal, { kind: "weighted tardiness" }>;
    const set = jobsOf(
      durations.map(([duration]) => duration ?? NaN),
      dues,
      weights,
    );
    const total = set.reduce((sum, job) => sum + job.duration, 0);
    expect(total).toBe(2065);
    const edd = figuresOf(set, earliestDueFirst(set));
    expect([edd.weightedTardiness, edd.greatestLateness, edd.lateJobs, edd.totalTardiness]).toEqual([
      1588, 210, 6, 522,
    ]);
    const wspt = figuresOf(set, weightedShortestFirst(set));
    expect([wspt.weightedTardiness, wspt.weightedCompletion]).toEqual([3066, 137_246]);
    expect(fewestLate(set).late.length).toBe(3);
    expect(figuresOf(set, shortestFirst(set)).totalFlow).toBe(30_944);
    const atc = (dueScale: number) =>
      figuresOf(set, atcsSequence(set, { dueScale, meanDuration: total / 40, setup: null }))
        .weightedTardiness;
    expect([atc(2), atc(0.5)]).toEqual([1154, 913]);
  });
});
