import { type Plan, type ProblemData, solve } from "@formweek/scheduler";
import { describe, expect, test } from "vitest";
import { stillEnv } from "../../../../tests/helpers/still-env.ts";
import { HOUR, jobOf, twoMouldPlant } from "../../../../tests/helpers/two-mould-plant.ts";
import { laterDue } from "./later-due.ts";

const problem: ProblemData = twoMouldPlant({
  jobs: ["a", "b"].map((id) => jobOf(id, "1", "A", { dueAt: 4 * HOUR + 600, pieces: 3500 })),
});

function planned(of: ProblemData): Plan {
  const result = solve(of, { seed: 1, maxSteps: 50, maxMs: null }, stillEnv());
  if (result.status !== "planned") throw new Error(result.status);
  return result.plan;
}

const plan = planned(problem);
const finishOf = (orderId: string): number => plan.lots.find((lot) => lot.orderId === orderId)?.finish ?? 0;
const [onTime = "", late = ""] = ["a", "b"].toSorted((one, other) => finishOf(one) - finishOf(other));

describe("a later due date", () => {
  test("is the first whole hour at which the order is ready, in the plan as it is, and costs no lateness", () => {
    const met = laterDue(problem, plan, late);
    const at = Math.ceil(finishOf(late) / HOUR) * HOUR;
    expect(finishOf(late)).toBeGreaterThan(4 * HOUR + 600);
    expect(met?.edit).toEqual({ kind: "later due", orderId: late, at });
    expect(met?.plan.lots).toEqual(plan.lots);
    expect(met?.plan.segments).toEqual(plan.segments);
    // By hand: 10 for each hour of lateness (the plant's price, weight 1).
    const lateHours = (finishOf(late) - 4 * HOUR - 600) / HOUR;
    expect(plan.objective.total - (met?.plan.objective.total ?? 0)).toBeCloseTo(10 * lateHours, 6);
  });

  test("is none for an order that is ready in time, left out, or unknown", () => {
    expect(
      laterDue({ ...problem, jobs: problem.jobs.map((job) => ({ ...job, dueAt: 90 * HOUR })) }, plan, onTime),
    ).toBeNull();
    expect(laterDue(problem, { ...plan, lots: [] }, late)).toBeNull();
    expect(laterDue(problem, plan, "none")).toBeNull();
  });
});
