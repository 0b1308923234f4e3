import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { problemArb, SMALL_PLANT } from "../../../../tests/arbitraries/problem.ts";
import { HOUR, jobOf, lineOf, twoMouldPlant } from "../../../../tests/helpers/two-mould-plant.ts";
import { stillEnv } from "../../../../tests/helpers/still-env.ts";
import { trivialBound } from "../../../../tests/helpers/trivial-bound.ts";
import { boundOf, solve } from "../index.ts";
import { compile } from "../problem/compile.ts";
import { NEVER } from "../problem/calendar.ts";
import type { ProblemData } from "../problem/problem-data.ts";
import { Decoder } from "../timing/decoder.ts";
import { emptySequences, insertOption } from "../timing/sequences.ts";
import type { PlanBound } from "./bound.ts";
import { finish } from "../work/work.ts";
import { ordersAlone } from "./orders-alone.ts";

/** Many random plants: on a busy machine they take longer than one example may. */
const MANY_PLANTS = { timeout: 60_000 };

/** Least of each figure over every assignment of options and every order of commitment to the lines; tiny problems only. */
function leastOfEveryPlan(problem: ProblemData): PlanBound {
  const compiled = compile(problem);
  const decoder = new Decoder(compiled, false);
  const { jobs, options } = compiled;
  const prices = problem.objective;
  const possible = [...finish(ordersAlone(compiled)).earliestEnd].filter((end) => end < NEVER).length;
  const least = { total: Infinity, lateness: Infinity, changes: Infinity, changeMinutes: Infinity };
  const judge = (chosen: readonly number[]): void => {
    const sequences = emptySequences(compiled);
    const rank = (option: number): number => {
      const own = jobs.rank[options.job[option]!]!;
      return own < 0 ? NEVER : own;
    };
    for (const option of [...chosen].sort((a, b) => rank(a) - rank(b))) {
      const line = options.line[option]!;
      insertOption(sequences, line, sequences.length[line]!, option);
    }
    least.total = Math.min(least.total, decoder.decode(sequences));
    if (decoder.option.filter((option) => option >= 0).length < possible) return;
    const { sums } = decoder;
    const lateness =
      (sums.lateWeightSeconds * prices.tardinessPerWeightHour) / 3600 +
      sums.lateWeight * prices.lateOrderPerWeight;
    const changes =
      (sums.changeSeconds * prices.changePerMachineHour + sums.teamSeconds * prices.changePerTeamHour) /
        3600 +
      sums.scrapKg * prices.scrapPerKg;
    least.lateness = Math.min(least.lateness, lateness);
    least.changes = Math.min(least.changes, changes);
    least.changeMinutes = Math.min(least.changeMinutes, sums.changeSeconds / 60);
  };
  const used = new Set<number>();
  const chosen: number[] = [];
  const extend = (): void => {
    judge(chosen);
    for (let job = 0; job < jobs.count; job++) {
      if (used.has(job)) continue;
      used.add(job);
      for (let option = jobs.firstOption[job]!; option < jobs.firstOption[job + 1]!; option++) {
        chosen.push(option);
        extend();
        chosen.pop();
      }
      used.delete(job);
    }
  };
  extend();
  return least;
}

const TINY = { ...SMALL_PLANT, lines: 2, jobs: 4, moulds: 2, days: 4, lots: false };

const PARTS = ["total", "lateness", "changes", "changeMinutes"] as const;

describe("the bound", () => {
  it(
    "lies at or below the best of every plan, in total and in each part, and is not idle",
    MANY_PLANTS,
    () => {
      const isExact = { total: 0, lateness: 0, changes: 0, changeMinutes: 0 };
      fc.assert(
        fc.property(problemArb(TINY), (problem) => {
          const least = leastOfEveryPlan(problem);
          const bound = boundOf(problem);
          for (const part of PARTS) {
            expect(bound[part], part).toBeLessThanOrEqual(least[part] + 1e-6);
            if (least[part] > 0 && bound[part] > least[part] - 1e-6) isExact[part]++;
          }
        }),
        { seed: 71, numRuns: 150 },
      );
      for (const part of PARTS) expect(isExact[part], part).toBeGreaterThan(10);
    },
  );
  it("lies at or below whatever plan the engine finds", MANY_PLANTS, () => {
    fc.assert(
      fc.property(problemArb(), (problem) => {
        const result = solve(problem, { seed: 5, maxSteps: 60, maxMs: null }, stillEnv());
        if (result.status !== "planned") throw new Error(result.status);
        expect(result.bound.total).toBeLessThanOrEqual(result.plan.objective.total + 1e-6);
      }),
      { seed: 72, numRuns: 150 },
    );
  });
  it("is never below the trivial one, and often above", () => {
    let higher = 0;
    fc.assert(
      fc.property(problemArb(), (problem) => {
        const [bound, trivial] = [boundOf(problem).total, trivialBound(problem)];
        expect(bound).toBeGreaterThanOrEqual(trivial - 1e-6);
        if (bound > trivial * 1.05) higher++;
      }),
      { seed: 73, numRuns: 150 },
    );
    expect(higher).toBeGreaterThan(75);
  });
  it("gives the same numbers twice", () => {
    const [problem] = fc.sample(problemArb(), { seed: 74, numRuns: 1 });
    expect(boundOf(problem!)).toEqual(boundOf(problem!));
  });
});

