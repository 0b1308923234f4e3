import { describe, expect, it } from "vitest";
import { HOUR, jobOf, twoMouldPlant } from "../../../../tests/helpers/two-mould-plant.ts";
import { stillEnv } from "../../../../tests/helpers/still-env.ts";
import {
  openEdits,
  solve,
  type EditRefusal,
  type Job,
  type Plan,
  type PlanEdit,
  type ProblemData,
} from "../index.ts";

const RULE = { most: 3, leastPieces: 900, unitPieces: 100 };

/** Order o of one hour, with mould A on line 1 or mould B on line 2; a change to a bare line takes 3 h. */
function plant(part: Partial<Job> = {}): ProblemData {
  const options = [
    { lineId: "1", setupId: "A", secondsPerPiece: 1 },
    { lineId: "2", setupId: "B", secondsPerPiece: 2 },
  ];
  return twoMouldPlant({ jobs: [jobOf("o", "1", "A", { options, lots: RULE, ...part })] });
}

function planOf(problem: ProblemData): Plan {
  const result = solve(problem, { seed: 3, maxSteps: 60, maxMs: null }, stillEnv());
  if (result.status !== "planned") throw new Error(result.status);
  return result.plan;
}

function applied(problem: ProblemData, plan: Plan, edit: PlanEdit): Plan | EditRefusal {
  const opened = openEdits(problem, plan);
  if (!opened.ok) throw new Error(opened.error[0]!.text);
  const result = opened.value.apply(edit);
  return result.ok ? result.value : result.error;
}

const split = (pieces: number, lineId = "2", part: { lot?: number } = {}): PlanEdit => ({
  kind: "split",
  orderId: "o",
  lot: 0,
  pieces,
  lineId,
  before: null,
  ...part,
});

function splitPlan(problem: ProblemData, pieces: number, lineId = "2"): Plan {
  const plan = applied(problem, planOf(problem), split(pieces, lineId));
  if ("code" in plan) throw new Error(plan.text);
  return plan;
}

describe("a lot split by hand", () => {
  it("gives pieces to a lot of its own on another line, with that line's own mould", () => {
    // one team: mould A is mounted until 2 h, mould B until 4 h, each warmed up for 1 h
    expect(splitPlan(plant(), 900).lots).toMatchObject([
      { lot: 0, lineId: "1", setupId: "A", pieces: 2700, start: 3 * HOUR, end: 3.75 * HOUR },
      { lot: 1, lineId: "2", setupId: "B", pieces: 900, start: 5 * HOUR, end: 5.5 * HOUR },
    ]);
  });

  it("may put the new lot ahead of what is left, and numbers lots by their starts", () => {
    const edit: PlanEdit = {
      kind: "split",
      orderId: "o",
      lot: 0,
      pieces: 1000,
      lineId: "1",
      before: { orderId: "o", lot: 0 },
    };
    const plan = applied(plant(), planOf(plant()), edit) as Plan;
    expect(plan.lots.map(({ lot, pieces }) => [lot, pieces])).toEqual([
      [0, 1000],
      [1, 2600],
    ]);
  });

  it("is joined where its first lot stands", () => {
    const whole = planOf(plant());
    const joined = applied(plant(), splitPlan(plant(), 900), { kind: "join", orderId: "o" });
    expect(joined).toEqual(whole);
  });

  it("is refused where the order's lots would be too many, too small or break their packing", () => {
    const whole = planOf(plant());
    const code = (problem: ProblemData, edit: PlanEdit, plan = whole): string =>
      (applied(problem, plan, edit) as EditRefusal).code;
    const unsplit = twoMouldPlant({ jobs: [jobOf("o", "1", "A")] });
    expect(code(unsplit, split(1800, "1"))).toBe("may-not-be-split");
    const two = plant({ lots: { ...RULE, most: 2 } });
    expect(code(two, split(900), splitPlan(two, 900))).toBe("too-many-lots");
    for (const pieces of [899, 2701, 3600, 5000, 0, -900, 1000.5, Number.NaN])
      expect(code(plant(), split(pieces)), `${pieces}`).toBe("too-few-pieces");
    expect(code(plant(), split(950))).toBe("breaks-packing");
    expect(code(plant(), split(900, "3"))).toBe("line-unknown");
    expect(code(plant(), split(900, "1", { lot: 1 }))).toBe("lot-unknown");
    expect(code(plant(), { kind: "join", orderId: "o" })).toBe("not-split");
    expect(code(plant(), { kind: "join", orderId: "x" })).toBe("order-unknown");
  });

  it("keeps the exact start of the first lot", () => {
    const problem = plant();
    const held: ProblemData = {
      ...problem,
      pins: [{ orderId: "o", lineId: null, startAt: 4 * HOUR, sequence: null }],
    };
    const plan = splitPlan(held, 900);
    expect(plan.lots[0]).toMatchObject({ lot: 0, pieces: 2700, start: 4 * HOUR });
    expect(applied(held, plan, { kind: "join", orderId: "o" })).toEqual(planOf(held));
  });

  it("takes all lots of the order out together, and puts it back whole", () => {
    const without = applied(plant(), splitPlan(plant(), 900), { kind: "take out", orderId: "o" }) as Plan;
    expect(without.lots).toEqual([]);
    expect(applied(plant(), without, { kind: "put back", orderId: "o" })).toEqual(planOf(plant()));
  });
});
