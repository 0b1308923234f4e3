import { writeFileSync } from "node:fs";
import { solve, type Plan, type ProblemData, type SolveResult } from "@formweek/scheduler";
import { benchClock, solveInThreads, type BenchClock } from "./bench-solve.ts";
import {
  changeMinutesOf,
  plantedProblem,
  type PlantedProblem,
  type PlantedSize,
} from "./planted/planted-problem.ts";
import { runBench, type BenchOptions } from "./run-bench.ts";

const usage = `npm run bench:planted -- [--sizes 40x4,200x10,500x20,2000x40] [--seeds 1,2,3,4,5] [--seconds 10] [--threads 1] [--clock wall|cpu] [--out <file.json>]
  sizes: orders × lines; seeds: of plant and search; threads: a portfolio of that many searches, each in its thread;
  cpu: the budget in processor time, with one thread only`;

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

interface Budget {
  readonly seconds: number;
  readonly threads: number;
  readonly clock: BenchClock;
}

async function solved(problem: ProblemData, seed: number, budget: Budget): Promise<SolveResult> {
  const params = { seed, maxSteps: null, maxMs: budget.seconds * 1000 };
  if (budget.threads > 1) return solveInThreads(problem, params, budget.threads);
  const monotonicMs = benchClock(budget.clock);
  return solve(problem, params, { monotonicMs, isCancelled: () => false, onProgress: () => undefined });
}

async function measure(size: PlantedSize, budget: Budget): Promise<Row> {
  const planted = plantedProblem(size);
  const result = await solved(planted.problem, size.seed, budget);
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

async function measureAll(
  sizes: readonly { readonly orders: number; readonly lines: number }[],
  seeds: readonly number[],
  budget: Budget,
): Promise<readonly Row[]> {
  const rows: Row[] = [];
  for (const size of sizes) {
    const own: Row[] = [];
    for (const seed of seeds) {
      const row = await measure({ ...size, seed }, budget);
      say(`${row.size} seed ${seed}`, [row]);
      own.push(row);
    }
    say(`${size.orders}x${size.lines} mean`, own);
    rows.push(...own);
  }
  return rows;
}

const optionNames = ["sizes", "seeds", "seconds", "threads", "clock", "out"] as const;

async function main(values: BenchOptions<(typeof optionNames)[number]>): Promise<void> {
  const seeds = (values.seeds ?? "1,2,3,4,5").split(",").map(Number);
  const seconds = Number(values.seconds ?? 10);
  const clock = values.clock ?? "wall";
  const threads = Number(values.threads ?? 1);
  if (!seeds.every(Number.isSafeInteger) || !(seconds > 0) || !Number.isSafeInteger(threads) || threads < 1)
    throw new Error(usage);
  if (clock !== "wall" && (clock !== "cpu" || threads > 1)) throw new Error(usage);
  const sizes = sizesOf(values.sizes ?? "40x4,200x10,500x20,2000x40");
  const rows = await measureAll(sizes, seeds, { seconds, threads, clock });
  if (values.out !== undefined)
    writeFileSync(values.out, `${JSON.stringify({ seconds, threads, clock, rows }, null, 1)}\n`);
}

await runBench(usage, optionNames, main);
