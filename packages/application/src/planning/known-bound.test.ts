import { demoOrders, demoPlant } from "@formweek/demo-plant";
import { boundOf, type Pin } from "@formweek/scheduler";
import { describe, expect, test } from "vitest";
import { applyHours } from "./apply-hours.ts";
import { assembleProblem, type PlanningInput } from "./assemble-problem.ts";
import type { Assembled } from "./assembled.ts";
import { withPins } from "./frozen-pins.ts";
import { knownBound } from "./known-bound.ts";

const plant = demoPlant("calm");
const orders = demoOrders("calm");
const input: PlanningInput = { plant, orders, pins: [], now: 0 };
const [first, second] = orders;
const [line] = plant.lines;
if (first === undefined || second === undefined || line === undefined) throw new Error("the demo is empty");
const [job] = assembleProblem(input).problem.jobs;

const frozen = (pin: Partial<Pin>): Assembled => {
  const made = assembleProblem(input);
  const nowhere = { lineId: null, startAt: null, sequence: null };
  return { ...made, problem: withPins(made.problem, [{ orderId: job?.orderId ?? "", ...nowhere, ...pin }]) };
};

const closed = applyHours(plant, {
  kind: "close line",
  closure: { lineId: line.id, from: "2026-12-01T06:00", to: "2026-12-03T22:00", reason: "Repair" },
});
const dueAtOnce = { ...first, dueAt: assembleProblem(input).problem.horizon.start, weight: 9 };

describe("a bound that is known", () => {
  test("is not worked out again for the same inputs, however often they are put together", () => {
    const bound = knownBound(assembleProblem(input));
    expect(knownBound(assembleProblem({ ...input, orders: [...orders] }))).toBe(bound);
    expect(bound).toEqual(boundOf(assembleProblem(input).problem));
  });

  test.each<[string, Assembled]>([
    ["hours", assembleProblem({ ...input, plant: closed })],
    ["an order's due time", assembleProblem({ ...input, orders: [dueAtOnce, ...orders.slice(1)] })],
    ["an order less", assembleProblem({ ...input, orders: orders.slice(1) })],
    [
      "prices",
      assembleProblem({
        ...input,
        plant: {
          ...plant,
          prices: { ...plant.prices, unplannedPerWeight: plant.prices.unplannedPerWeight + 1 },
        },
      }),
    ],
    [
      "a held order",
      assembleProblem({
        ...input,
        pins: [{ orderId: second.id, lineId: null, startAt: 4_000_000_000, sequence: null }],
      }),
    ],
    [
      "the start of planning",
      assembleProblem({ ...input, plant: { ...plant, planFrom: "2026-12-02T06:00" } }),
    ],
    ["a frozen run", frozen({ startAt: assembleProblem(input).problem.horizon.start + 6 * 86_400 })],
  ])("is not kept over a change of %s", (_, changed) => {
    const before = knownBound(assembleProblem(input));
    const bound = knownBound(changed);
    expect(bound).not.toBe(before);
    expect(bound).toEqual(boundOf(changed.problem));
  });

  test("some of these changes change the bound, so that an old one would be wrong", () => {
    const before = knownBound(assembleProblem(input)).total;
    const later = knownBound(assembleProblem({ ...input, orders: [dueAtOnce, ...orders.slice(1)] })).total;
    expect(later).toBeGreaterThan(before);
  });

  test("is not that of another day, where planning starts now", () => {
    const today = { ...input, plant: { ...plant, planFrom: null }, now: 1_796_100_000 };
    const tomorrow = { ...today, now: today.now + 86_400 };
    expect(knownBound(assembleProblem(tomorrow))).not.toBe(knownBound(assembleProblem(today)));
    expect(knownBound(assembleProblem(tomorrow))).toEqual(boundOf(assembleProblem(tomorrow).problem));
  });

  test("is forgotten once many others were asked for", () => {
    const bound = knownBound(assembleProblem(input));
    for (let fewer = 1; fewer <= 8; fewer++)
      knownBound(assembleProblem({ ...input, orders: orders.slice(fewer) }));
    const again = knownBound(assembleProblem(input));
    expect(again).toEqual(bound);
    expect(again).not.toBe(bound);
  });
});
