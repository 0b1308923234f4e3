import { describe, expect, it } from "vitest";
import { madePlan } from "../fixtures/made-plan.ts";
import { boardPlan } from "./board-plan.ts";
import { planDifference } from "./plan-difference.ts";

const document = madePlan({ lines: 4, runsPerLine: 9, seed: 4 });
const before = boardPlan("before", document);

describe("planDifference", () => {
  it("finds no order that changes sides in the same plan", () => {
    const same = planDifference(before, before);
    expect([same.newlyLate, same.onTimeAgain]).toEqual([[], []]);
    expect(same.late[0]).toBe(same.late[1]);
  });

  it("names the orders that change sides, the latest first", () => {
    const late = document.orders.filter((order) => order.lateSeconds > 0);
    const onTime = document.orders.filter((order) => order.lateSeconds === 0);
    const [saved] = late;
    const [little, much] = onTime;
    if (saved === undefined || little === undefined || much === undefined) throw new Error("both kinds");
    const orders = document.orders.map((order) => {
      if (order === saved) return { ...order, state: "on time" as const, lateSeconds: 0 };
      if (order === little) return { ...order, state: "late" as const, lateSeconds: 60 };
      return order === much ? { ...order, state: "late" as const, lateSeconds: 7200 } : order;
    });
    const summary = { ...document.summary, late: late.length + 1 };
    const found = planDifference(before, boardPlan("after", { ...document, orders, summary }));
    expect(found.newlyLate).toEqual([
      { orderId: much.orderId, lateSeconds: 7200 },
      { orderId: little.orderId, lateSeconds: 60 },
    ]);
    expect(found.onTimeAgain.map(({ orderId }) => orderId)).toEqual([saved.orderId]);
    expect(found.late).toEqual([late.length, late.length + 1]);
  });
});
