import { writeFileSync } from "node:fs";
import { assembleProblem } from "@formweek/application";
import { generatePlant } from "@formweek/demo-plant";
import {
  applyEdits,
  holdToPublished,
  movedOrders,
  solve,
  type Plan,
  type ProblemData,
} from "@formweek/scheduler";
import { benchClock } from "./bench-solve.ts";
import { runBench, type BenchOptions } from "./run-bench.ts";

const usage = `npm run bench:replan -- [--lines 10] [--orders 200] [--seeds 1,2,3,4,5] [--seconds 10] [--out <file.json>]
  A plan is published; its busiest line then stands for 8 h, a day and a half into the plan. Budgets in processor time.`;

const HOUR = 3600;
/** A start that shifts by no more than this has not moved, s. */
const TOLERANCE = HOUR / 2;
/** Prices on distance from the published plan: a run on another line, an hour's shift of a start. */
const CALM = { movedLinePerOrder: 60, movedStartPerHour: 6 };

interface Row {
  readonly seed: number;
  readonly orders: number;
  /** Orders that the breakdown does not reach. */
  readonly outside: number;
  readonly movedOutside: number;
  readonly lateBefore: number;
  /** Late orders where the published order of runs is kept and simply comes later. */
  readonly lateWaiting: number;
  readonly lateAfter: number;
  /** The same search without a price on moves. */
  readonly movedOutsideFree: number;
  readonly lateFree: number;
}

function planned(problem: ProblemData, seconds: number, startFrom?: Plan): Plan {
  const from = startFrom === undefined ? {} : { startFrom };
  const budget = seconds > 0 ? { maxSteps: null, maxMs: seconds * 1000 } : { maxSteps: 0, maxMs: null };
  const env = { monotonicMs: benchClock("cpu"), isCancelled: () => false, onProgress: () => undefined };
  const result = solve(problem, { seed: 1, ...budget, ...from }, env);
  if (result.status !== "planned") throw new Error(`The planner's answer is ${result.status}.`);
  return result.plan;
}

function lateOrders(problem: ProblemData, plan: Plan): number {
  const due = new Map(problem.jobs.map((job) => [job.orderId, job.dueAt]));
  return new Set(
    plan.lots.filter((lot) => lot.finish > (due.get(lot.orderId) ?? 0)).map((lot) => lot.orderId),
  ).size;
}

function busiestLine(plan: Plan): string {
  const hours = new Map<string, number>();
  for (const lot of plan.lots) hours.set(lot.lineId, (hours.get(lot.lineId) ?? 0) + lot.end - lot.start);
  return [...hours].sort((a, b) => b[1] - a[1] || (a[0] < b[0] ? -1 : 1))[0]?.[0] ?? "";
}

/** Orders on the broken line that end after the breakdown begins, and later users of the moulds that those runs need. */
function reach(problem: ProblemData, plan: Plan, lineId: string, from: number): ReadonlySet<string> {
  const mouldOf = new Map(problem.setups.map((setup) => [setup.id, setup.mouldId]));
  const hit = plan.lots.filter((lot) => lot.lineId === lineId && lot.end > from);
  const moulds = new Set(hit.map((lot) => mouldOf.get(lot.setupId)));
  const later = plan.lots.filter((lot) => lot.start >= from && moulds.has(mouldOf.get(lot.setupId)));
  return new Set([...hit, ...later].map((lot) => lot.orderId));
}

function measure(
  size: { readonly lines: number; readonly orders: number },
  seed: number,
  seconds: number,
): Row {
  const { plant, orders } = generatePlant({ ...size, seed });
  const { problem } = assembleProblem({ plant, orders, pins: [], now: 0 });
  const published = planned(problem, seconds);
  const lineId = busiestLine(published);
  const from = problem.horizon.start + 36 * HOUR;
  const edited = applyEdits(problem, [{ kind: "line down", lineId, from, to: from + 8 * HOUR }]);
  if (!edited.ok) throw new Error(edited.fault.text);
  const held = holdToPublished(edited.problem, published, { ...CALM, frozenUntil: from });
  const free = holdToPublished(edited.problem, published, {
    movedLinePerOrder: 0,
    movedStartPerHour: 0,
    frozenUntil: from,
  });
  const waiting = planned(held, 0, published);
  const calm = planned(held, seconds, published);
  const loose = planned(free, seconds, published);
  const reached = reach(problem, published, lineId, from);
  const outside = problem.jobs.filter((job) => !reached.has(job.orderId)).length;
  const movedOutside = (plan: Plan): number =>
    movedOrders(published, plan, TOLERANCE).filter((order) => !reached.has(order.orderId)).length;
  return {
    seed,
    orders: problem.jobs.length,
    outside,
    movedOutside: movedOutside(calm),
    lateBefore: lateOrders(problem, published),
    lateWaiting: lateOrders(problem, waiting),
    lateAfter: lateOrders(problem, calm),
    movedOutsideFree: movedOutside(loose),
    lateFree: lateOrders(problem, loose),
  };
}

function say(row: Row): void {
  const share = (count: number): string => `${((100 * count) / Math.max(1, row.outside)).toFixed(1)} %`;
  console.log(
    `seed ${row.seed}: ${row.orders} orders, ${row.outside} out of reach; moved of those ${share(row.movedOutside)} (without a price on moves ${share(row.movedOutsideFree)}); late ${row.lateBefore} before, ${row.lateWaiting} by waiting, ${row.lateAfter} planned anew (${row.lateFree} without the price)`,
  );
}

const optionNames = ["lines", "orders", "seeds", "seconds", "out"] as const;

function main(values: BenchOptions<(typeof optionNames)[number]>): void {
  const size = { lines: Number(values.lines ?? 10), orders: Number(values.orders ?? 200) };
  const seconds = Number(values.seconds ?? 10);
  const seeds = (values.seeds ?? "1,2,3,4,5").split(",").map(Number);
  if (!(size.lines >= 1) || !(size.orders >= 1) || !(seconds > 0) || !seeds.every(Number.isSafeInteger))
    throw new Error(usage);
  const rows = seeds.map((seed) => {
    const row = measure(size, seed, seconds);
    say(row);
    return row;
  });
  const moved = rows.reduce((sum, row) => sum + row.movedOutside, 0);
  const outside = rows.reduce((sum, row) => sum + row.outside, 0);
  console.log(
    `in all ${((100 * moved) / Math.max(1, outside)).toFixed(1)} % of the orders out of reach moved`,
  );
  if (values.out !== undefined)
    writeFileSync(values.out, `${JSON.stringify({ ...size, seconds, rows }, null, 1)}\n`);
}

await runBench(usage, optionNames, main);
