import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { problemArb, SMALL_PLANT } from "../../../tests/arbitraries/problem.ts";
import { stillEnv } from "../../../tests/helpers/still-env.ts";
import { auditPlan, solve, type Plan, type ProblemData } from "./index.ts";

/** Many random plants: on a busy machine they take longer than one example may. */
const MANY_PLANTS = { timeout: 60_000 };

function planned(problem: ProblemData, maxSteps: number): Plan {
  const result = solve(problem, { seed: 7, maxSteps, maxMs: null }, stillEnv());
  expect(result.status === "rejected" ? result.violations : result.status).toBe("planned");
  return (result as { plan: Plan }).plan;
}

describe("every plan that the engine gives", () => {
  it("passes the audit at once after construction, under all rules", MANY_PLANTS, () => {
    fc.assert(
      fc.property(problemArb(), (problem) => {
        planned(problem, 0);
      }),
      { seed: 20261, numRuns: 300 },
    );
  });
  it("passes the audit after a search", MANY_PLANTS, () => {
    fc.assert(
      fc.property(problemArb(), (problem) => {
        planned(problem, 60);
      }),
      { seed: 20262, numRuns: 150 },
    );
  });
  it("accounts for every order once, as lots or with a reason", MANY_PLANTS, () => {
    fc.assert(
      fc.property(problemArb({ ...SMALL_PLANT, jobs: 12 }), (problem) => {
        const plan = planned(problem, 20);
        const named = [
          ...new Set(plan.lots.map((lot) => lot.orderId)),
          ...plan.unplanned.map((order) => order.orderId),
        ];
        expect(new Set(named)).toEqual(new Set(problem.jobs.map((job) => job.orderId)));
        expect(named.length).toBe(problem.jobs.length);
        for (const { reasons } of plan.unplanned) expect(reasons.length).toBeGreaterThan(0);
        expect(auditPlan(problem, plan)).toEqual([]);
        expect(JSON.stringify(plan)).not.toMatch(/NaN|null,"cost"|Infinity/);
      }),
      { seed: 20263, numRuns: 100 },
    );
  });
});
