import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { workingTimeOf } from "@formweek/capacity-model";
import { problemArb } from "../../../../tests/arbitraries/problem.ts";
import { stillEnv } from "../../../../tests/helpers/still-env.ts";
import { DAY, HOUR, jobOf, lineOf, twoMouldPlant } from "../../../../tests/helpers/two-mould-plant.ts";
import {
  finishWork,
  finishWorkUnless,
  openPromise,
  simulatePlan,
  solve,
  usualSpreads,
  type Job,
  type LineFailures,
  type Plan,
  type ProblemData,
  type SimulatedOrder,
  type Simulation,
  type SimulationParams,
  type Spreads,
} from "../index.ts";

const RUNS = 4000;
/** About one seed in 150,000 lies outside so many standard deviations. */
const DEVIATIONS = 4.5;
const CALM: Spreads = { failures: new Map(), failuresInRates: false, runVariation: 0, changeVariation: 0 };

function planOf(problem: ProblemData): Plan {
  const result = solve(problem, { seed: 3, maxSteps: 30, maxMs: null }, stillEnv());
  if (result.status !== "planned") throw new Error(result.status);
  return result.plan;
}

/** A plant of two lines that are always open, for a year. */
function longPlant(jobs: readonly Job[], part: Partial<ProblemData> = {}): ProblemData {
  const workingTime = workingTimeOf([[0, 365 * DAY]]);
  return twoMouldPlant({
    horizon: { start: 0, end: 365 * DAY },
    lines: [lineOf("1", { workingTime }), lineOf("2", { workingTime })],
    teams: [{ id: "setters", workingTime }],
    jobs: jobs.map((job) => ({ ...job, dueAt: 365 * DAY })),
    ...part,
  });
}

function played(
  problem: ProblemData,
  spreads: Partial<Spreads>,
  part: Partial<SimulationParams> = {},
): Simulation {
  const params = { runs: RUNS, seed: 1, spreads: { ...CALM, ...spreads }, ...part };
  const result = finishWork(simulatePlan(problem, planOf(problem), params));
  if (result.status !== "simulated") throw new Error(result.status);
  return result;
}

function orderIn({ orders }: Simulation, id: string): SimulatedOrder {
  return orders.find(({ orderId }) => orderId === id)!;
}

const failing = (failures: LineFailures): Partial<Spreads> => ({ failures: new Map([["1", failures]]) });
const bandOf = (share: number): number => DEVIATIONS * Math.sqrt((share * (1 - share)) / RUNS);
const gap = (a: number, b: number): number => Math.abs(a - b);

/** Chance that repairs during so much running take up to so long: a Poisson number of exponential repairs, so a mixture of Erlang distributions. */
function repairsUpTo(
  seconds: number,
  running: number,
  { meanBetweenSeconds, meanRepairSeconds }: LineFailures,
): number {
  const rate = running / meanBetweenSeconds;
  const x = seconds / meanRepairSeconds;
  let poisson = Math.exp(-rate);
  let sum = poisson;
  // P(Erlang(n) > x) is the chance of fewer than n Poisson events at rate x
  let term = Math.exp(-x);
  let tail = 0;
  for (let n = 1; n < 200; n++) {
    tail += term;
    term *= x / n;
    poisson *= rate / n;
    sum += poisson * (1 - tail);
  }
  return sum;
}

