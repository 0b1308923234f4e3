import { describe, expect, it } from "vitest";
import { madePlan } from "../fixtures/made-plan.ts";
import { boardPlan, type BoardSegment } from "./board-plan.ts";
import { walkSegments } from "./walk-segments.ts";

const document = madePlan({ lines: 5, runsPerLine: 8, seed: 11 });
const plan = boardPlan("p", document);

describe("walkSegments", () => {
  it("reaches every run and change of a line from its first, in order of time", () => {
    const reached: BoardSegment[] = [];
    for (let at = walkSegments(plan, null, "later"); at !== null; at = walkSegments(plan, at, "later"))
      reached.push(at);
    expect(reached).toEqual(plan.lines[0]?.segments);
  });

  it("comes back by the opposite step", () => {
    for (const segment of plan.lines[2]?.segments ?? []) {
      const next = walkSegments(plan, segment, "later");
      if (next !== null) expect(walkSegments(plan, next, "earlier")).toBe(segment);
    }
  });

  it("goes to the neighbouring line at about the same time, and stops at the last", () => {
    const from = plan.lines[2]?.segments[4] ?? null;
    const below = walkSegments(plan, from, "line below");
    expect(below?.lineIndex).toBe(3);
    expect(walkSegments(plan, plan.lines[4]?.segments[0] ?? null, "line below")).toBeNull();
    expect(walkSegments(plan, plan.lines[0]?.segments[0] ?? null, "line above")).toBeNull();
  });

  it("visits every late order once before it starts over", () => {
    const first = walkSegments(plan, null, "next late");
    const seen = new Set<number>();
    let at = first;
    while (at !== null && !seen.has(at.index)) {
      seen.add(at.index);
      at = walkSegments(plan, at, "next late");
    }
    expect(seen.size).toBe(document.summary.late);
    expect(at).toBe(first);
  });

  it("answers nothing on an empty plan", () => {
    const empty = boardPlan("e", { ...document, segments: [], orders: [] });
    expect(walkSegments(empty, null, "later")).toBeNull();
    expect(walkSegments(empty, null, "next late")).toBeNull();
  });
});
