import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { workingTimeOf } from "@formweek/capacity-model";
import { problemArb, SMALL_PLANT } from "../../../../tests/arbitraries/problem.ts";
import { stillEnv } from "../../../../tests/helpers/still-env.ts";
import { DAY, HOUR, jobOf, lineOf, twoMouldPlant } from "../../../../tests/helpers/two-mould-plant.ts";
import {
  auditPlan,
  openPromise,
  promiseInTurn,
  promiseTogether,
  solve,
  type Job,
  type OpenDesk,
  type Plan,
  type ProblemData,
} from "../index.ts";
import { finish } from "../work/work.ts";

const LOOSE = { ...SMALL_PLANT, days: 14, jobs: 9 };

function planOf(problem: ProblemData): Plan {
  const result = solve(problem, { seed: 3, maxSteps: 30, maxMs: null }, stillEnv());
  if (result.status !== "planned") throw new Error(result.status);
  return result.plan;
}

/** The desk on a random plant's plan without its last three orders, and those; null where the plan does not follow from its runs. */
function asked(problem: ProblemData): { readonly desk: OpenDesk; readonly enquiries: readonly Job[] } | null {
  const enquiries = problem.jobs.slice(-3);
  const without = new Set(enquiries.map(({ orderId }) => orderId));
  const standing = {
    ...problem,
    jobs: problem.jobs.slice(0, -3),
    pins: problem.pins.filter((pin) => !without.has(pin.orderId)),
  };
  const desk = openPromise(standing, planOf(standing));
  return desk.status === "open" ? { desk, enquiries } : null;
}

function openOn(problem: ProblemData, plan: Plan, promised: ReadonlyMap<string, number>): OpenDesk {
  const desk = openPromise(problem, plan, promised);
  if (desk.status !== "open") throw new Error(desk.status);
  return desk;
}

describe("a desk on which a promise is held", () => {
  it("answers as one opened on the plan with it, with the same limits", () => {
    let compared = 0;
    fc.assert(
      fc.property(problemArb(LOOSE), (problem) => {
        const ask = asked(problem);
        if (ask === null) return;
        const [one, two, three] = ask.enquiries as [Job, Job, Job];
        const first = ask.desk.promise(one);
        if (first.status !== "promised") return;
        const split = finish(first.promise.hold().splitOverLines(two));
        const second =
          split.status === "promised" ? split.promise.hold() : first.promise.hold(first.promise.finish);
        const promised = new Map(
          second.problem.jobs.map(({ orderId, dueAt }) => [orderId, second.limitOf(orderId)?.by ?? dueAt]),
        );
        const plan = second.plan();
        expect(auditPlan(second.problem, plan)).toEqual([]);
        expect(plan.objective).toEqual(second.objective);
        const anew = openOn(second.problem, plan, promised);
        const held = second.promise(three);
        const fresh = anew.promise(three);
        expect(held.status).toBe(fresh.status);
        if (held.status !== "promised" || fresh.status !== "promised") return;
        compared++;
        expect(held.promise.finish).toBe(fresh.promise.finish);
        expect(held.promise.plan()).toEqual(fresh.promise.plan());
        expect(held.promise.price.total).toBeCloseTo(fresh.promise.price.total, 6);
      }),
      { seed: 101, numRuns: 120 },
    );
    expect(compared).toBeGreaterThan(25);
  });

  it("keeps the promise by the instant given, by the due date, or by its finish", () => {
    const standing = twoMouldPlant({ jobs: [] });
    const desk = openOn(standing, planOf(standing), new Map());
    const answer = desk.promise(jobOf("new", "1", "bare", { dueAt: 5 * HOUR }));
    if (answer.status !== "promised") throw new Error(answer.status);
    const { promise } = answer;
    expect(promise.finish).toBe(HOUR);
    expect(promise.hold().limitOf("new")).toEqual({ by: 5 * HOUR, finish: HOUR });
    expect(promise.hold(2 * HOUR).limitOf("new")).toEqual({ by: 2 * HOUR, finish: HOUR });
    expect(promise.hold(0).limitOf("new")).toEqual({ by: HOUR, finish: HOUR });
    expect(desk.limitOf("new")).toBeNull();
  });
});

