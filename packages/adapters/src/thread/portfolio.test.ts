import type { Plan, SolveResult } from "@formweek/scheduler";
import { describe, expect, test } from "vitest";
import { bestResult, mergedProgress, searchesOf } from "./portfolio.ts";

const statistics = { steps: 1, evaluations: 1, elapsedMs: 1, firstPlanMs: 1, firstTotal: 9, bestTotal: 9 };

function planned(total: number, mark: string): SolveResult {
  const lots = [{ orderId: mark, lot: 0, lineId: "L", setupId: "S", pieces: 1, start: 0, end: 1, finish: 1 }];
  const plan: Plan = { segments: [], lots, unplanned: [], objective: { terms: [], total } };
  return {
    status: "planned",
    plan,
    bound: { total: 0, lateness: 0, changes: 0, changeMinutes: 0 },
    stopped: "steps",
    statistics: { ...statistics, bestTotal: total },
  };
}

const rejected: SolveResult = { status: "rejected", violations: [], statistics };
const markOf = (result: SolveResult): string =>
  result.status === "planned" ? (result.plan.lots[0]?.orderId ?? "") : result.status;

describe("searches side by side", () => {
  test("have the given seed and the ones after it; none asked for is one", () => {
    const params = { seed: 40, maxSteps: 10, maxMs: null };
    expect(searchesOf(params, 3).map(({ seed }) => seed)).toEqual([40, 41, 42]);
    expect(searchesOf(params, 0)).toEqual([params]);
  });

  test("the lowest total wins, ties go to the earlier search", () => {
    expect(markOf(bestResult([planned(9, "a"), planned(7, "b"), planned(7, "c")]))).toBe("b");
  });

  test("a plan wins over a refusal; without any plan the first says why", () => {
    expect(markOf(bestResult([rejected, planned(9, "a")]))).toBe("a");
    const faulty: SolveResult = { status: "faulty-problem", faults: [] };
    expect(bestResult([faulty, rejected])).toBe(faulty);
  });

  test("progress adds up the work, takes the slowest share and the best plan", () => {
    const one = { share: 0.5, steps: 10, elapsedMs: 100, bestTotal: 50, lateOrders: 2 };
    const other = { share: 0.4, steps: 7, elapsedMs: 120, bestTotal: 40, lateOrders: 1 };
    expect(mergedProgress([one, other])).toEqual({
      share: 0.4,
      steps: 17,
      elapsedMs: 120,
      bestTotal: 40,
      lateOrders: 1,
    });
    expect(mergedProgress([null, other])).toEqual({ ...other, share: 0 });
    expect(mergedProgress([null, null])).toBeNull();
  });
});
