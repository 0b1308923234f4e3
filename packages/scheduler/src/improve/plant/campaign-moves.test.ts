import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { problemArb, SMALL_PLANT } from "../../../../../tests/arbitraries/problem.ts";
import { stillEnv } from "../../../../../tests/helpers/still-env.ts";
import { auditPlan, solve, type Plan, type ProblemData } from "../../index.ts";

/** More orders than a small plant has, so that one step in six moves a campaign. */
const MIDDLING = { ...SMALL_PLANT, jobs: 48, lines: 4, days: 28 };

function planned(problem: ProblemData, maxSteps: number): Plan {
  const result = solve(problem, { seed: 5, maxSteps, maxMs: null }, stillEnv());
  if (result.status !== "planned") throw new Error(`No plan: ${result.status}.`);
  return result.plan;
}

describe("a search that moves whole campaigns", () => {
  const plants = fc.sample(problemArb(MIDDLING), { seed: 8, numRuns: 3 });

  it("loses no order, breaks no rule, and makes the same plan of the same steps", () => {
    let gained = 0;
    for (const problem of plants) {
      const plan = planned(problem, 150);
      expect(auditPlan(problem, plan)).toEqual([]);
      const orders = new Set([
        ...plan.lots.map((lot) => lot.orderId),
        ...plan.unplanned.map((order) => order.orderId),
      ]);
      expect(orders.size).toBe(problem.jobs.length);
      expect(planned(problem, 150)).toEqual(plan);
      const first = planned(problem, 0).objective.total;
      expect(plan.objective.total).toBeLessThanOrEqual(first);
      if (plan.objective.total < first) gained++;
    }
    expect(gained).toBe(plants.length);
  }, 60_000);
});
