import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { problemArb, SMALL_PLANT } from "../../../../tests/arbitraries/problem.ts";
import { stillEnv } from "../../../../tests/helpers/still-env.ts";
import { auditPlan, solve, type Plan, type ProblemData } from "../index.ts";

function planOf(problem: ProblemData, maxSteps: number, startFrom?: Plan): Plan {
  const from = startFrom === undefined ? {} : { startFrom };
  const result = solve(problem, { seed: 4, maxSteps, maxMs: null, ...from }, stillEnv());
  expect(result.status === "rejected" ? result.violations : result.status).toBe("planned");
  return (result as { plan: Plan }).plan;
}

describe("a search that goes on from a plan", () => {
  it("has the plan itself before its first step", () => {
    fc.assert(
      fc.property(problemArb(), (problem) => {
        const plan = planOf(problem, 40);
        expect(planOf(problem, 0, plan)).toEqual(plan);
      }),
      { seed: 81, numRuns: 120 },
    );
  });
  it("never ends dearer than it began", () => {
    fc.assert(
      fc.property(problemArb(), (problem) => {
        const plan = planOf(problem, 20);
        expect(planOf(problem, 60, plan).objective.total).toBeLessThanOrEqual(plan.objective.total + 1e-6);
      }),
      { seed: 82, numRuns: 60 },
    );
  });
  it("takes orders that are gone or new, and lines that may no longer make what they made", () => {
    fc.assert(
      fc.property(problemArb(), (problem) => {
        const [first, second, ...others] = problem.jobs;
        const plan = planOf({ ...problem, pins: [], jobs: [first!, ...others] }, 30);
        const changed: ProblemData = {
          ...problem,
          pins: [],
          jobs: [second!, ...others.map((job) => ({ ...job, options: job.options.slice(1) }))],
        };
        expect(auditPlan(changed, planOf(changed, 30, plan))).toEqual([]);
      }),
      { seed: 83, numRuns: 80 },
    );
  });
  it("keeps pins that were set since", () => {
    fc.assert(
      fc.property(problemArb({ ...SMALL_PLANT, pins: false }), (problem) => {
        const plan = planOf(problem, 30);
        const onOneLine = plan.lots.filter((lot) => lot.lineId === plan.lots[0]?.lineId);
        // an order may run there in several lots, and is pinned once all the same
        const orderIds = [...new Set(onOneLine.reverse().map((lot) => lot.orderId))];
        const pins = orderIds.map((orderId, sequence) => {
          return { orderId, lineId: onOneLine[0]!.lineId, startAt: null, sequence };
        });
        const pinned = { ...problem, pins };
        expect(auditPlan(pinned, planOf(pinned, 10, plan))).toEqual([]);
      }),
      { seed: 84, numRuns: 60 },
    );
  });
});
