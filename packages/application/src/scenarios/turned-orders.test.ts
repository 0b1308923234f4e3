import type { Plan, PlannedLot } from "@formweek/scheduler";
import { demoOrders, demoPlant } from "@formweek/demo-plant";
import { describe, expect, it } from "vitest";
import { assembleProblem } from "../planning/assemble-problem.ts";
import { turnedOrders } from "./turned-orders.ts";

const orders = demoOrders("calm").slice(0, 5);
const assembled = assembleProblem({ plant: demoPlant("calm"), orders, pins: [], now: 0 });
const [a, b, c, d, e] = assembled.problem.jobs.map(({ orderId }) => orderId) as [
  string,
  string,
  string,
  string,
  string,
];

/** A plan in which orders finish so many seconds after they are due. */
function planOf(late: Readonly<Record<string, number>>): Plan {
  const lots = assembled.problem.jobs
    .filter(({ orderId }) => orderId in late)
    .map(({ orderId, pieces, dueAt }) => ({ orderId, lot: 0, pieces, finish: dueAt + (late[orderId] ?? 0) }));
  return {
    lots: lots as unknown as PlannedLot[],
    segments: [],
    unplanned: [],
    objective: { total: 0, terms: [] },
  };
}

describe("orders that change sides", () => {
  it("are told with both sides, those that get worse first; later by some hours alone is no other side", () => {
    const from = { assembled, plan: planOf({ [a]: 0, [b]: 3600, [c]: 100, [d]: -5 }) };
    const to = { assembled, plan: planOf({ [a]: 60, [b]: 7200, [c]: -1, [e]: 0 }) };
    expect(turnedOrders(from, to)).toEqual([
      { orderId: d, from: "on time", to: "unplanned", fromLateSeconds: 0, toLateSeconds: null },
      { orderId: a, from: "on time", to: "late", fromLateSeconds: 0, toLateSeconds: 60 },
      { orderId: c, from: "late", to: "on time", fromLateSeconds: 100, toLateSeconds: 0 },
      { orderId: e, from: "unplanned", to: "on time", fromLateSeconds: null, toLateSeconds: 0 },
    ]);
    expect(turnedOrders(from, from)).toEqual([]);
  });

  it("are those too that only one of the plans knows", () => {
    const without = assembleProblem({ plant: demoPlant("calm"), orders: orders.slice(1), pins: [], now: 0 });
    const whole = { assembled, plan: planOf({ [a]: 9, [b]: 0, [c]: 0, [d]: 0, [e]: 0 }) };
    const part = { assembled: without, plan: planOf({ [b]: 0, [c]: 0, [d]: 0, [e]: 0 }) };
    const known = orders[0]!.id;
    expect(turnedOrders(whole, part)).toMatchObject([{ orderId: known, to: null, toLateSeconds: null }]);
    expect(turnedOrders(part, whole)).toMatchObject([{ orderId: known, from: null, fromLateSeconds: null }]);
  });
});
