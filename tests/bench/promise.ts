import { writeFileSync } from "node:fs";
import {
  finishWork,
  usualSpreads,
  type Job,
  type OpenDesk,
  type PromiseAnswer,
  type PromisedOrder,
} from "@formweek/scheduler";
import { benchClock, type BenchClock } from "./bench-solve.ts";
import { hoursBeaten } from "./promises/full-solve.ts";
import { scenarioFigures } from "./promises/scenarios.ts";
import { standingDesk, type StandingKind } from "./promises/standing-plan.ts";
import { runBench, type BenchOptions } from "./run-bench.ts";

const usage = `npm run bench:promise -- [--lines 10] [--orders 200] [--asks 200] [--seed 1] [--plan hidden|solved] [--seconds 10] [--alternatives 20] [--enquiries 0] [--resolve 3] [--runs 100] [--scenarios 0] [--steps 1000] [--clock cpu|wall] [--out <file.json>]
  A planted plant stands as it was laid out, or is planned for so many seconds; then orders that were held back are asked for, each on its own.
  alternatives: how many of them are asked for in two lots, in parts and displacing too; enquiries: how many promises a full solve of so
  many seconds (resolve) tries to beat; runs: plays of the simulation; scenarios: so many of one change each are planned on from the plan of
  a made-up plant, in so many steps`;

interface Ask {
  readonly ms: number;
  readonly order: Job;
  readonly answer: PromiseAnswer;
}

const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / Math.max(1, values.length);

/** Quantiles of times, ms. */
function spreadOf(times: readonly number[]) {
  const sorted = [...times].sort((a, b) => a - b);
  const at = (share: number): number =>
    sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? 0;
  return { p50: at(0.5), p95: at(0.95), p99: at(0.99), most: at(1), perSecond: 1000 / mean(sorted) };
}

function promisesOf(desk: OpenDesk, held: readonly Job[], now: () => number) {
  const asks = held.map((order): Ask => {
    const before = now();
    const answer = desk.promise(order);
    return { ms: now() - before, order, answer };
  });
  const promised = asks.flatMap(({ answer }) => (answer.status === "promised" ? [answer.promise] : []));
  const figures = {
    ...spreadOf(asks.map(({ ms }) => ms)),
    promised: promised.length,
    asked: asks.length,
    meanPlaces: mean(promised.map(({ places }) => places)),
    meanDecodes: mean(promised.map(({ decodes }) => decodes)),
  };
  return { figures, promised };
}

/** Times of the other kinds of answer, and how often there is one. */
function alternativesOf(desk: OpenDesk, orders: readonly Job[], now: () => number) {
  const timed = (kind: string, ask: (order: Job) => { readonly status: string }) => {
    const answers = orders.map((order) => {
      const before = now();
      const { status } = ask(order);
      return { ms: now() - before, status };
    });
    const given = answers.filter(({ status }) => status === "promised").length;
    return { kind, given, asked: orders.length, ...spreadOf(answers.map(({ ms }) => ms)) };
  };
  // by the middle of the run in one lot
  const middles = new Map(
    orders.map((order) => {
      const answer = desk.promise(order);
      const lot = answer.status === "promised" ? answer.promise.lots[0] : undefined;
      return [order, lot === undefined ? order.dueAt : Math.floor(lot.finish - (lot.end - lot.start) / 2)];
    }),
  );
  // every tenth order that stands may give way
  const freed = new Set(desk.problem.jobs.filter((_, j) => j % 10 === 0).map(({ orderId }) => orderId));
  return [
    timed("two lines", (order) => finishWork(desk.splitOverLines(order))),
    timed("first part", (order) => finishWork(desk.firstPart(order, middles.get(order)!))),
    timed("displacing", (order) => desk.displacing(order, freed)),
  ];
}

function simulationOf(desk: OpenDesk, runs: number, now: () => number) {
  const before = now();
  const params = { runs, seed: 1, spreads: usualSpreads(desk.problem) };
  const result = finishWork(desk.simulate(params));
  if (result.status !== "simulated") throw new Error(`The simulation is ${result.status}.`);
  return { runs, perSecond: (1000 * runs) / (now() - before), expectedLate: result.expectedLateOrders };
}

