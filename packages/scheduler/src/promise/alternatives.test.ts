import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { problemArb, SMALL_PLANT } from "../../../../tests/arbitraries/problem.ts";
import { stillEnv } from "../../../../tests/helpers/still-env.ts";
import { HOUR, jobOf, lineOf, twoMouldPlant } from "../../../../tests/helpers/two-mould-plant.ts";
import {
  auditPlan,
  openPromise,
  solve,
  type Job,
  type OpenDesk,
  type Plan,
  type ProblemData,
  type PromisedOrder,
} from "../index.ts";
import { finish } from "../work/work.ts";

const LOOSE = { ...SMALL_PLANT, days: 14, jobs: 7 };

function planOf(problem: ProblemData): Plan {
  const result = solve(problem, { seed: 3, maxSteps: 30, maxMs: null }, stillEnv());
  if (result.status !== "planned") throw new Error(result.status);
  return result.plan;
}

interface Asked {
  readonly standing: ProblemData;
  readonly plan: Plan;
  readonly desk: OpenDesk;
  readonly order: Job;
}

/** A long order that every line may make, in the set-up in which the given one may be made anywhere. */
function longOrder({ lines, setups }: ProblemData, order: Job): Job {
  const setupId = order.options[0]?.setupId ?? setups[1]!.id;
  const options = lines.map(({ id }, l) => ({ lineId: id, setupId, secondsPerPiece: 4 + l }));
  const { latestStartAt: _, ...anyTime } = order;
  return { ...anyTime, pieces: order.pieces + 8000, options, sheetId: null };
}

/** A random plant's plan without its last order, and that order to ask for; null where the plan does not follow from its runs. */
function asked(problem: ProblemData, orderOf = (_: ProblemData, order: Job): Job => order): Asked | null {
  const order = orderOf(problem, problem.jobs.at(-1)!);
  const jobs = problem.jobs.slice(0, -1);
  const pins = problem.pins.filter((pin) => pin.orderId !== order.orderId);
  const standing = { ...problem, jobs, pins };
  const plan = planOf(standing);
  const desk = openPromise(standing, plan);
  return desk.status === "open" ? { standing, plan, desk, order } : null;
}

function finishes(plan: Plan): ReadonlyMap<string, number> {
  const last = new Map<string, number>();
  for (const lot of plan.lots)
    last.set(lot.orderId, Math.max(lot.finish, last.get(lot.orderId) ?? lot.finish));
  return last;
}

/** What must hold of every promise: audit-clean, others within their limits but for those given up, and its figures those of its plan. */
function check({ standing, plan, desk }: Asked, promise: PromisedOrder, freed = new Set<string>()): void {
  const after = promise.plan();
  expect(auditPlan({ ...standing, jobs: [...standing.jobs, promise.order] }, after)).toEqual([]);
  const last = finishes(after);
  const dueOf = new Map(standing.jobs.map((job) => [job.orderId, job.dueAt]));
  for (const [id, before] of finishes(plan)) {
    const by = Math.max(before, dueOf.get(id)!);
    expect(desk.limitOf(id)).toEqual({ by, finish: before });
    expect(last.has(id)).toBe(true);
    const displaced = promise.displaced.find(({ orderId }) => orderId === id);
    if (last.get(id)! <= by) expect(displaced).toBeUndefined();
    else {
      expect(freed).toContain(id);
      expect(displaced).toEqual({ orderId: id, by, finishBefore: before, finish: last.get(id) });
    }
  }
  const { orderId } = promise.order;
  expect(promise.finish).toBe(last.get(orderId));
  const own = after.lots.filter((lot) => lot.orderId === orderId);
  expect(own.map(({ pieces, lineId, start, end }) => ({ pieces, lineId, start, end }))).toEqual(
    promise.lots.map(({ pieces, lineId, start, end }) => ({ pieces, lineId, start, end })),
  );
  // the price is the difference of the two plans' own breakdowns
  expect(after.objective).toEqual(promise.objective);
  expect(promise.price.total).toBeCloseTo(after.objective.total - plan.objective.total, 6);
  after.objective.terms.forEach(({ name, amount }, i) => {
    expect(promise.price.terms[i]).toMatchObject({ name, amount: amount - plan.objective.terms[i]!.amount });
  });
}

