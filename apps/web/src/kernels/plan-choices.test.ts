import type { Publication, WorkingPlanResponse, WorkingPlanStep } from "@formweek/contracts";
import { describe, expect, test } from "vitest";
import { firstPair, planChoices } from "./plan-choices.ts";

const step = (revision: number, planId: string, kind: WorkingPlanStep["kind"] = "edit"): WorkingPlanStep => ({
  revision,
  kind,
  fromPlanId: null,
  planId,
  edit: null,
  note: kind === "publish" ? "" : null,
  by: "local",
  at: "2026-11-30T06:00:00Z",
});
const publication = (revision: number, planId: string): Publication => ({
  revision,
  planId,
  note: "",
  frozenUntil: null,
  by: "local",
  at: "2026-11-30T06:00:00Z",
});
const working = (planId: string | null, publishedPlanId: string | null): WorkingPlanResponse => ({
  revision: 9,
  planId,
  canUndo: false,
  canRedo: false,
  publishedPlanId,
  steps: [],
});

describe("plans to choose from", () => {
  test("each once, by what is most telling of it, newest first", () => {
    const choices = planChoices({
      working: working("c", "b"),
      publications: [publication(6, "b"), publication(3, "a"), publication(2, "b")],
      steps: [step(9, "c"), step(8, "d", "undo"), step(6, "b", "publish"), step(1, "a", "run")],
    });
    expect(choices.map(({ kind, planId }) => [kind, planId])).toEqual([
      ["working", "c"],
      ["published", "b"],
      ["published", "a"],
      ["step", "d"],
    ]);
    expect(choices[0]).toMatchObject({ isPublished: false });
    expect(choices[1]).toMatchObject({ isNewest: true, publication: { revision: 6 } });
    expect(choices[2]).toMatchObject({ isNewest: false });
  });

  test("a working plan that is published is one choice and says both", () => {
    const choices = planChoices({
      working: working("a", "a"),
      publications: [publication(2, "a")],
      steps: [],
    });
    expect(choices).toEqual([{ kind: "working", planId: "a", isPublished: true }]);
  });

  test("none before the first plan", () => {
    expect(planChoices({ working: working(null, null), publications: [], steps: [] })).toEqual([]);
  });
});

describe("what is looked at first", () => {
  test("the working plan beside the published one, else beside the newest other", () => {
    const known = { publications: [publication(2, "b")], steps: [step(3, "c"), step(1, "a")] };
    expect(firstPair(planChoices({ ...known, working: working("c", "b") }))).toEqual(["b", "c"]);
    expect(firstPair(planChoices({ ...known, working: working("b", "b") }))).toEqual(["c", "b"]);
    expect(firstPair(planChoices({ working: working("a", null), publications: [], steps: [] }))).toEqual([
      null,
      "a",
    ]);
    expect(firstPair([])).toEqual([null, null]);
  });
});
