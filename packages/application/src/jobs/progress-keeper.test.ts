import { describe, expect, test } from "vitest";
import type { CurvePoint } from "../ports/run-repository.ts";
import { grown } from "./progress-keeper.ts";

const at = (elapsedMs: number, bestTotal: number) => ({
  share: 0,
  steps: 0,
  lateOrders: 0,
  elapsedMs,
  bestTotal,
});

describe("the improvement curve", () => {
  test("gets a point only when the total got better", () => {
    const reports = [at(10, 500), at(20, 500), at(30, 400), at(40, 450), at(50, 399)];
    const curve = reports.reduce<readonly CurvePoint[]>(grown, []);
    expect(curve).toEqual([
      [10, 500],
      [30, 400],
      [50, 399],
    ]);
  });

  test("stays short, keeps its first and newest point, and only falls", () => {
    let curve: readonly CurvePoint[] = [];
    for (let step = 0; step < 5000; step++) {
      curve = grown(curve, at(step, 10_000 - step));
      expect(curve.length).toBeLessThanOrEqual(400);
      expect(curve.at(-1)).toEqual([step, 10_000 - step]);
    }
    expect(curve[0]).toEqual([0, 10_000]);
    expect(curve.every((point, index) => index === 0 || point[1] < (curve[index - 1]?.[1] ?? 0))).toBe(true);
  });
});