describe("a promise in two lots over two lines", () => {
  it("ends earlier than in one lot, passes the audit and makes nobody late", () => {
    let given = 0;
    fc.assert(
      fc.property(problemArb(LOOSE), (problem) => {
        const ask = asked(problem, problem.lines[0]!.trolleyId === null ? longOrder : undefined);
        if (ask === null) return;
        const answer = finish(ask.desk.splitOverLines(ask.order));
        if (answer.status !== "promised") return;
        given++;
        const { promise, earlierBySeconds } = answer;
        check(ask, promise);
        const whole = ask.desk.promise(ask.order);
        if (whole.status === "promised") {
          expect(promise.finish).toBeLessThan(whole.promise.finish);
          expect(earlierBySeconds).toBe(whole.promise.finish - promise.finish);
        } else expect(earlierBySeconds).toBeNull();
        expect(new Set(promise.lots.map(({ lineId }) => lineId)).size).toBe(2);
        const pieces = promise.lots.map((lot) => lot.pieces);
        expect(pieces.reduce((sum, each) => sum + each, 0)).toBe(ask.order.pieces);
      }),
      { seed: 94, numRuns: 150 },
    );
    expect(given).toBeGreaterThan(25);
  });

  it("halves the run where two lines stand free, at whole packing units", () => {
    // by hand: 7,200 pieces at 1 s on two free bare lines end after 1 h each; units of 1,000 leave 4,000 and 3,200
    const standing = twoMouldPlant({ jobs: [] });
    const desk = openPromise(standing, planOf(standing));
    if (desk.status !== "open") throw new Error(desk.status);
    const options = ["1", "2"].map((lineId) => ({ lineId, setupId: "bare", secondsPerPiece: 1 }));
    const order = jobOf("new", "1", "bare", { pieces: 7200, options });
    const split = finish(desk.splitOverLines(order));
    expect(split).toMatchObject({ status: "promised", earlierBySeconds: HOUR, promise: { finish: HOUR } });
    const boxed = { ...order, lotSize: { leastPieces: 1000, unitPieces: 1000 } };
    const inBoxes = finish(desk.splitOverLines(boxed));
    if (inBoxes.status !== "promised") throw new Error(inBoxes.status);
    expect(inBoxes.promise.finish).toBe(4000);
    expect(inBoxes.promise.lots.map(({ pieces }) => pieces).sort((a, b) => a - b)).toEqual([3200, 4000]);
  });

  it("is not there for few pieces, one line or no gain, and a faulty order is named", () => {
    const standing = twoMouldPlant({ jobs: [], lines: [lineOf("1"), lineOf("2", { freeAt: 5 * HOUR })] });
    const desk = openPromise(standing, planOf(standing));
    if (desk.status !== "open") throw new Error(desk.status);
    const both = ["1", "2"].map((lineId) => ({ lineId, setupId: "bare", secondsPerPiece: 1 }));
    const order = jobOf("new", "1", "bare");
    const split = (part: Partial<Job>): unknown => finish(desk.splitOverLines({ ...order, ...part }));
    expect(split({})).toEqual({ status: "none", reason: "one-line" });
    expect(split({ options: both })).toEqual({ status: "none", reason: "no-gain" });
    const lotSize = { leastPieces: 2000, unitPieces: 1 };
    expect(split({ options: both, lotSize })).toEqual({ status: "none", reason: "too-small" });
    expect(split({ pieces: 0 })).toMatchObject({ status: "faulty-order", faults: [{ code: "pieces" }] });
  });
});