describe("a batch of enquiries", () => {
  it("is answered with one valid plan in which every order is finished when it says", () => {
    let better = 0;
    fc.assert(
      fc.property(problemArb({ ...LOOSE, lines: 2 }), (problem) => {
        const ask = asked(problem);
        if (ask === null) return;
        const { desk, enquiries } = ask;
        const inTurn = finish(promiseInTurn(desk, enquiries));
        const together = finish(promiseTogether(desk, enquiries));
        for (const batch of [inTurn, together]) {
          const plan = batch.desk.plan();
          expect(auditPlan(batch.desk.problem, plan)).toEqual([]);
          expect(batch.answers.map(({ orderId }) => orderId)).toEqual(
            enquiries.map(({ orderId }) => orderId),
          );
          let late = 0;
          batch.answers.forEach((answer, i) => {
            const lots = plan.lots.filter(({ orderId }) => orderId === answer.orderId);
            if (answer.status !== "promised") {
              expect(lots).toEqual([]);
              return;
            }
            expect(answer.finish).toBe(Math.max(...lots.map((lot) => lot.finish)));
            const { dueAt, weight } = enquiries[i]!;
            late += (weight * Math.max(0, answer.finish - dueAt)) / HOUR;
          });
          expect(batch.lateWeightHours).toBeCloseTo(late, 9);
          for (const { orderId } of desk.problem.jobs) {
            const limit = desk.limitOf(orderId);
            if (limit !== null) expect(batch.desk.limitOf(orderId)!.finish).toBeLessThanOrEqual(limit.by);
          }
          expect(batch.price.total).toBeCloseTo(plan.objective.total - desk.objective.total, 6);
        }
        const refused = (batch: typeof inTurn): number =>
          batch.answers.filter(({ status }) => status !== "promised").length;
        expect(refused(together)).toBeLessThanOrEqual(refused(inTurn));
        if (refused(together) === refused(inTurn))
          expect(together.lateWeightHours).toBeLessThanOrEqual(inTurn.lateWeightHours);
        if (together.lateWeightHours < inTurn.lateWeightHours) better++;
      }),
      { seed: 102, numRuns: 100 },
    );
    expect(better).toBeGreaterThan(3);
  });

  it("puts the urgent one first when answered together", () => {
    // by hand: one line, an hour each; "soon" must be out after one hour, "late" has a day
    const standing = twoMouldPlant({ jobs: [], lines: [lineOf("1")] });
    const desk = openOn(standing, planOf(standing), new Map());
    const enquiries = [
      jobOf("late", "1", "bare", { dueAt: HOUR * 1.5, weight: 1 }),
      jobOf("soon", "1", "bare", { dueAt: HOUR, weight: 5 }),
    ];
    const inTurn = finish(promiseInTurn(desk, enquiries));
    expect(inTurn).toMatchObject({ sequence: "as given", lateWeightHours: 5 });
    const together = finish(promiseTogether(desk, enquiries));
    expect(together).toMatchObject({ sequence: "wanted day", lateWeightHours: 0.5 });
    expect(together.answers).toMatchObject([{ finish: 2 * HOUR }, { finish: HOUR }]);
  });

  it("tells an enquiry given twice, and nothing asked for, apart", () => {
    const standing = twoMouldPlant({ jobs: [] });
    const desk = openOn(standing, planOf(standing), new Map());
    const order = jobOf("new", "1", "bare");
    expect(finish(promiseTogether(desk, [order, order])).answers).toMatchObject([
      { status: "promised" },
      { status: "faulty-order", orderId: "new", faults: [{ code: "duplicate-order" }] },
    ]);
    expect(finish(promiseTogether(desk, []))).toMatchObject({ answers: [], lateWeightHours: 0 });
  });
});

describe("a plan opened on a problem that has changed since", () => {
  const shifts = (hours: number): ProblemData =>
    twoMouldPlant({
      lines: [
        lineOf("1", {
          workingTime: workingTimeOf([
            [0, hours * HOUR],
            [DAY, 2 * DAY],
          ]),
        }),
      ],
      jobs: ["a", "b"].map((id) => jobOf(id, "1", "bare", { pieces: 3 * 3600, dueAt: 2 * DAY })),
    });

  it("is timed anew where that is asked for, and says what moved", () => {
    // by hand: in 4 h a runs and b begins; with 8 h both are done on the first day, and two hours from the fifth on follow at once
    const before = shifts(4);
    const plan = planOf(before);
    const longer = shifts(8);
    expect(openPromise(longer, plan)).toMatchObject({ status: "plan-does-not-follow" });
    const desk = openPromise(longer, plan, new Map(), { retime: true });
    if (desk.status !== "open") throw new Error(desk.status);
    expect(desk.retimed).toMatchObject([{ start: 3 * HOUR, endBefore: DAY + 2 * HOUR, end: 6 * HOUR }]);
    const short = openOn(before, plan, new Map());
    const order = jobOf("new", "1", "bare", { pieces: 2 * 3600 });
    expect(desk.promise(order)).toMatchObject({ promise: { finish: 2 * HOUR } });
    const after = desk.promise({ ...order, earliestStartAt: 5 * HOUR });
    expect(after).toMatchObject({ promise: { finish: 7 * HOUR } });
    expect(short.promise({ ...order, earliestStartAt: 5 * HOUR })).toMatchObject({
      promise: { finish: DAY + 2 * HOUR },
    });
  });

  it("is refused where an order of it has no place any more", () => {
    const plan = planOf(shifts(4));
    const { jobs, ...rest } = shifts(4);
    expect(openPromise({ ...rest, jobs: jobs.slice(1) }, plan, new Map(), { retime: true })).toEqual({
      status: "plan-does-not-follow",
      orderId: "a",
    });
  });

  it("keeps every order within its limit under any longer hours", () => {
    fc.assert(
      fc.property(problemArb({ ...LOOSE, pins: false }), (problem) => {
        const plan = planOf(problem);
        const always = workingTimeOf([[problem.horizon.start, problem.horizon.end]]);
        const lines = problem.lines.map((line) => ({ ...line, workingTime: always }));
        const desk = openPromise({ ...problem, lines }, plan, new Map(), { retime: true });
        if (desk.status !== "open") return;
        expect(auditPlan({ ...problem, lines }, desk.plan())).toEqual([]);
        for (const { orderId, dueAt } of problem.jobs) {
          const own = plan.lots.filter((lot) => lot.orderId === orderId);
          const limit = desk.limitOf(orderId);
          if (own.length === 0) expect(limit).toBeNull();
          else expect(limit!.by).toBe(Math.max(limit!.finish, dueAt, ...own.map((lot) => lot.finish)));
        }
      }),
      { seed: 103, numRuns: 60 },
    );
  });
});
