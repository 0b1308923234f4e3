import { writeFileSync } from "node:fs";
import { solve, type Plan } from "@formweek/scheduler";
import { benchClock, type BenchClock } from "./bench-solve.ts";
import {
  changeMinutesOf,
  plantedProblem,
  type PlantedProblem,
  type PlantedSize,
} from "./planted/planted-problem.ts";
import { runBench, type BenchOptions } from "./run-bench.ts";

const usage = `npm run bench:planted -- [--sizes 40x4,200x10,500x20,2000x40] [--seeds 1,2,3,4,5] [--seconds 10] [--clock wall|cpu] [--out <file.json>]
  sizes: orders × lines; seeds: of plant and search; cpu: the budget in processor time`;

interface Row {
  readonly size: string;
  readonly seed: number;
  readonly orders: number;
  /** Share of the orders that are planned and on time. */
  readonly onTime: number;
  readonly changeMinutes: number;
  readonly plantedMinutes: number;
  /** Change minutes over the planted ones. */
  readonly changeRatio: number;
  readonly firstPlanMs: number;
  readonly steps: number;
}

function onTimeShare({ problem }: PlantedProblem, plan: Plan): number {
  const due = new Map(problem.jobs.map((job) => [job.orderId, job.dueAt]));
  const late = new Set(
    plan.lots.filter((lot) => lot.finish > (due.get(lot.orderId) ?? 0)).map((lot) => lot.orderId),
  );
  const planned = new Set(plan.lots.map((lot) => lot.orderId));
  return problem.jobs.length === 0 ? 1 : (planned.size - late.size) / problem.jobs.length;
}

function measure(size: PlantedSize, seconds: number, clock: BenchClock): Row {
  const planted = plantedProblem(size);
  const result = solve(
    planted.problem,
    { seed: size.seed, maxSteps: null, maxMs: seconds * 1000 },
    { monotonicMs: benchClock(clock), isCancelled: () => false, onProgress: () => undefined },
  );
  if (result.status !== "planned") throw new Error(`The planner's answer is ${result.status}.`);
  const changeMinutes = changeMinutesOf(result.plan);
  return {
    size: `${size.orders}x${size.lines}`,
    seed: size.seed,
    orders: planted.problem.jobs.length,
    onTime: onTimeShare(planted, result.plan),
    changeMinutes,
    plantedMinutes: planted.changeMinutes,
    changeRatio: changeMinutes / planted.changeMinutes,
    firstPlanMs: result.statistics.firstPlanMs,
    steps: result.statistics.steps,
  };
}

const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / Math.max(1, values.length);

function say(name: string, rows: readonly Row[]): void {
  const percent = (share: number): string => `${(share * 100).toFixed(2)} %`;
  console.log(
    `${name.padEnd(18)} on time ${percent(mean(rows.map((row) => row.onTime)))}, changes ${percent(mean(rows.map((row) => row.changeRatio)))} of planted (${Math.round(mean(rows.map((row) => row.plantedMinutes)))} min), first plan ${Math.round(mean(rows.map((row) => row.firstPlanMs)))} ms, ${Math.round(mean(rows.map((row) => row.steps)))} steps`,
  );
}

function sizesOf(text: string): readonly { readonly orders: number; readonly lines: number }[] {
  return text.split(",").map((size) => {
    const [orders, lines] = size.split("x").map(Number);
    if (orders === undefined || lines === undefined || !(orders >= 1) || !(lines >= 1))
      throw new Error(usage);
    return { orders, lines };
  });
}

const optionNames = ["sizes", "seeds", "seconds", "clock", "out"] as const;

function main(values: BenchOptions<(typeof optionNames)[number]>): void {
  const seeds = (values.seeds ?? "1,2,3,4,5").split(",").map(Number);
  const seconds = Number(values.seconds ?? 10);
  const clock = values.clock ?? "wall";
  if (!seeds.every(Number.isSafeInteger) || !(seconds > 0) || (clock !== "wall" && clock !== "cpu"))
    throw new Error(usage);
  const rows = sizesOf(values.sizes ?? "40x4,200x10,500x20,2000x40").flatMap((size) => {
    const own = seeds.map((seed) => {
      const row = measure({ ...size, seed }, seconds, clock);
      say(`${row.size} seed ${seed}`, [row]);
      return row;
    });
    say(`${size.orders}x${size.lines} mean`, own);
    return own;
  });
  if (values.out !== undefined)
    writeFileSync(values.out, `${JSON.stringify({ seconds, clock, rows }, null, 1)}\n`);
}

await runBench(usage, optionNames, main);