describe("a first part by the wanted day", () => {
  it("is in time, with the rest makes the order, passes the audit and makes nobody late", () => {
    const seen = { promised: 0, whole: 0, none: 0 };
    fc.assert(
      fc.property(problemArb(LOOSE), fc.integer({ min: 1, max: 200 }), (problem, hour) => {
        const ask = asked(problem);
        if (ask === null) return;
        const by = problem.horizon.start + hour * HOUR;
        const answer = finish(ask.desk.firstPart(ask.order, by));
        if (answer.status === "faulty-order") throw new Error(answer.status);
        seen[answer.status]++;
        if (answer.status === "none") return;
        check(ask, answer.promise);
        if (answer.status === "whole") {
          expect(answer.promise.finish).toBeLessThanOrEqual(by);
          return;
        }
        const { first, rest, promise } = answer;
        expect(first.finish).toBeLessThanOrEqual(by);
        expect(first.pieces + rest.pieces).toBe(ask.order.pieces);
        expect(Math.max(first.finish, rest.finish)).toBe(promise.finish);
        const parts = promise.lots.map(({ pieces, finish: at }) => ({ pieces, finish: at }));
        expect(parts).toContainEqual(first);
        expect(parts).toContainEqual(rest);
      }),
      { seed: 96, numRuns: 200 },
    );
    for (const count of Object.values(seen)) expect(count).toBeGreaterThan(10);
  });

  it("has the most pieces of all, by asking for every number of them in one lot", () => {
    let compared = 0;
    fc.assert(
      fc.property(problemArb(LOOSE), fc.integer({ min: 1, max: 19 }), (problem, twentieths) => {
        const ask = asked(problem, longOrder);
        if (ask === null) return;
        const { lots: _, ...whole } = ask.order;
        const unitPieces = Math.ceil(whole.pieces / 12);
        const order = { ...whole, lotSize: { leastPieces: 1, unitPieces } };
        const usual = ask.desk.promise(whole);
        if (usual.status !== "promised") return;
        const { start } = problem.horizon;
        const by = start + Math.floor(((usual.promise.finish - start) * twentieths) / 20);
        const answer = finish(ask.desk.firstPart(order, by));
        if (answer.status !== "promised") return;
        let most = 0;
        for (let pieces = unitPieces; pieces < whole.pieces; pieces += unitPieces) {
          const part = ask.desk.promise({ ...whole, pieces });
          if (part.status === "promised" && part.promise.finish <= by) most = pieces;
        }
        expect(answer.first.pieces).toBe(most);
        compared++;
      }),
      { seed: 97, numRuns: 120 },
    );
    expect(compared).toBeGreaterThan(20);
  });

  it("is what fits before the wanted instant on a line by itself", () => {
    // by hand: 1 s a piece from instant 0 on; until 2 h 7,200 pieces, in boxes of 500 7,000; the rest follows on
    const standing = twoMouldPlant({ jobs: [] });
    const desk = openPromise(standing, planOf(standing));
    if (desk.status !== "open") throw new Error(desk.status);
    const order = jobOf("new", "1", "bare", {
      pieces: 10_800,
      lotSize: { leastPieces: 500, unitPieces: 500 },
    });
    expect(finish(desk.firstPart(order, 2 * HOUR))).toMatchObject({
      status: "promised",
      first: { pieces: 7000, finish: 7000 },
      rest: { pieces: 3800, finish: 3 * HOUR },
    });
    expect(finish(desk.firstPart(order, 3 * HOUR))).toMatchObject({ status: "whole" });
    expect(finish(desk.firstPart(order, 400))).toEqual({ status: "none", reason: "nothing-by-then" });
    expect(finish(desk.firstPart({ ...order, pieces: 900 }, 800))).toEqual({
      status: "none",
      reason: "too-small",
    });
    expect(finish(desk.firstPart(order, 0.5))).toMatchObject({
      status: "faulty-order",
      faults: [{ code: "wanted-instant" }],
    });
  });
});

describe("a promise that displaces", () => {
  it("is no later than without, and delays only orders that were given up", () => {
    let earlier = 0;
    fc.assert(
      fc.property(
        problemArb({ ...LOOSE, days: 10, lines: 2 }),
        fc.uniqueArray(fc.integer({ min: 0, max: 5 }), { minLength: 1, maxLength: 3 }),
        (problem, given) => {
          const ask = asked(problem);
          if (ask === null) return;
          const freed = new Set(given.map((i) => ask.standing.jobs[i]!.orderId));
          const answer = ask.desk.displacing(ask.order, freed);
          const usual = ask.desk.promise(ask.order);
          if (usual.status === "promised") expect(answer.status).toBe("promised");
          if (answer.status !== "promised") return;
          check(ask, answer.promise, freed);
          if (usual.status !== "promised") return;
          expect(usual.promise.displaced).toEqual([]);
          expect(answer.promise.finish).toBeLessThanOrEqual(usual.promise.finish);
          if (answer.promise.finish < usual.promise.finish) {
            expect(answer.promise.displaced.length).toBeGreaterThan(0);
            earlier++;
          }
        },
      ),
      { seed: 98, numRuns: 200 },
    );
    expect(earlier).toBeGreaterThan(10);
  });

  it("names orders to displace that are not there", () => {
    const standing = twoMouldPlant({ jobs: [jobOf("there", "1", "bare")] });
    const desk = openPromise(standing, planOf(standing));
    if (desk.status !== "open") throw new Error(desk.status);
    expect(desk.displacing(jobOf("new", "1", "bare"), new Set(["there", "gone"]))).toMatchObject({
      status: "faulty-order",
      faults: [{ code: "unknown-order", subject: "gone" }],
    });
  });
});