/** So many of the promises, spread evenly. */
function someOf(promised: readonly PromisedOrder[], count: number): readonly PromisedOrder[] {
  const taken = Math.min(count, promised.length);
  return Array.from(
    { length: taken },
    (_, i) => promised[Math.floor(((i + 0.5) * promised.length) / taken)]!,
  );
}

const optionNames = [
  "lines",
  "orders",
  "asks",
  "seed",
  "plan",
  "seconds",
  "alternatives",
  "enquiries",
  "resolve",
  "runs",
  "scenarios",
  "steps",
  "clock",
  "out",
] as const;

type Options = BenchOptions<(typeof optionNames)[number]>;

function whole(text: string | undefined, otherwise: number, least = 1): number {
  const value = Number(text ?? otherwise);
  if (!Number.isSafeInteger(value) || value < least) throw new Error(usage);
  return value;
}

function kindOf({ plan = "hidden", seconds }: Options): StandingKind {
  if (plan !== "hidden" && plan !== "solved") throw new Error(usage);
  return plan === "hidden" ? { kind: "hidden" } : { kind: "solved", seconds: whole(seconds, 10) };
}

function clockOf({ clock = "cpu" }: Options): BenchClock {
  if (clock !== "wall" && clock !== "cpu") throw new Error(usage);
  return clock;
}

function main(values: Options): void {
  const size = {
    lines: whole(values.lines, 10),
    orders: whole(values.orders, 200),
    seed: whole(values.seed, 1),
  };
  const asks = whole(values.asks, 200);
  const seconds = whole(values.resolve, 3);
  const kind = kindOf(values);
  const clock = clockOf(values);
  const now = benchClock(clock);
  const { desk, held, lateInPlan, openMs } = standingDesk(size, asks, kind, clock);
  const ms = (value: number): string => `${value.toFixed(1)} ms`;
  const times = (spread: ReturnType<typeof spreadOf>): string =>
    `p50 ${ms(spread.p50)}, p95 ${ms(spread.p95)}, p99 ${ms(spread.p99)}, most ${ms(spread.most)}`;
  console.log(
    `${desk.problem.jobs.length} orders × ${size.lines} lines, ${kind.kind} (${lateInPlan} late), opened in ${ms(openMs)}`,
  );
  const { figures, promised } = promisesOf(desk, held, now);
  console.log(
    `promise: ${times(figures)}, ${figures.perSecond.toFixed(0)}/s; ${figures.promised} of ${figures.asked} promised, ${figures.meanPlaces.toFixed(0)} places and ${figures.meanDecodes.toFixed(1)} decodes each`,
  );
  const alternatives = alternativesOf(desk, held.slice(0, whole(values.alternatives, 20, 0)), now);
  for (const each of alternatives)
    console.log(`${each.kind}: ${times(each)}; ${each.given} of ${each.asked} given`);
  const simulation = simulationOf(desk, whole(values.runs, 100), now);
  console.log(
    `simulation: ${simulation.perSecond.toFixed(1)} plays/s, ${simulation.expectedLate.toFixed(1)} orders late on average`,
  );
  const scenarios = whole(values.scenarios, 0, 0);
  const thought =
    scenarios === 0
      ? null
      : scenarioFigures(size, { count: scenarios, steps: whole(values.steps, 1000) }, now);
  if (thought !== null)
    console.log(
      `scenarios: ${thought.perMinute.toFixed(1)} a minute with ${thought.steps} steps each (${ms(thought.preparingMs)} to prepare one, ${ms(thought.planningMs)} to plan it)`,
    );
  const beaten = someOf(promised, whole(values.enquiries, 0, 0)).map((promise) =>
    hoursBeaten(desk, promise, { seconds, seed: size.seed, clock }),
  );
  const better = beaten.filter((hours) => hours > 0);
  if (beaten.length > 0)
    console.log(
      `full solve of ${seconds} s: earlier in ${better.length} of ${beaten.length}, by ${mean(better).toFixed(1)} h where it is (${Math.max(0, ...better).toFixed(1)} h at most)`,
    );
  if (values.out === undefined) return;
  const written = {
    ...size,
    asks,
    kind,
    clock,
    lateInPlan,
    openMs,
    figures,
    alternatives,
    simulation,
    scenarios: thought,
    seconds,
    beaten,
  };
  writeFileSync(values.out, `${JSON.stringify(written, null, 1)}\n`);
}

await runBench(usage, optionNames, main);
