import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { problemArb, SMALL_PLANT } from "../../../../tests/arbitraries/problem.ts";
import { stillEnv } from "../../../../tests/helpers/still-env.ts";
import {
  auditPlan,
  openPromise,
  solve,
  type Job,
  type Plan,
  type ProblemData,
  type PromiseAnswer,
} from "../index.ts";
import { resume } from "../construct/resume.ts";
import { compile } from "../problem/compile.ts";
import { Decoder } from "../timing/decoder.ts";
import { allowedPositions, insertOption, removeAt } from "../timing/sequences.ts";
import { finish } from "../work/work.ts";

type Promised = ReadonlyMap<string, number>;
const NONE: Promised = new Map();

function planOf(problem: ProblemData, maxSteps = 30): Plan {
  const result = solve(problem, { seed: 3, maxSteps, maxMs: null }, stillEnv());
  expect(result.status === "rejected" ? result.violations : result.status).toBe("planned");
  return (result as { plan: Plan }).plan;
}

/** A plan without its last order, and that order to ask for. */
function split(problem: ProblemData): { readonly standing: ProblemData; readonly order: Job } {
  const order = problem.jobs.at(-1)!;
  const jobs = problem.jobs.slice(0, -1);
  return {
    standing: { ...problem, jobs, pins: problem.pins.filter((p) => p.orderId !== order.orderId) },
    order,
  };
}

function finishes(plan: Plan): Map<string, number> {
  const finish = new Map<string, number>();
  for (const lot of plan.lots)
    finish.set(lot.orderId, Math.max(lot.finish, finish.get(lot.orderId) ?? lot.finish));
  return finish;
}

/** By when each planned order must be finished. */
function limits({ jobs }: ProblemData, plan: Plan, promised: Promised): Map<string, number> {
  const dueOf = new Map(jobs.map((job) => [job.orderId, job.dueAt]));
  return new Map(
    [...finishes(plan)].map(([id, finish]) => [id, Math.max(finish, promised.get(id) ?? dueOf.get(id)!)]),
  );
}

/** The earliest finish by trying every place of the order with a whole decode; null where none keeps the limits. */
function byTrial(standing: ProblemData, order: Job, plan: Plan, promised: Promised): number | null {
  const limit = limits(standing, plan, promised);
  const { lots: _, ...whole } = order;
  const problem = compile({ ...standing, jobs: [...standing.jobs, whole] });
  const decoder = new Decoder(problem, false);
  const sequences = finish(resume(decoder, plan));
  const { options, lots, jobs, data, origin } = problem;
  let best: number | null = null;
  for (let option = jobs.firstOption[jobs.count - 1]!; option < options.count; option++) {
    const line = options.line[option]!;
    const { first, last } = allowedPositions(problem, sequences, option);
    for (let position = first; position <= last; position++) {
      insertOption(sequences, line, position, option);
      decoder.decode(sequences);
      removeAt(sequences, line, position);
      const own = options.lot[option]!;
      let keeps = decoder.option[own]! >= 0;
      for (let lot = 0; lot < lots.count; lot++) {
        const { orderId, conditioningSeconds } = data.jobs[lots.job[lot]!]!;
        const by = limit.get(orderId);
        const wasRunning = plan.lots.some((l) => l.orderId === orderId) && sequences.pieces[lot]! > 0;
        if (by === undefined || lot === own || !wasRunning) continue;
        keeps &&= decoder.option[lot]! >= 0 && origin + decoder.end[lot]! + conditioningSeconds <= by;
      }
      const finish = origin + decoder.end[own]! + order.conditioningSeconds;
      if (keeps && (best === null || finish < best)) best = finish;
    }
  }
  return best;
}

/** Null where the plan does not follow from its runs: that may be only where orders found no place. */
function promiseOf(
  standing: ProblemData,
  order: Job,
  promised: Promised = NONE,
): { readonly plan: Plan; readonly answer: PromiseAnswer } | null {
  const plan = planOf(standing);
  const desk = openPromise(standing, plan, promised);
  if (desk.status === "plan-does-not-follow" && plan.unplanned.length > 0) return null;
  if (desk.status !== "open") throw new Error(`The desk is ${desk.status}.`);
  return { plan, answer: desk.promise(order) };
}

const LOOSE = { ...SMALL_PLANT, days: 14, jobs: 7 };
/** Few hours and one line for many orders. */
const TIGHT = { ...SMALL_PLANT, lines: 1, jobs: 6, days: 4, heads: false, sheets: false, services: false };
const promisedArb = fc.dictionary(
  fc.constantFrom("O0", "O1", "O2", "O3"),
  fc.integer({ min: -48, max: 300 }),
);

