import { type Pin, type Plan, type ProblemData, openEdits, solve } from "@formweek/scheduler";
import { describe, expect, test } from "vitest";
import { stillEnv } from "../../../../tests/helpers/still-env.ts";
import { HOUR, jobOf, twoMouldPlant } from "../../../../tests/helpers/two-mould-plant.ts";
import { withPins } from "./frozen-pins.ts";
import { leavesOutFrozen, weighFrozen } from "./weigh-frozen.ts";

/** Four orders of an hour each on line 1, by turns of two moulds. */
const usual = twoMouldPlant({
  jobs: ["a", "b", "c", "d"].map((id, index) =>
    jobOf(id, "1", index % 2 === 0 ? "A" : "B", { dueAt: (index + 1) * HOUR, pieces: 3600 }),
  ),
});

function planned(problem: ProblemData): Plan {
  const result = solve(problem, { seed: 1, maxSteps: 400, maxMs: null }, stillEnv());
  if (result.status !== "planned") throw new Error(JSON.stringify(result));
  return result.plan;
}

const published = planned(usual);
const frozen = published.lots
  .filter(({ start }) => start < 8 * HOUR)
  .map(({ orderId, lineId, start }): Pin => ({ orderId, lineId, startAt: start, sequence: null }));

/** Prices, and weights of orders, at which frozen orders are cheaper left out than made. */
const extremes: readonly (readonly [string, ProblemData])[] = [
  ["leaving out costs nothing", priced({ unplannedPerWeight: 0 })],
  ["leaving out costs next to nothing", priced({ unplannedPerWeight: 1e-3 })],
  ["changes cost a fortune", priced({ changePerMachineHour: 1e9 })],
  ["lateness costs a fortune", priced({ tardinessPerWeightHour: 1e9, lateOrderPerWeight: 1e9 })],
  ["the orders weigh nothing", { ...usual, jobs: usual.jobs.map((job) => ({ ...job, weight: 0 })) }],
];

function priced(prices: Partial<ProblemData["objective"]>): ProblemData {
  return { ...usual, objective: { ...usual.objective, ...prices } };
}

describe("frozen orders at extreme prices", () => {
  test("there are several, and at usual prices none is left out", () => {
    expect(frozen.length).toBeGreaterThan(1);
    expect(leavesOutFrozen(planned(withPins(usual, frozen)), frozen)).toBe(false);
  });

  test.each(extremes)("are left out by the search alone, and kept once they are weighed: %s", (_name, of) => {
    const problem = withPins(of, frozen);
    expect(leavesOutFrozen(planned(problem), frozen)).toBe(true);
    const opened = openEdits(problem, published);
    if (!opened.ok) throw new Error("the published plan cannot be opened");
    const standing = opened.value.plan;
    expect(leavesOutFrozen(standing, frozen)).toBe(false);
    const plan = planned(weighFrozen(problem, standing, frozen));
    expect(leavesOutFrozen(plan, frozen)).toBe(false);
  });
});
