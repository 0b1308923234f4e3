import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { problemArb, SMALL_PLANT } from "../../../../tests/arbitraries/problem.ts";
import { stillEnv } from "../../../../tests/helpers/still-env.ts";
import { HOUR, jobOf, lineOf, twoMouldPlant } from "../../../../tests/helpers/two-mould-plant.ts";
import { auditPlan, solve, tradeOff, type CriterionName, type ProblemData, type TradeOff } from "../index.ts";
import { tradeOffRuns } from "./trade-off-runs.ts";
import { dominates, undominated } from "./undominated.ts";

function traded(problem: ProblemData, maxSteps: number): TradeOff {
  const result = tradeOff(problem, { seed: 4, maxSteps, maxMs: null }, stillEnv());
  if (result.status !== "traded") throw new Error(JSON.stringify(result));
  return result;
}

describe("what no other beats", () => {
  it("is kept, equal ones once", () => {
    const items = [
      [3, 3],
      [1, 5],
      [3, 3],
      [4, 4],
      [2, 2],
      [5, 1],
    ];
    expect(undominated(items, (item) => item)).toEqual([
      [1, 5],
      [2, 2],
      [5, 1],
    ]);
  });
});

/** Money by criterion, added up from the plan's terms by the words alone. */
function moneyOf({ plan }: TradeOff["plans"][number], name: string): number {
  const terms: Readonly<Record<string, readonly string[]>> = {
    lateness: ["weighted tardiness", "late orders", "unplanned orders"],
    changes: ["change time", "start-up scrap"],
    labour: ["overtime", "team time"],
    earliness: ["earliness"],
    "load balance": ["load balance"],
    stability: ["lines changed", "starts moved"],
    "last end": ["makespan"],
  };
  return plan.objective.terms
    .filter((term) => terms[name]!.includes(term.name))
    .reduce((sum, term) => sum + term.cost, 0);
}

describe("a trade-off run on random plants", () => {
  it("gives audited plans at the problem's own prices, none of which beats another", () => {
    let several = 0;
    fc.assert(
      fc.property(problemArb({ ...SMALL_PLANT, jobs: 9 }), (problem) => {
        const { plans, criteria } = traded(problem, 700);
        const money = plans.map((each) => criteria.map((name) => moneyOf(each, name)));
        if (plans.length > 1) several++;
        plans.forEach(({ plan, values }, i) => {
          expect(auditPlan(problem, plan)).toEqual([]);
          values.forEach((value, c) => expect(value).toBeCloseTo(money[i]![c]!, 1));
          for (const other of plans) expect(dominates(other.values, values)).toBe(false);
        });
      }),
      { seed: 21, numRuns: 12 },
    );
    expect(several).toBeGreaterThan(0);
  }, 60_000);

  it("has a plan for every criterion that is no worse in it than the plan of the problem as it is", () => {
    fc.assert(
      fc.property(problemArb({ ...SMALL_PLANT, jobs: 9 }), (problem) => {
        const { plans, criteria, base } = traded(problem, 350);
        criteria.forEach((name, c) => {
          const extreme = plans.find(({ leastIn }) => leastIn.includes(name))!;
          const balanced = moneyOf({ plan: base.plan, values: [], leastIn: [] }, name);
          expect(extreme.values[c]).toBeLessThanOrEqual(balanced + 0.0051);
        });
      }),
      { seed: 22, numRuns: 12 },
    );
  }, 60_000);
});

describe("a trade-off run of orders that are on time only with a change before each", () => {
  /** Two moulds in turn on one line; each order comes to be made just when it is its turn. One mould after the other is late. */
  const jobs = Array.from({ length: 6 }, (_, i) => {
    const end = (4 + 5 * i) * HOUR;
    return jobOf(`order-${String(i)}`, "1", i % 2 === 0 ? "A" : "B", {
      earliestStartAt: end - HOUR,
      dueAt: end,
    });
  });
  const plant = twoMouldPlant({ jobs, lines: [lineOf("1")] });
  const problem = { ...plant, objective: { ...plant.objective, tardinessPerWeightHour: 1 } };

  it.each([1, 2, 3, 4, 5])("gives a plan of few changes and one that is on time (seed %i)", (seed) => {
    const result = tradeOff(problem, { seed, maxSteps: 700, maxMs: null }, stillEnv());
    if (result.status !== "traded") throw new Error(result.status);
    const [lateness, changes] = [result.criteria.indexOf("lateness"), result.criteria.indexOf("changes")];
    const leastIn = (name: CriterionName) => result.plans.find((plan) => plan.leastIn.includes(name))!;
    const [onTime, fewChanges] = [leastIn("lateness").values, leastIn("changes").values];
    expect(onTime[lateness]).toBe(0);
    expect(fewChanges[lateness]).toBeGreaterThan(0);
    expect(fewChanges[changes]).toBeLessThan(onTime[changes]!);
  });
});

describe("a trade-off run", () => {
  /** Two moulds wanted in turn on two lines: on time only with many changes. */
  const jobs = Array.from({ length: 10 }, (_, i) => {
    const setupId = i % 2 === 0 ? "A" : "B";
    const options = ["1", "2"].map((lineId) => ({ lineId, setupId, secondsPerPiece: 1 }));
    return jobOf(`order-${String(i)}`, "1", setupId, { options, dueAt: (4 + i) * HOUR, weight: 1 + (i % 3) });
  });
  const problem = twoMouldPlant({ jobs });

  it("gives the same plans for the same steps and seed", () => {
    expect(traded(problem, 700)).toEqual(traded(problem, 700));
  }, 60_000);

  it("starts from the plan of the same solve at the problem's own prices", () => {
    const steps = Math.floor(700 / tradeOffRuns(problem, { seed: 4, maxSteps: 700, maxMs: null }).length);
    const alone = solve(problem, { seed: 4, maxSteps: steps, maxMs: null }, stillEnv());
    const { base } = traded(problem, 700);
    expect(alone.status === "planned" && alone.plan).toEqual(base.plan);
  }, 60_000);

  it("of one priced criterion is a plain solve", () => {
    const prices = { ...problem.objective, changePerMachineHour: 0, changePerTeamHour: 0, scrapPerKg: 0 };
    const { plans, criteria } = traded({ ...problem, objective: prices }, 60);
    expect(criteria).toEqual(["lateness"]);
    expect(plans).toHaveLength(1);
  });

  it("names the faults of a faulty problem", () => {
    const faulty = { ...problem, horizon: { start: problem.horizon.end, end: problem.horizon.start } };
    const result = tradeOff(faulty, { seed: 1, maxSteps: 10, maxMs: null }, stillEnv());
    expect(result.status).toBe("faulty-problem");
  });

  it("ends with what it has when cancelled", () => {
    let looks = 0;
    const env = { ...stillEnv(), isCancelled: () => looks > 40, monotonicMs: () => ++looks };
    const result = tradeOff(problem, { seed: 1, maxSteps: 100_000, maxMs: null }, env);
    expect(result.status === "traded" && result.steps).toBeLessThan(1000);
  }, 60_000);
});
