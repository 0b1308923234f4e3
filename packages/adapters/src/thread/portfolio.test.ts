import { describe, expect, test } from "vitest";
import { membersByThread, mergedProgress } from "./portfolio.ts";

describe("members of a portfolio in threads", () => {
  test("are dealt in turn, every member once and no thread without one", () => {
    const params = { seed: 40, maxSteps: 10, maxMs: null };
    expect(membersByThread({ ...params, members: 5 }, 2)).toEqual([
      [0, 2, 4],
      [1, 3],
    ]);
    expect(membersByThread({ ...params, members: 2 }, 4)).toEqual([[0], [1]]);
    expect(membersByThread(params, 0)).toEqual([[0]]);
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
