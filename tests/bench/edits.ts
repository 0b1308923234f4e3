import { writeFileSync } from "node:fs";
import { assembleProblem } from "@formweek/application";
import { generatePlant } from "@formweek/demo-plant";
import {
  openEdits,
  solve,
  type EditTable,
  type Plan,
  type PlanEdit,
  type ProblemData,
} from "@formweek/scheduler";
import { benchClock, type BenchClock } from "./bench-solve.ts";
import { runBench, type BenchOptions } from "./run-bench.ts";

const usage = `npm run bench:edits -- [--lines 10] [--orders 200] [--tries 300] [--seed 1] [--seconds 5] [--clock wall|cpu] [--out <file.json>]
  A made-up plant is planned for so many seconds; then lots are moved to places all over it, and 20 orders put back, each on its own.`;

/** Orders that are left out of the plan, to be put back one by one. */
const LEFT_OUT = 20;

interface Try {
  readonly ms: number;
  readonly done: boolean;
}

function planned(problem: ProblemData, run: { seconds: number; clock: BenchClock; seed: number }): Plan {
  const result = solve(
    problem,
    { seed: run.seed, maxSteps: null, maxMs: run.seconds * 1000 },
    { monotonicMs: benchClock(run.clock), isCancelled: () => false, onProgress: () => undefined },
  );
  if (result.status !== "planned") throw new Error(`The planner's answer is ${result.status}.`);
  return result.plan;
}

/** So many moves, lots and places spread over the plan; each to a line that may make the lot's order. */
function moves({ jobs }: ProblemData, { lots }: Plan, tries: number): PlanEdit[] {
  const linesOf = new Map(
    jobs.map(({ orderId, options }) => [orderId, [...new Set(options.map(({ lineId }) => lineId))]]),
  );
  const spread = <T>(list: readonly T[], i: number): T => list[(i * 7919) % list.length]!;
  return Array.from({ length: tries }, (_, i): PlanEdit => {
    const { orderId, lot } = spread(lots, i);
    const lineId = spread(linesOf.get(orderId)!, i);
    const places = [...lots.filter((each) => each.lineId === lineId), null];
    const next = spread(places, i);
    const before = next === null ? null : { orderId: next.orderId, lot: next.lot };
    return { kind: "move", orderId, lot, lineId, before };
  });
}

function timed(table: EditTable, edits: readonly PlanEdit[], now: () => number): Try[] {
  return edits.map((edit) => {
    const before = now();
    const { ok } = table.apply(edit);
    return { ms: now() - before, done: ok };
  });
}

function opened(problem: ProblemData, plan: Plan): EditTable {
  const table = openEdits(problem, plan);
  if (!table.ok) throw new Error(table.error[0]?.text);
  return table.value;
}

function figuresOf(tries: readonly Try[]) {
  const sorted = tries.map(({ ms }) => ms).sort((a, b) => a - b);
  const at = (share: number): number =>
    sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? Number.NaN;
  const sum = sorted.reduce((total, ms) => total + ms, 0);
  return {
    tries: tries.length,
    done: tries.filter(({ done }) => done).length,
    perSecond: (1000 * tries.length) / sum,
    p50: at(0.5),
    p95: at(0.95),
    most: at(1),
  };
}

function sayFigures({ tries, done, perSecond, p50, p95, most }: ReturnType<typeof figuresOf>): string {
  return `${perSecond.toFixed(0)} tries/s, p50 ${p50.toFixed(1)} ms, p95 ${p95.toFixed(1)} ms, most ${most.toFixed(1)} ms, ${done} of ${tries} done`;
}

const optionNames = ["lines", "orders", "tries", "seed", "seconds", "clock", "out"] as const;

function main(values: BenchOptions<(typeof optionNames)[number]>): void {
  const whole = (text: string | undefined, otherwise: number): number => {
    const value = Number(text ?? otherwise);
    if (!Number.isSafeInteger(value) || value < 1) throw new Error(usage);
    return value;
  };
  const seed = whole(values.seed, 1);
  const size = { lines: whole(values.lines, 10), orders: whole(values.orders, 200), seed };
  const tries = whole(values.tries, 300);
  const seconds = whole(values.seconds, 5);
  const clock = values.clock ?? "wall";
  if (clock !== "wall" && clock !== "cpu") throw new Error(usage);
  const now = benchClock(clock);
  const { problem } = assembleProblem({ ...generatePlant(size), pins: [], now: 0 });
  const plan = planned(problem, { seconds, clock, seed });
  const before = now();
  const table = opened(problem, plan);
  const openMs = now() - before;
  const moving = figuresOf(timed(table, moves(problem, plan, tries), now));
  const orderIds = [...new Set(plan.lots.map(({ orderId }) => orderId))];
  const step = Math.max(1, Math.floor(orderIds.length / LEFT_OUT));
  const out = new Set(orderIds.filter((_, i) => i % step === 0).slice(0, LEFT_OUT));
  const without = opened(problem, { ...plan, lots: plan.lots.filter(({ orderId }) => !out.has(orderId)) });
  const backs = [...out].map((orderId): PlanEdit => ({ kind: "put back", orderId }));
  const putting = figuresOf(timed(without, backs, now));
  console.log(`${size.orders} orders × ${size.lines} lines, opened in ${openMs.toFixed(0)} ms`);
  console.log(`  moves:    ${sayFigures(moving)}`);
  console.log(`  put back: ${sayFigures(putting)}`);
  if (values.out !== undefined)
    writeFileSync(
      values.out,
      `${JSON.stringify({ ...size, tries, seconds, clock, openMs, moving, putting }, null, 1)}\n`,
    );
}

await runBench(usage, optionNames, main);
