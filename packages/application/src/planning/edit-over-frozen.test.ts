import { type Pin, type Plan, type ProblemData, solve } from "@formweek/scheduler";
import { describe, expect, test } from "vitest";
import { stillEnv } from "../../../../tests/helpers/still-env.ts";
import { HOUR, jobOf, twoMouldPlant } from "../../../../tests/helpers/two-mould-plant.ts";
import { type EditOutcome, editOverFrozen } from "./edit-over-frozen.ts";
import type { PlanEdit } from "./plan-edit.ts";

/** Three orders of an hour each, one after another on line 1, which all the same may run on line 2. */
const problem = twoMouldPlant({
  jobs: ["a", "b", "c"].map((id, index) => {
    const job = jobOf(id, "1", "A", { dueAt: (index + 1) * HOUR, pieces: 3600 });
    return { ...job, options: [...job.options, { lineId: "2", setupId: "B", secondsPerPiece: 1 }] };
  }),
});

function planned(of: ProblemData): Plan {
  const result = solve(of, { seed: 1, maxSteps: 50, maxMs: null }, stillEnv());
  if (result.status !== "planned") throw new Error(result.status);
  return result.plan;
}

const plan = planned({
  ...problem,
  jobs: problem.jobs.map((job) => ({ ...job, options: job.options.slice(0, 1) })),
});
const startOf = ({ lots }: Plan, orderId: string) => lots.find((lot) => lot.orderId === orderId)?.start;
const pinOf = (orderId: string): Pin => ({
  orderId,
  lineId: "1",
  startAt: startOf(plan, orderId) ?? 0,
  sequence: null,
});

function outcome(edit: PlanEdit, frozen: readonly string[]): EditOutcome {
  const tried = editOverFrozen(problem, plan, { edit, frozen: frozen.map(pinOf) });
  if (tried.kind !== "done") throw new Error(tried.kind);
  return tried.outcome;
}

const movedIds = ({ moved }: EditOutcome): readonly string[] => moved.map(({ orderId }) => orderId);
const inFront: PlanEdit = {
  kind: "move",
  orderId: "c",
  lot: 0,
  lineId: "1",
  before: { orderId: "a", lot: 0 },
};

describe("an edit beside frozen runs", () => {
  test("the orders run one after another to begin with", () => {
    expect(plan.lots.map(({ orderId, lineId }) => [orderId, lineId])).toEqual([
      ["a", "1"],
      ["b", "1"],
      ["c", "1"],
    ]);
  });

  test("that leaves them alone moves none, and what is frozen stays though it could begin earlier", () => {
    const free = outcome({ kind: "take out", orderId: "a" }, []);
    expect(startOf(free.plan, "b")).toBeLessThan(startOf(plan, "b") ?? 0);
    const held = outcome({ kind: "take out", orderId: "a" }, ["b"]);
    expect(movedIds(held)).toEqual([]);
    expect(startOf(held.plan, "b")).toBe(startOf(plan, "b"));
    expect(held.problem.pins).toEqual([pinOf("b")]);
  });

  test("that is of a frozen order moves that one alone, where it can", () => {
    const away = outcome({ kind: "move", orderId: "a", lot: 0, lineId: "2", before: null }, ["a", "b"]);
    expect(movedIds(away)).toEqual(["a"]);
    expect(startOf(away.plan, "b")).toBe(startOf(plan, "b"));
    expect(movedIds(outcome({ kind: "take out", orderId: "b" }, ["a", "b"]))).toEqual(["b"]);
  });

  test("that pushes frozen runs names those that give way", () => {
    expect(movedIds(outcome(inFront, ["a", "b"]))).toEqual(["a", "b"]);
  });

  test("that leaves everything where it is is idle, also on a frozen order", () => {
    const stay: PlanEdit = { ...inFront, orderId: "a", before: { orderId: "b", lot: 0 } };
    expect(outcome(stay, ["a", "b"])).toMatchObject({ isIdle: true, moved: [] });
  });

  test("that no rule allows is refused for that, not for what is frozen", () => {
    const edit: PlanEdit = { ...inFront, lineId: "nowhere" };
    const tried = editOverFrozen(problem, plan, { edit, frozen: [pinOf("a")] });
    expect(tried).toMatchObject({ kind: "refused", refusal: { code: "line-unknown" } });
  });
});
