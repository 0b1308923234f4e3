import { Order } from "@formweek/capacity-model";
import { demoOrders, demoPlant } from "@formweek/demo-plant";
import { auditPlan, solve } from "@formweek/scheduler";
import { describe, expect, it } from "vitest";
import { stillEnv } from "../../../../tests/helpers/still-env.ts";
import { assembleProblem } from "../planning/assemble-problem.ts";
import type { StoredHold } from "../ports/hold-repository.ts";
import { planWithHolds } from "./plan-with-holds.ts";

const plant = demoPlant("calm");
const book = demoOrders("calm").slice(0, 10);
const horizonEnd = Math.max(...book.map(({ dueAt }) => dueAt)) + 7 * 86_400;

const holdOf = (id: string): StoredHold => ({
  id: `hold ${id}`,
  key: id,
  wish: "",
  order: Order.parse({ ...book[0], id, pieces: 30_000, dueAt: horizonEnd, earliestStartAt: null }),
  stockPieces: 0,
  kind: "whole",
  until: 0,
  heldBy: "anna",
  heldAt: 0,
  ending: null,
});

/** A plan of the book with some holds, as a run would find it. */
function madeWith(holds: readonly StoredHold[]) {
  const assembled = assembleProblem({
    plant,
    orders: [...book, ...holds.map(({ order }) => order)],
    stockShares: holds.map(({ order }) => ({ orderId: order.id, pieces: 0 })),
    pins: [],
    now: 0,
  });
  const result = solve(assembled.problem, { seed: 1, maxSteps: 30, maxMs: null }, stillEnv());
  if (result.status !== "planned") throw new Error(result.status);
  const heldOrderIds = new Set(holds.map(({ order }) => order.id as string));
  return { assembled, plan: result.plan, heldOrderIds };
}

describe("a plan whose run began before a hold", () => {
  it("stays as it is where nothing was held or given back meanwhile", () => {
    const made = madeWith([holdOf("H-1")]);
    expect(planWithHolds(made, [holdOf("H-1")])).toEqual({ assembled: made.assembled, plan: made.plan });
  });

  it("gets the new hold in time, loses the ended one, and keeps all rules", () => {
    const made = madeWith([holdOf("H-1")]);
    const { assembled, plan } = planWithHolds(made, [holdOf("H-2")]);
    expect(auditPlan(assembled.problem, plan)).toEqual([]);
    const planned = new Set(plan.lots.map(({ orderId }) => orderId));
    expect([planned.has("H-1"), planned.has("H-2")]).toEqual([false, true]);
    for (const { orderId } of made.plan.lots)
      if (orderId !== "H-1") expect([orderId, planned.has(orderId)]).toEqual([orderId, true]);
    const held = plan.lots.find(({ orderId }) => orderId === "H-2")!;
    expect(held.finish).toBeLessThanOrEqual(horizonEnd);
    expect(assembled.demands.map(({ order }) => order.id)).not.toContain("H-1");
  });
});
