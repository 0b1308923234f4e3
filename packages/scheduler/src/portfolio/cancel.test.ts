import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { problemArb, SMALL_PLANT } from "../../../../tests/arbitraries/problem.ts";
import { largePlant } from "../../../../tests/helpers/large-plant.ts";
import { stillEnv } from "../../../../tests/helpers/still-env.ts";
import { DAY, jobOf, lineOf, twoMouldPlant } from "../../../../tests/helpers/two-mould-plant.ts";
import { auditPlan, boundOf, solve, type ProblemData, type SolveParams, type SolveResult } from "../index.ts";

interface Cancelled {
  readonly result: SolveResult;
  /** Times that the solve still asked after it had been told. */
  readonly asksAfter: number;
}

/** A solve that is cancelled at the k-th time it asks. */
function cancelAt(problem: ProblemData, params: SolveParams, k: number): Cancelled {
  let asks = 0;
  const result = solve(problem, params, { ...stillEnv(), isCancelled: () => ++asks >= k });
  return { result, asksAfter: asks - k };
}

/** How often a solve asks that is not cancelled. */
function asksOf(problem: ProblemData, params: SolveParams): number {
  let asks = 0;
  solve(problem, params, { ...stillEnv(), isCancelled: () => ++asks < 0 });
  return asks;
}

/** The plan is valid, and its bound the true one or none. */
function expectSound(problem: ProblemData, result: SolveResult, bound: number): void {
  if (result.status !== "planned") throw new Error(`No plan: ${result.status}.`);
  expect(auditPlan(problem, result.plan)).toEqual([]);
  expect([0, bound]).toContain(result.bound.total);
}

/** The first questions one by one, some of those in the bound, and the last ones, in the search, one by one. */
function moments(asks: number): readonly number[] {
  const spread = [0.1, 0.3, 0.5, 0.7, 0.9].map((share) => Math.round(asks * share));
  const each = Array.from({ length: 20 }, (_, i) => i);
  const all = [...each.map((i) => 1 + i), ...spread, ...each.map((i) => asks - i)];
  return [...new Set(all.filter((k) => k >= 1 && k <= asks))].sort((x, y) => x - y);
}

describe("a cancel of a small plant, whenever it comes", () => {
  const plants = fc.sample(problemArb({ ...SMALL_PLANT, jobs: 7 }), { seed: 6, numRuns: 5 });

  it.each([1, 3])("ends the solve of %i members at once with a sound plan", (members) => {
    let searched = 0;
    for (const problem of plants) {
      const params = { seed: 1, maxSteps: 60, maxMs: null, members };
      const bound = boundOf(problem).total;
      const asks = asksOf(problem, params);
      expect(asks).toBeGreaterThan(20);
      let steps = 0;
      for (const k of moments(asks)) {
        const { result, asksAfter } = cancelAt(problem, params, k);
        expectSound(problem, result, bound);
        expect(result).toMatchObject({ stopped: "cancelled" });
        // at most once before a member sits down or takes over a plan, and once for each in the round
        expect(asksAfter).toBeLessThanOrEqual(1 + members);
        const taken = result.status === "planned" ? result.statistics.steps : -1;
        expect(taken).toBeGreaterThanOrEqual(steps);
        steps = taken;
        if (k === 1) expect(taken).toBe(0);
      }
      searched += steps;
    }
    // the last questions are asked in the search, where the first plan is not the best
    expect(searched).toBeGreaterThan(50);
  });
});

describe("a cancel of a large plant, whenever it comes", () => {
  const [small] = fc.sample(problemArb({ ...SMALL_PLANT, jobs: 9, lines: 16 }), { seed: 2, numRuns: 1 }) as [
    ProblemData,
  ];
  const problem = largePlant(small);
  const params = { seed: 1, maxSteps: 0, maxMs: null };

  it("ends it without a plan before the first one is audited, and with a sound one from then on", () => {
    const asks = asksOf(problem, params);
    const bound = boundOf(problem).total;
    const moments = [1, 2, 3, 0.05, 0.2, 0.5, 0.8, 0.95].map((each) =>
      each < 1 ? Math.round(asks * each) : each,
    );
    const cancels = [...moments, asks - 30, asks - 2, asks - 1, asks].map((k) =>
      cancelAt(problem, params, k),
    );
    const statuses = cancels.map(({ result }) => result.status);
    expect(statuses.slice(0, 2)).toEqual(Array(2).fill("cancelled"));
    expect(statuses.at(-1)).toBe("planned");
    expect(statuses.lastIndexOf("cancelled")).toBeLessThan(statuses.indexOf("planned"));
    for (const { result, asksAfter } of cancels) {
      if (result.status !== "cancelled") expectSound(problem, result, bound);
      expect(asksAfter).toBeLessThanOrEqual(result.status === "cancelled" ? 0 : 3);
    }
  }, 60_000);

  it("ends it at once where it goes on from a plan", () => {
    const first = solve(problem, params, stillEnv());
    if (first.status !== "planned") throw new Error(first.status);
    const { result, asksAfter } = cancelAt(problem, { ...params, startFrom: first.plan }, 2);
    expect(result).toEqual({ status: "cancelled" });
    expect(asksAfter).toBe(0);
  }, 60_000);
});

describe("a cancel of a plant that is too full", () => {
  it("ends the step under way, which would try to place every order that is left out", () => {
    const jobs = Array.from({ length: 350 }, (_, i) => jobOf(`order-${i}`, "1", i % 2 === 0 ? "A" : "B"));
    const problem = twoMouldPlant({ jobs, lines: [lineOf("1")], horizon: { start: 0, end: 2 * DAY } });
    const params = { seed: 2, maxSteps: 2, maxMs: null };
    const asks = asksOf(problem, params);
    const evaluations = Array.from({ length: 12 }, (_, back) => {
      const { result, asksAfter } = cancelAt(problem, params, asks - back);
      if (result.status !== "planned") throw new Error(result.status);
      expect(auditPlan(problem, result.plan)).toEqual([]);
      expect(asksAfter).toBeLessThanOrEqual(1);
      return result.statistics.evaluations;
    });
    // it asks twice between two steps: the others are answers within one
    expect(new Set(evaluations).size).toBeGreaterThan(4);
  });
});
