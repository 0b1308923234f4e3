import { expect, test } from "vitest";
import { summaryLines } from "./demo-week.ts";

const summary = {
  orders: 94,
  onTime: 70,
  late: 10,
  unplanned: 4,
  coveredByStock: 10,
  tardinessHours: 31,
  worstLateHours: 9,
  changes: 41,
  changeHours: 63.25,
  teamHours: 50,
  utilisation: 0.8126,
  makespanEnd: null,
};

test("the plan in a few lines: orders, on-time share with those from stock, changes, time taken", () => {
  expect(summaryLines({ summary }, 5.04)).toEqual([
    "Planned 94 orders in 5.0 s: 85.1 % on time (10 of them from stock), 10 late, 4 not planned",
    "41 changes take 63.3 h; lines run 81.3 % of their open time",
  ]);
});

test("an empty book is on time", () => {
  const empty = { ...summary, orders: 0, onTime: 0, coveredByStock: 0, late: 0, unplanned: 0 };
  expect(summaryLines({ summary: empty }, 1)[0]).toContain("100.0 % on time");
});
