import { writeFileSync } from "node:fs";
import { assembleProblem } from "@formweek/application";
import { generatePlant } from "@formweek/demo-plant";
import { openPromise, solve, type Job, type ProblemData, type PromiseAnswer } from "@formweek/scheduler";
import { benchClock, type BenchClock } from "./bench-solve.ts";
import { runBench, type BenchOptions } from "./run-bench.ts";

const usage = `npm run bench:promise -- [--lines 10] [--orders 200] [--asks 200] [--seed 1] [--seconds 10] [--clock wall|cpu] [--out <file.json>]
  A made-up plant is planned for so many seconds; then orders that were held back are asked for, each on its own.`;

interface Ask {
  readonly ms: number;
  readonly answer: PromiseAnswer;
}

/** So many orders, spread evenly over the book, are held back. */
function heldBack(
  problem: ProblemData,
  asks: number,
): { readonly standing: ProblemData; readonly held: Job[] } {
  const { jobs } = problem;
  const held = new Set(
    Array.from({ length: asks }, (_, i) => jobs[Math.floor(((i + 0.5) * jobs.length) / asks)]!),
  );
  return { standing: { ...problem, jobs: jobs.filter((job) => !held.has(job)) }, held: [...held] };
}

function measure(
  problem: ProblemData,
  held: readonly Job[],
  run: { seconds: number; clock: BenchClock; seed: number },
) {
  const result = solve(
    problem,
    { seed: run.seed, maxSteps: null, maxMs: run.seconds * 1000 },
    { monotonicMs: benchClock(run.clock), isCancelled: () => false, onProgress: () => undefined },
  );
  if (result.status !== "planned") throw new Error(`The planner's answer is ${result.status}.`);
  const now = benchClock(run.clock);
  const opened = now();
  const desk = openPromise(problem, result.plan);
  if (desk.status !== "open") throw new Error(`The desk is ${desk.status}.`);
  const openMs = now() - opened;
  const asks = held.map((order): Ask => {
    const before = now();
    const answer = desk.promise(order);
    return { ms: now() - before, answer };
  });
  const due = new Map(problem.jobs.map((job) => [job.orderId, job.dueAt]));
  const late = result.plan.lots.filter((lot) => lot.finish > (due.get(lot.orderId) ?? 0)).length;
  return { asks, openMs, late };
}

function figuresOf({ asks, openMs, late }: ReturnType<typeof measure>) {
  const sorted = asks.map(({ ms }) => ms).sort((a, b) => a - b);
  const at = (share: number): number =>
    sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))]!;
  const promised = asks.flatMap(({ answer }) => (answer.status === "promised" ? [answer.promise] : []));
  const mean = (values: readonly number[]): number =>
    values.reduce((sum, value) => sum + value, 0) / Math.max(1, values.length);
  return {
    lateInPlan: late,
    openMs,
    p50: at(0.5),
    p95: at(0.95),
    p99: at(0.99),
    most: at(1),
    perSecond: 1000 / mean(sorted),
    promised: promised.length,
    asked: asks.length,
    meanPlaces: mean(promised.map(({ places }) => places)),
    meanDecodes: mean(promised.map(({ decodes }) => decodes)),
  };
}

const optionNames = ["lines", "orders", "asks", "seed", "seconds", "clock", "out"] as const;

function main(values: BenchOptions<(typeof optionNames)[number]>): void {
  const whole = (text: string | undefined, otherwise: number): number => {
    const value = Number(text ?? otherwise);
    if (!Number.isSafeInteger(value) || value < 1) throw new Error(usage);
    return value;
  };
  const size = {
    lines: whole(values.lines, 10),
    orders: whole(values.orders, 200),
    seed: whole(values.seed, 1),
  };
  const asks = whole(values.asks, 200);
  const seconds = whole(values.seconds, 10);
  const clock = values.clock ?? "wall";
  if (clock !== "wall" && clock !== "cpu") throw new Error(usage);
  const { plant, orders } = generatePlant({ ...size, orders: size.orders + asks });
  const { problem } = assembleProblem({ plant, orders, pins: [], now: 0 });
  const { standing, held } = heldBack(problem, asks);
  const figures = figuresOf(measure(standing, held, { seconds, clock, seed: size.seed }));
  const ms = (value: number): string => `${value.toFixed(1)} ms`;
  console.log(
    `${standing.jobs.length} orders × ${size.lines} lines (${figures.lateInPlan} late): p50 ${ms(figures.p50)}, p95 ${ms(figures.p95)}, p99 ${ms(figures.p99)}, most ${ms(figures.most)}, ${figures.perSecond.toFixed(0)} promises/s; ${figures.promised} of ${figures.asked} promised, ${figures.meanPlaces.toFixed(0)} places and ${figures.meanDecodes.toFixed(1)} decodes each; opened in ${ms(figures.openMs)}`,
  );
  if (values.out !== undefined)
    writeFileSync(values.out, `${JSON.stringify({ ...size, asks, seconds, clock, figures }, null, 1)}\n`);
}

await runBench(usage, optionNames, main);