describe("the bound on lateness", () => {
  const jobs = ["a", "b", "c", "d"].map((id) => jobOf(id, "1", "A", { dueAt: HOUR }));
  it("knows that orders of one line cannot run at once: four hours, all due after one", () => {
    const problem = twoMouldPlant({ jobs, lines: [lineOf("1", { initial: { setupId: "A", copy: 0 } })] });
    // ends at 1, 2, 3, 4 h: 0 + 1 + 2 + 3 h late at 10 an hour
    expect(boundOf(problem).lateness).toBeGreaterThan(54);
    expect(boundOf(problem).lateness).toBeLessThanOrEqual(60 + 1e-6);
    expect(trivialBound(problem)).toBe(0);
  });
  it("knows that one copy of a mould keeps two lines from sharing its orders", () => {
    const options = ["1", "2"].map((lineId) => ({ lineId, setupId: "A", secondsPerPiece: 1 }));
    const lines = [lineOf("1", { initial: { setupId: "A", copy: 0 } }), lineOf("2", { initial: null })];
    const shared = jobs.map((job) => ({ ...job, options }));
    const one = boundOf(twoMouldPlant({ jobs: shared, lines })).lateness;
    const copies = twoMouldPlant({}).moulds.map((mould) => ({ ...mould, copies: 2 }));
    const two = boundOf(twoMouldPlant({ jobs: shared, lines, moulds: copies })).lateness;
    // with two copies two orders end at 1 h and two at 2 h
    expect(one).toBeGreaterThan(54);
    expect(two).toBeGreaterThan(18);
    expect(two).toBeLessThanOrEqual(20 + 1e-6);
  });
  it("counts the first change into a set-up", () => {
    const problem = twoMouldPlant({ jobs: [jobOf("a", "1", "A", { dueAt: HOUR })] });
    // mounting 2 h, heating 1 h, running 1 h
    expect(boundOf(problem).lateness).toBeCloseTo(30, 6);
  });
});

describe("the bound on changes", () => {
  it("knows that a mould on an idle line must be stripped for another line", () => {
    const lines = [lineOf("1", { initial: { setupId: "A", copy: 0 } }), lineOf("2")];
    const problem = twoMouldPlant({ lines, jobs: [jobOf("a", "2", "A")] });
    // out 1 h, in 2 h, tail 1 h: four hours of lines and three of setters
    expect(boundOf(problem)).toMatchObject({ total: 7, changes: 7, changeMinutes: 240 });
    expect(trivialBound(problem)).toBe(0);
  });
  it("does not let two set-ups serve each other in a ring", () => {
    const siblings = threeSetups([
      [-1, 0, 0, 0],
      [0, -1, 1, 0],
      [0, 1, -1, 0],
      [0, 0, 0, -1],
    ]);
    // the ring x-y costs 2 × 10 minutes, but one of them must be come to from elsewhere, which costs 60
    expect(boundOf(siblings).changeMinutes).toBeCloseTo(60 + 10 + 60, 6);
  });
  it("lets only one set-up come straight after another", () => {
    const star = threeSetups([
      [-1, 0, 0, 0],
      [0, -1, 1, 1],
      [0, 0, -1, 0],
      [0, 0, 0, -1],
    ]);
    // x is cheap to leave, but only once
    expect(boundOf(star).changeMinutes).toBeCloseTo(60 + 10 + 60, 6);
    expect(solvedMinutes(star)).toBeCloseTo(130, 6);
  });
  it("sees a detour over a set-up that stands on the way anyhow", () => {
    const detour = threeSetups([
      [-1, 1, 0, 0],
      [0, -1, 1, 0],
      [0, 0, -1, 1],
      [0, 0, 0, -1],
    ]);
    expect(boundOf(detour).changeMinutes).toBeCloseTo(30, 6);
    expect(solvedMinutes(detour)).toBeCloseTo(30, 6);
  });
});

function solvedMinutes(problem: ProblemData): number {
  const result = solve(problem, { seed: 1, maxSteps: 200, maxMs: null }, stillEnv());
  if (result.status !== "planned") throw new Error(result.status);
  return result.plan.objective.terms.find(({ name }) => name === "change time")!.amount * 60;
}

/** One line, set-ups bare, x, y, z with one order each but the first; change 0 takes 60 minutes, change 1 takes 10. */
function threeSetups(matrix: readonly (readonly number[])[]): ProblemData {
  const ids = ["bare", "x", "y", "z"];
  const spec = { dismountSeconds: 0, mountSeconds: 0, usesTrolley: false, scrapKg: 0 };
  return twoMouldPlant({
    lines: [lineOf("1")],
    moulds: [],
    setups: ids.map((id) => ({ id, mouldId: null, sheetId: null, strippedId: id })),
    changeClasses: [{ id: "C", matrix }],
    changes: [
      { ...spec, tailSeconds: HOUR },
      { ...spec, tailSeconds: 600 },
    ],
    jobs: ids.slice(1).map((id) => jobOf(id, "1", id)),
  });
}