describe("a plan played many times", () => {
  const RUN = 100 * HOUR;
  const failures: LineFailures = { meanBetweenSeconds: 5 * HOUR, meanRepairSeconds: HOUR };
  const doubled: LineFailures = { ...failures, meanRepairSeconds: 2 * HOUR };
  const alone = longPlant([jobOf("a", "1", "bare", { pieces: RUN })]);

  it("takes running time over availability on average, MTBF / (MTBF + MTTR) (renewal theory: Ross, Introduction to Probability Models, from memory)", () => {
    const { meanFinish, unfinished } = orderIn(played(alone, failing(failures)), "a");
    const availability = (of: LineFailures): number =>
      of.meanBetweenSeconds / (of.meanBetweenSeconds + of.meanRepairSeconds);
    // variance of a compound Poisson sum: rate × second moment, 2 × MTTR² for exponential repairs (Ross, from memory)
    const deviation = Math.sqrt((RUN / failures.meanBetweenSeconds) * 2 * failures.meanRepairSeconds ** 2);
    const band = (DEVIATIONS * deviation) / Math.sqrt(RUNS);
    expect(unfinished).toBe(0);
    expect(gap(meanFinish!, RUN / availability(failures))).toBeLessThan(band);
    expect(gap(meanFinish!, RUN / availability(doubled))).toBeGreaterThan(band);
  });

  it("spreads as a compound Poisson sum of exponential repairs", () => {
    const order = orderIn(played(alone, failing(failures)), "a");
    for (const [share, finish] of [
      [0.5, order.finish50],
      [0.8, order.finish80],
      [0.95, order.finish95],
    ] as const) {
      expect(gap(repairsUpTo(finish! - RUN, RUN, failures), share)).toBeLessThan(bandOf(share));
      expect(gap(repairsUpTo(finish! - RUN, RUN, doubled), share)).toBeGreaterThan(bandOf(share));
    }
  });

  it("runs through without a failure by the chance exp(-t / MTBF)", () => {
    const short = longPlant([jobOf("a", "1", "bare", { pieces: 3 * HOUR })]);
    const share = Math.exp(-3 / 5);
    const chance = played(short, failing(failures)).chanceBy("a", 3 * HOUR)!;
    expect(gap(chance, share)).toBeLessThan(bandOf(share));
    expect(gap(chance, Math.exp(-3 / 10))).toBeGreaterThan(bandOf(share));
  });

  it("takes as long as planned on average where the rates allow for failures already", () => {
    const { meanFinish } = orderIn(played(alone, { ...failing(failures), failuresInRates: true }), "a");
    const running = (RUN * 5) / 6;
    const deviation = Math.sqrt(
      (running / failures.meanBetweenSeconds) * 2 * failures.meanRepairSeconds ** 2,
    );
    const band = (DEVIATIONS * deviation) / Math.sqrt(RUNS);
    expect(gap(meanFinish!, RUN)).toBeLessThan(band);
    expect(gap(meanFinish!, (RUN * 6) / 5)).toBeGreaterThan(band);
  });

  it("has lognormal runs and changes with the planned ones as means", () => {
    const cv = 0.5;
    const sigma = Math.sqrt(Math.log(1 + cv * cv));
    const quantile = (z: number): number => Math.exp(sigma * z - sigma ** 2 / 2);
    const runs = played(alone, { runVariation: cv });
    // mounting 2 h and tail 1 h, then an hour of running that does not vary
    const change = longPlant([jobOf("a", "1", "A")]);
    const changes = played(change, { changeVariation: cv });
    for (const [simulation, varying, fixed] of [
      [runs, RUN, 0],
      [changes, 3 * HOUR, HOUR],
    ] as const) {
      const { meanFinish } = orderIn(simulation, "a");
      const band = (DEVIATIONS * cv * varying) / Math.sqrt(RUNS);
      expect(gap(meanFinish!, varying + fixed)).toBeLessThan(band);
      // a lognormal whose median is the planned time would be longer by exp(sigma² / 2)
      expect(gap(meanFinish!, varying * Math.exp(sigma ** 2 / 2) + fixed)).toBeGreaterThan(band);
      for (const [share, z] of [
        [0.5, 0],
        [0.8, 0.8416],
        [0.95, 1.6449],
      ] as const)
        expect(gap(simulation.chanceBy("a", varying * quantile(z) + fixed)!, share)).toBeLessThan(
          bandOf(share),
        );
    }
  });

  it("hands the delay of one line on to the next that waits for its mould", () => {
    // planned: mount 2 h, tail 1 h, run 100 h on line 1; then the mould out 1 h, carried, mounted and run on line 2, which never fails
    const problem = longPlant([
      jobOf("first", "1", "A", { pieces: RUN }),
      jobOf("second", "2", "A", { earliestStartAt: HOUR }),
    ]);
    const simulation = played(problem, failing(failures));
    const [first, second] = ["first", "second"].map((id) => orderIn(simulation, id)) as [
      SimulatedOrder,
      SimulatedOrder,
    ];
    expect(second.plannedFinish).toBeGreaterThan(first.plannedFinish);
    expect(second.meanFinish! - second.plannedFinish).toBeCloseTo(first.meanFinish! - first.plannedFinish, 6);
    expect(first.meanFinish! - first.plannedFinish).toBeGreaterThan(15 * HOUR);
  });

  it("begins as soon as it may, but not before a pinned start, and makes late what it would not have planned late", () => {
    const problem = longPlant(
      [
        jobOf("a", "1", "bare", { pieces: 2 * HOUR }),
        jobOf("pinned", "1", "bare", { latestStartAt: 6 * HOUR }),
        jobOf("next", "1", "bare"),
      ],
      { pins: [{ orderId: "pinned", lineId: "1", startAt: 3 * HOUR, sequence: null }] },
    );
    const simulation = played(problem, {
      ...failing({ meanBetweenSeconds: HOUR, meanRepairSeconds: 2 * HOUR }),
      runVariation: 0.4,
    });
    expect(simulation.chanceBy("pinned", 3 * HOUR)).toBe(0);
    for (const { unfinished } of simulation.orders) expect(unfinished).toBe(0);
    // 3 h of running are 3 failures of 2 h on average: often past the latest start
    expect(orderIn(simulation, "pinned").finish95).toBeGreaterThan(7 * HOUR);
    // half of the plays have a shorter run than planned of whatever comes first
    const first = simulation.orders.reduce((a, b) => (a.plannedFinish < b.plannedFinish ? a : b));
    expect(simulation.chanceBy(first.orderId, first.plannedFinish - 1)).toBeGreaterThan(0);
  });

  it("says what is not finished in the horizon", () => {
    const tight = longPlant([jobOf("a", "1", "bare", { pieces: RUN })], {
      horizon: { start: 0, end: RUN + 5 * HOUR },
    });
    const order = orderIn(played(tight, failing(failures)), "a");
    const share = 1 - repairsUpTo(5 * HOUR, RUN, failures);
    expect(gap(order.unfinished, share)).toBeLessThan(bandOf(share));
    expect(order.finish95).toBeNull();
    expect(order.meanFinish!).toBeLessThanOrEqual(RUN + 5 * HOUR);
  });

  it("is the plan itself in every play where nothing varies, under all rules", () => {
    let orders = 0;
    fc.assert(
      fc.property(problemArb(), (problem) => {
        const plan = planOf(problem);
        const result = finishWork(simulatePlan(problem, plan, { runs: 3, seed: 1, spreads: CALM }));
        if (result.status === "plan-does-not-follow" && plan.unplanned.length > 0) return;
        if (result.status !== "simulated") throw new Error(result.status);
        const dueOf = new Map(problem.jobs.map((job) => [job.orderId, job.dueAt]));
        const last = new Map<string, number>();
        for (const { orderId, finish } of plan.lots)
          last.set(orderId, Math.max(finish, last.get(orderId) ?? finish));
        expect(new Set(result.orders.map(({ orderId }) => orderId))).toEqual(new Set(last.keys()));
        let late = 0;
        for (const order of result.orders) {
          orders++;
          const finish = last.get(order.orderId)!;
          const by = dueOf.get(order.orderId)!;
          const inTime = finish <= by ? 1 : 0;
          late += 1 - inTime;
          const always = { finish50: finish, finish80: finish, finish95: finish, meanFinish: finish };
          expect(order).toEqual({
            orderId: order.orderId,
            by,
            plannedFinish: finish,
            inTime,
            unfinished: 0,
            ...always,
          });
        }
        expect(result.expectedLateOrders).toBe(late);
      }),
      { seed: 104, numRuns: 150 },
    );
    expect(orders).toBeGreaterThan(300);
  });

  it("is the same for a seed, however it is sliced, and can be given up", () => {
    const problem = longPlant([jobOf("a", "1", "A", { pieces: RUN }), jobOf("b", "2", "A")]);
    const plan = planOf(problem);
    const params = { runs: 50, seed: 9, spreads: usualSpreads(problem) };
    const whole = finishWork(simulatePlan(problem, plan, params));
    const done: number[] = [];
    let pauses = 0;
    const sliced = finishWorkUnless(
      () => ++pauses < 0,
      simulatePlan(problem, plan, { ...params, onRun: (run) => done.push(run) }),
    );
    if (whole.status !== "simulated" || sliced?.status !== "simulated") throw new Error("not simulated");
    expect(sliced.orders).toEqual(whole.orders);
    expect(done).toEqual(Array.from({ length: 50 }, (_, i) => i + 1));
    expect(pauses).toBeGreaterThan(50);
    const other = finishWork(simulatePlan(problem, plan, { ...params, seed: 10 }));
    expect(other.status === "simulated" && other.orders).not.toEqual(whole.orders);
    let asked = 0;
    expect(finishWorkUnless(() => ++asked > 20, simulatePlan(problem, plan, params))).toBeNull();
  });

  it("names wishes that make no sense, faulty problems and plans that do not follow", () => {
    const plan = planOf(alone);
    const ask = (part: Partial<SimulationParams>, spreads: Partial<Spreads> = {}): unknown => {
      const params = { runs: 5, seed: 1, spreads: { ...CALM, ...spreads }, ...part };
      const result = finishWork(simulatePlan(alone, plan, params));
      return "faults" in result
        ? result.faults.map(({ code, subject }) => `${code} ${subject}`)
        : result.status;
    };
    expect(ask({ runs: 0, seed: 0.5 })).toEqual(["runs runs", "seed seed"]);
    expect(ask({}, { runVariation: -1, changeVariation: Number.NaN })).toEqual([
      "variation runVariation",
      "variation changeVariation",
    ]);
    const lines = new Map([
      ["1", { meanBetweenSeconds: 0, meanRepairSeconds: 1 }],
      ["9", failures],
    ]);
    expect(ask({}, { failures: lines })).toEqual(["line-failures 1", "unknown-line 9"]);
    const params = { runs: 5, seed: 1, spreads: CALM };
    const faulty = { ...alone, horizon: { start: 5, end: 5 } };
    expect(finishWork(simulatePlan(faulty, plan, params))).toMatchObject({ status: "faulty-problem" });
    const lots = plan.lots.map((lot) => ({ ...lot, start: lot.start + 60, end: lot.end + 60 }));
    expect(finishWork(simulatePlan(alone, { ...plan, lots }, params))).toEqual({
      status: "plan-does-not-follow",
      orderId: "a",
    });
  });
});

