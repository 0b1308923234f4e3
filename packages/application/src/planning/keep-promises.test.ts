import { type ProblemData, solve } from "@formweek/scheduler";
import { describe, expect, test } from "vitest";
import { stillEnv } from "../../../../tests/helpers/still-env.ts";
import { HOUR, jobOf, twoMouldPlant } from "../../../../tests/helpers/two-mould-plant.ts";
import { keepPromises } from "./keep-promises.ts";

/** Three hours for each of two orders on one line, of which the first to run alone can be in time. */
const problem = twoMouldPlant({
  jobs: [
    jobOf("booked", "1", "A", { dueAt: 4 * HOUR, pieces: 3 * 3600, weight: 2 }),
    jobOf("held", "1", "A", { dueAt: 4 * HOUR, pieces: 3 * 3600, weight: 1 }),
  ],
});

function firstOf(of: ProblemData): string | undefined {
  const result = solve(of, { seed: 1, maxSteps: 200, maxMs: null }, stillEnv());
  if (result.status !== "planned") throw new Error(JSON.stringify(result));
  return result.plan.lots.toSorted((a, b) => a.start - b.start)[0]?.orderId;
}

describe("orders that are held for customers", () => {
  test("go before others of their weight, and of twice it", () => {
    expect(firstOf(problem)).toBe("booked");
    expect(firstOf(keepPromises(problem, new Set(["held"])))).toBe("held");
  });

  test("leave the problem as it is where nothing is held", () => {
    expect(keepPromises(problem, new Set())).toBe(problem);
    expect(keepPromises(problem, new Set(["covered by stock"]))).toBe(problem);
  });
});
