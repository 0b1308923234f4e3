import { demoOrders, demoPlant } from "@formweek/demo-plant";
import { openEdits, solve } from "@formweek/scheduler";
import { expect, test } from "vitest";
import { stillEnv } from "../../../../tests/helpers/still-env.ts";
import { assembleProblem } from "./assemble-problem.ts";

const plant = demoPlant("calm");
const orders = demoOrders("calm").slice(0, 12);

test("set-ups keep their ids whatever the order of the book, and each has its own", () => {
  const ids = (of: typeof orders) =>
    assembleProblem({ plant, orders: of, pins: [], now: 0 }).problem.setups.map(({ id }) => id);
  const forward = ids(orders);
  expect(new Set(forward).size).toBe(forward.length);
  expect(new Set(ids(orders.toReversed()))).toEqual(new Set(forward));
});

test("a plan stands under a book in another order: every lot where it was", () => {
  const made = assembleProblem({ plant, orders, pins: [], now: 0 }).problem;
  const result = solve(made, { seed: 3, maxSteps: 1, maxMs: null }, stillEnv());
  if (result.status !== "planned") throw new Error(result.status);
  const { problem } = assembleProblem({ plant, orders: orders.toReversed(), pins: [], now: 0 });
  const opened = openEdits(problem, result.plan);
  if (!opened.ok) throw new Error("the problem is faulty");
  const placesOf = (lots: typeof result.plan.lots) =>
    lots
      .map(({ orderId, lot, lineId, start }) => [orderId, lot, lineId, start].join(" "))
      .sort((a, b) => (a < b ? -1 : 1));
  expect(placesOf(opened.value.plan.lots)).toEqual(placesOf(result.plan.lots));
});
