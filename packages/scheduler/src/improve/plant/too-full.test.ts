import fc from "fast-check";
import { expect, it } from "vitest";
import { problemArb, SMALL_PLANT } from "../../../../../tests/arbitraries/problem.ts";
import { stillEnv } from "../../../../../tests/helpers/still-env.ts";
import { auditPlan, solve, type Plan, type ProblemData } from "../../index.ts";

const ORDERS = 10_000;

const [small] = fc.sample(problemArb({ ...SMALL_PLANT, heads: false }), { seed: 51, numRuns: 1 }) as [
  ProblemData,
];

/** Far more orders than the plant has hours for, of a few kinds that change moulds. */
const { start, end } = small.horizon;
const tooFull: ProblemData = {
  ...small,
  horizon: { start, end: start + Math.floor((end - start) / 8) },
  pins: [],
  jobs: Array.from({ length: Math.ceil(ORDERS / small.jobs.length) }, (_, copy) =>
    small.jobs.map((job) => ({ ...job, orderId: `${job.orderId}/${copy}` })),
  )
    .flat()
    .slice(0, ORDERS),
};

function planned(maxSteps: number): Plan {
  const result = solve(tooFull, { seed: 1, maxSteps, maxMs: null }, stillEnv());
  if (result.status !== "planned") throw new Error(result.status);
  return result.plan;
}

it(
  "plans what fits of 10,000 orders, gives the others a reason, and gets better by a few steps",
  { timeout: 180_000 },
  () => {
    const plan = planned(40);
    expect(plan.unplanned.length).toBeGreaterThan(ORDERS / 2);
    expect(plan.lots.length).toBeGreaterThan(0);
    expect(plan.unplanned.every(({ reasons }) => reasons.length > 0)).toBe(true);
    expect(auditPlan(tooFull, plan)).toEqual([]);
    expect(plan.objective.total).toBeLessThanOrEqual(planned(0).objective.total);
  },
);
