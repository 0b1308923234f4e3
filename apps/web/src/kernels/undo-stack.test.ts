import type { WorkingPlanStep } from "@formweek/contracts";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { nextSteps } from "./undo-stack.ts";

const step = (kind: WorkingPlanStep["kind"], revision: number): WorkingPlanStep => ({
  kind,
  revision,
  fromPlanId: null,
  planId: `plan ${revision}`,
  edit: null,
  note: null,
  by: "planner",
  at: "2026-11-30T05:00:00Z",
});
const newestFirst = (...kinds: readonly WorkingPlanStep["kind"][]): readonly WorkingPlanStep[] =>
  kinds.map((kind, index) => step(kind, index + 1)).reverse();

describe("nextSteps", () => {
  it("takes back the newest step that still stands, and does again the one taken back last", () => {
    const { undo, redo } = nextSteps(newestFirst("run", "edit", "edit", "undo"));
    expect([undo?.revision, redo?.revision]).toEqual([2, 3]);
  });

  it("has nothing to do again after a new step, and passes over what was given out", () => {
    const { undo, redo } = nextSteps(newestFirst("run", "edit", "undo", "publish", "edit", "publish"));
    expect([undo?.revision, redo]).toEqual([5, null]);
    expect(nextSteps([])).toEqual({ undo: null, redo: null });
  });

  it("is where it was after as many steps back as forth", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 12 }), fc.nat(11), (edits, back) => {
        const times = Math.min(back, edits);
        const before = Array.from({ length: edits }, () => "edit" as const);
        const walked = [
          ...before,
          ...Array.from({ length: times }, () => "undo" as const),
          ...Array.from({ length: times }, () => "redo" as const),
        ];
        expect(nextSteps(newestFirst(...walked))).toEqual(nextSteps(newestFirst(...before)));
      }),
    );
  });
});