describe("how sure a promise is", () => {
  it("is the chance to be in time on the desk on which it is held, and the days for more", () => {
    const problem = longPlant([]);
    const desk = openPromise(problem, planOf(problem));
    if (desk.status !== "open") throw new Error(desk.status);
    const answer = desk.promise(jobOf("new", "1", "bare", { pieces: 4 * HOUR, dueAt: 0 }));
    if (answer.status !== "promised") throw new Error(answer.status);
    const failures: LineFailures = { meanBetweenSeconds: 8 * HOUR, meanRepairSeconds: HOUR };
    const params = { runs: RUNS, seed: 2, spreads: { ...CALM, ...failing(failures) } };
    const sureness = (by?: number): SimulatedOrder => {
      const result = finishWork(answer.promise.hold(by).simulate(params));
      if (result.status !== "simulated") throw new Error(result.status);
      return orderIn(result, "new");
    };
    const none = Math.exp(-4 / 8);
    expect(gap(sureness().inTime, none)).toBeLessThan(bandOf(none));
    const later = sureness(6 * HOUR);
    const share = repairsUpTo(2 * HOUR, 4 * HOUR, failures);
    expect(gap(later.inTime, share)).toBeLessThan(bandOf(share));
    expect(gap(repairsUpTo(later.finish95! - 4 * HOUR, 4 * HOUR, failures), 0.95)).toBeLessThan(bandOf(0.95));
    expect(finishWork(desk.simulate({ ...params, runs: 0 }))).toMatchObject({ status: "faulty-simulation" });
  });
});