describe("a promise", () => {
  it("is the earliest of all places tried with a whole decode", () => {
    let given = 0;
    fc.assert(
      fc.property(fc.oneof(problemArb(), problemArb(LOOSE)), promisedArb, (problem, hours) => {
        const { standing, order } = split(problem);
        const promised = new Map(
          Object.entries(hours).map(([id, hour]) => [id, problem.horizon.start + hour * 3600]),
        );
        const asked = promiseOf(standing, order, promised);
        if (asked === null) return;
        const { plan, answer } = asked;
        const best = byTrial(standing, order, plan, promised);
        expect(answer.status === "promised" ? answer.promise.finish : answer.status).toBe(best ?? "refused");
        if (best !== null) given++;
      }),
      { seed: 91, numRuns: 150 },
    );
    expect(given).toBeGreaterThan(50);
  });
  it("can be kept: its plan passes the audit, and every order is finished by its limit", () => {
    fc.assert(
      fc.property(problemArb(LOOSE), (problem) => {
        const { standing, order } = split(problem);
        const asked = promiseOf(standing, order);
        if (asked === null || asked.answer.status !== "promised") return;
        const { promise } = asked.answer;
        const after = promise.plan();
        expect(auditPlan({ ...standing, jobs: [...standing.jobs, order] }, after)).toEqual([]);
        const finish = finishes(after);
        expect(finish.get(order.orderId)).toBe(promise.finish);
        expect(promise.lots).toHaveLength(1);
        const own = promise.lots[0]!;
        for (const [id, by] of limits(standing, asked.plan, NONE))
          expect(finish.get(id)).toBeLessThanOrEqual(by);
        const lot = after.lots.find(({ orderId }) => orderId === order.orderId)!;
        expect(lot).toMatchObject({ lineId: own.lineId, start: own.start, end: own.end });
        for (const change of [own.changeBefore, own.changeAfter])
          if (change !== null) expect(after.segments).toContainEqual(change);
        const before = new Set(asked.plan.lots.map((l) => `${l.orderId} ${l.start} ${l.end}`));
        const moved = after.lots.filter(
          (l) => l.orderId !== order.orderId && !before.has(`${l.orderId} ${l.start} ${l.end}`),
        );
        const names = (runs: readonly { orderId: string; start: number }[]): Set<string> =>
          new Set(runs.map((run) => `${run.orderId} ${run.start}`));
        expect(names(promise.moved)).toEqual(names(moved));
      }),
      { seed: 92, numRuns: 80 },
    );
  });
  it("is refused with reasons for the order alone, or the name of an order that would be late", () => {
    let delays = 0;
    fc.assert(
      fc.property(problemArb(TIGHT), (problem) => {
        const { standing, order } = split(problem);
        const asked = promiseOf(standing, order);
        if (asked === null || asked.answer.status !== "refused") return;
        const { plan, answer } = asked;
        expect(answer.reasons.length).toBeGreaterThan(0);
        for (const reason of answer.reasons) {
          if (reason.code !== "delays-another") continue;
          expect(plan.lots.map((lot) => lot.orderId)).toContain(reason.orderId);
          delays++;
        }
      }),
      { seed: 93, numRuns: 80 },
    );
    expect(delays).toBeGreaterThan(0);
  });
  it("names faults of the order and of the problem", () => {
    const problem = fc.sample(problemArb(), { seed: 5, numRuns: 1 })[0]!;
    const { standing, order } = split(problem);
    const { lots: _, ...whole } = order;
    const desk = openPromise(standing, planOf(standing));
    if (desk.status !== "open") throw new Error(desk.status);
    const codes = (job: Job): unknown => {
      const answer = desk.promise(job);
      return answer.status === "faulty-order" ? answer.faults.map(({ code }) => code) : answer.status;
    };
    expect(codes({ ...whole, pieces: 0 })).toEqual(["pieces"]);
    expect(codes({ ...whole, orderId: standing.jobs[0]!.orderId })).toEqual(["duplicate-order"]);
    expect(codes({ ...whole, options: [] })).toBe("refused");
    const faulty = { ...standing, horizon: { start: 5, end: 5 } };
    expect(openPromise(faulty, planOf(standing)).status).toBe("faulty-problem");
  });
  it("is not given on a plan whose times do not follow from its order of runs", () => {
    const problem = fc
      .sample(problemArb({ ...LOOSE, pins: false }), { seed: 6, numRuns: 20 })
      .find((each) => planOf(each).lots.length > 2)!;
    const plan = planOf(problem);
    const late = plan.lots.reduce((a, b) => (b.start > a.start ? b : a));
    const lots = plan.lots.map((lot) =>
      lot === late ? { ...lot, start: lot.start + 60, end: lot.end + 60 } : lot,
    );
    expect(openPromise(problem, { ...plan, lots })).toEqual({
      status: "plan-does-not-follow",
      orderId: late.orderId,
    });
  });
});
