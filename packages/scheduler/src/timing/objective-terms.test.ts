import { workingTimeOf } from "@formweek/capacity-model";
import { describe, expect, it } from "vitest";
import { DAY, HOUR, jobOf, lineOf, twoMouldPlant } from "../../../../tests/helpers/two-mould-plant.ts";
import { stillEnv } from "../../../../tests/helpers/still-env.ts";
import { solve, type ObjectiveTerm, type Plan, type ProblemData } from "../index.ts";

/** Plant with prices on some terms. */
function priced(prices: Partial<ProblemData["objective"]>, part: Partial<ProblemData>): ProblemData {
  const problem = twoMouldPlant(part);
  return { ...problem, objective: { ...problem.objective, ...prices } };
}

function planOf(problem: ProblemData): Plan {
  const result = solve(problem, { seed: 1, maxSteps: 300, maxMs: null }, stillEnv());
  expect(result.status === "rejected" ? result.violations : result.status).toBe("planned");
  return (result as { plan: Plan }).plan;
}

const amountOf = (plan: Plan, name: ObjectiveTerm["name"]): number | undefined =>
  plan.objective.terms.find((term) => term.name === name)?.amount;
const startOf = (plan: Plan, orderId: string): number =>
  plan.lots.find((lot) => lot.orderId === orderId)?.start ?? NaN;

describe("the terms of the objective", () => {
  it("overtime: hours of runs and changes in it are counted, and left free where that is cheaper", () => {
    // mounting 2 h, tail 1 h, run 1 h: 0 to 4 h; overtime from 2 h to 6 h
    const line = lineOf("1", { overtime: workingTimeOf([[2 * HOUR, 6 * HOUR]]) });
    const job = jobOf("o", "1", "A", { dueAt: 4 * HOUR });
    const cheap = planOf(priced({ overtimePerHour: 1 }, { lines: [line], jobs: [job] }));
    expect(amountOf(cheap, "overtime")).toBe(2);
    const late = jobOf("late", "1", "A", { pieces: 2 * 3600, dueAt: 10 * DAY });
    const other = lineOf("2");
    const both = { ...late, options: [...late.options, { lineId: "2", setupId: "A", secondsPerPiece: 1 }] };
    const dear = planOf(priced({ overtimePerHour: 50 }, { lines: [line, other], jobs: [both] }));
    expect(amountOf(dear, "overtime")).toBe(0);
    expect(dear.lots[0]?.lineId).toBe("2");
  });

  it("earliness: the order that takes up more room goes last", () => {
    const jobs = [
      jobOf("big", "1", "A", { holdingWeight: 5, pieces: 3600, dueAt: 9 * DAY }),
      jobOf("small", "1", "A", { holdingWeight: 1, pieces: 3600, dueAt: 9 * DAY }),
    ];
    const plan = planOf(priced({ earlinessPerWeightHour: 1 }, { lines: [lineOf("1")], jobs }));
    expect(startOf(plan, "small")).toBeLessThan(startOf(plan, "big"));
    // small ends at 4 h, big at 5 h: 212 h × 1 and 211 h × 5 before the due date
    expect(amountOf(plan, "earliness")).toBe(212 + 5 * 211);
  });

  it("load balance: hours of the busiest line over the mean", () => {
    const twoLines = (id: string): ProblemData["jobs"][number] => {
      const job = jobOf(id, "1", "A", { pieces: 4 * 3600 });
      return { ...job, options: [...job.options, { lineId: "2", setupId: "B", secondsPerPiece: 1 }] };
    };
    const jobs = [twoLines("a"), twoLines("b")];
    const careless = planOf(priced({ balancePerHour: 0 }, { jobs }));
    expect(new Set(careless.lots.map((lot) => lot.lineId)).size).toBe(1); // one change is cheaper than two
    const even = planOf(priced({ balancePerHour: 100 }, { jobs }));
    expect(new Set(even.lots.map((lot) => lot.lineId)).size).toBe(2);
    expect(amountOf(even, "load balance")).toBe(0);
  });

  it("distance from the published plan: runs stay where and when they were, unless that costs more", () => {
    const job = jobOf("o", "1", "A", { published: { lineIds: ["2"], startAt: 30 * HOUR } });
    const free = { ...job, options: [...job.options, { lineId: "2", setupId: "A", secondsPerPiece: 1 }] };
    const calm = planOf(priced({ movedLinePerOrder: 10, movedStartPerHour: 0 }, { jobs: [free] }));
    expect(calm.lots[0]?.lineId).toBe("2");
    expect(amountOf(calm, "lines changed")).toBe(0);
    const moved = planOf(priced({ movedLinePerOrder: 10, movedStartPerHour: 2 }, { jobs: [job] }));
    expect(amountOf(moved, "lines changed")).toBe(1);
    expect(amountOf(moved, "starts moved")).toBe(27); // it starts at 3 h
  });
});
