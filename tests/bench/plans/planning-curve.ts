import { performance } from "node:perf_hooks";
import { assembleProblem } from "@formweek/application";
import type { Order, Plant } from "@formweek/capacity-model";
import { auditPlan, solve, type SolveProgress } from "@formweek/scheduler";
import type { FigureSheet } from "./figure.ts";

export interface PlanningCase {
  readonly name: string;
  readonly plant: Plant;
  readonly orders: readonly Order[];
}

/** Seconds of search at which the best plan is read. */
const readings = [5, 15, 60];

interface Point {
  readonly seconds: number;
  readonly total: number;
  readonly late: number;
}

/** One search of a plant's order book, read at several moments; then its plan is audited once more on its own. */
export function measurePlanning(
  { name, plant, orders }: PlanningCase,
  most: number,
  sheet: FigureSheet,
): void {
  const add = (figure: string, value: number, unit: string) =>
    sheet.add({ part: name, name: figure, value, unit });
  const assembleStart = performance.now();
  const { problem } = assembleProblem({ plant, orders, pins: [], now: 0 });
  add("assembling the problem", performance.now() - assembleStart, "ms");
  const points: Point[] = [];
  const read = ({ elapsedMs, bestTotal, lateOrders }: SolveProgress) =>
    void points.push({ seconds: elapsedMs / 1000, total: bestTotal, late: lateOrders });
  const result = solve(
    problem,
    { seed: 1, maxSteps: null, maxMs: most * 1000 },
    { monotonicMs: () => performance.now(), isCancelled: () => false, onProgress: read },
  );
  if (result.status === "faulty-problem")
    throw new Error(result.faults.map((fault) => fault.text).join("\n"));
  if (result.status === "cancelled") throw new Error("Cancelled, though nobody asked for it.");
  if (result.status === "rejected")
    throw new Error(result.violations.map((violation) => violation.text).join("\n"));
  const { statistics, plan } = result;
  add("orders to make", problem.jobs.length, "orders");
  add("first valid plan", statistics.firstPlanMs, "ms");
  add("first plan's cost", statistics.firstTotal, "money");
  for (const seconds of readings.filter((moment) => moment < most)) {
    const best = points.filter((point) => point.seconds <= seconds).at(-1);
    add(`cost after ${seconds} s`, best?.total ?? statistics.firstTotal, "money");
    if (best !== undefined) add(`late orders after ${seconds} s`, best.late, "orders");
  }
  const due = new Map(problem.jobs.map((job) => [job.orderId, job.dueAt]));
  add(`cost after ${most} s`, statistics.bestTotal, "money");
  add(
    `late orders after ${most} s`,
    plan.lots.filter((lot) => lot.finish > (due.get(lot.orderId) ?? 0)).length,
    "orders",
  );
  add("unplanned orders", plan.unplanned.length, "orders");
  add("change time", plan.objective.terms.find((term) => term.name === "change time")?.amount ?? 0, "h");
  add("evaluations", (1000 * statistics.evaluations) / statistics.elapsedMs, "1/s");
  add("search steps", (1000 * statistics.steps) / statistics.elapsedMs, "1/s");
  const auditStart = performance.now();
  auditPlan(problem, plan);
  add("auditing the plan", performance.now() - auditStart, "ms");
  add("greatest memory of the process so far", process.resourceUsage().maxRSS / 1024, "MB");
}
