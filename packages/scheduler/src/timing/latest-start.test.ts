import { workingTimeOf } from "@formweek/capacity-model";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { problemArb, SMALL_PLANT } from "../../../../tests/arbitraries/problem.ts";
import { HOUR, jobOf, lineOf, twoMouldPlant } from "../../../../tests/helpers/two-mould-plant.ts";
import { stillEnv } from "../../../../tests/helpers/still-env.ts";
import { lowerBound } from "../bound/bound.ts";
import { linesArePlain } from "../improve/plain-lines.ts";
import { openPromise, solve, type Plan, type ProblemData } from "../index.ts";
import { compile } from "../problem/compile.ts";

function planOf(problem: ProblemData, maxSteps = 200): Plan {
  const result = solve(problem, { seed: 1, maxSteps, maxMs: null }, stillEnv());
  expect(result.status === "rejected" ? result.violations : result.status).toBe("planned");
  return (result as { plan: Plan }).plan;
}

const timesOf = (plan: Plan, orderId: string): (readonly [start: number, end: number])[] =>
  plan.lots.flatMap((lot) => (lot.orderId === orderId ? [[lot.start / HOUR, lot.end / HOUR] as const] : []));

/** Code and text of each reason for which an order is left out. */
const reasonsOf = (plan: Plan, orderId: string): readonly (readonly [string, string])[] =>
  plan.unplanned
    .filter((order) => order.orderId === orderId)
    .flatMap(({ reasons }) => reasons.map(({ code, text }) => [code, text] as const));

// use-by of sheet on the shelf: common practice, no source
describe("an order's latest start", () => {
  it("puts the order before one that its due date alone would put first", () => {
    const urgent = jobOf("urgent", "1", "bare", { pieces: 10 * 3600, dueAt: 10 * HOUR });
    const plant = (latestStartAt?: number): ProblemData =>
      twoMouldPlant({
        jobs: [urgent, jobOf("aging", "1", "bare", latestStartAt === undefined ? {} : { latestStartAt })],
      });
    expect(timesOf(planOf(plant()), "aging")).toEqual([[10, 11]]);
    expect(timesOf(planOf(plant(2 * HOUR)), "aging")).toEqual([[0, 1]]);
    expect(timesOf(planOf(plant(2 * HOUR)), "urgent")).toEqual([[1, 11]]);
  });

  it("is the last second allowed; a run that began by then goes on past it", () => {
    const plant = (latestStartAt: number): ProblemData =>
      twoMouldPlant({ jobs: [jobOf("aging", "1", "A", { latestStartAt })] });
    expect(timesOf(planOf(plant(3 * HOUR)), "aging")).toEqual([[3, 4]]);
    expect(reasonsOf(planOf(plant(3 * HOUR - 1)), "aging")).toEqual([
      ["starts-too-late", "With no other order planned it would start 1 min after its latest start."],
    ]);
    // its price is in the bound: no plan can spare it
    expect(lowerBound(compile(plant(3 * HOUR))).total).toBeLessThan(1000);
    expect(lowerBound(compile(plant(3 * HOUR - 1))).total).toBe(1e6);
    // long before the horizon: no less exact
    expect(reasonsOf(planOf(plant(-1e12)), "aging")[0]?.[1]).toContain("277777780.8 h after");
  });

  it("names by how much the orders before it are in the way", () => {
    const pins = [{ orderId: "held", lineId: "1", startAt: 0, sequence: null }];
    const jobs = [
      jobOf("held", "1", "A", { pieces: 10 * 3600 }),
      jobOf("aging", "1", "B", { latestStartAt: 6 * HOUR }),
    ];
    const lines = [lineOf("1", { initial: { setupId: "A", copy: 0 } })];
    // behind the ten hours of the pinned order come dismounting 1 h, mounting 2 h and the tail 1 h
    expect(reasonsOf(planOf(twoMouldPlant({ lines, pins, jobs })), "aging")).toEqual([
      ["starts-too-late", "Behind the orders planned here it would start 8 h after its latest start."],
    ]);
  });

  it("names a pin that asks for a later start", () => {
    const pins = [{ orderId: "aging", lineId: "1", startAt: 9 * HOUR, sequence: null }];
    const jobs = [jobOf("aging", "1", "bare", { latestStartAt: 6 * HOUR })];
    expect(reasonsOf(planOf(twoMouldPlant({ pins, jobs })), "aging")).toEqual([
      ["starts-too-late", "It is pinned to a start 3 h after its latest start."],
    ]);
  });

  it("has a run begin before a stop that it would else begin after", () => {
    const workingTime = workingTimeOf([
      [0, 5 * HOUR],
      [10 * HOUR, 30 * HOUR],
    ]);
    const restart = { restartLimitSeconds: HOUR, restartWarmUpSeconds: 2 * HOUR };
    const lines = [lineOf("1", { workingTime, ...restart })];
    const runOf = (latestStartAt: number): (readonly [number, number])[] => {
      const aging = { pieces: 4 * 3600, earliestStartAt: 4 * HOUR, latestStartAt };
      return timesOf(planOf(twoMouldPlant({ lines, jobs: [jobOf("aging", "1", "bare", aging)] })), "aging");
    };
    expect(runOf(10 * HOUR)).toEqual([[10, 14]]);
    // an hour made before the stop, then the warm-up of two and the other three
    expect(runOf(10 * HOUR - 1)).toEqual([[4, 15]]);
  });

  it("holds for every lot: none is made on a line that is free only later", () => {
    const plant = (latestStartAt: number): ProblemData =>
      twoMouldPlant({
        lines: [lineOf("1"), lineOf("2", { freeAt: 2 * HOUR })],
        jobs: [
          jobOf("aging", "1", "bare", {
            pieces: 8 * 3600,
            dueAt: 5 * HOUR,
            latestStartAt,
            lots: { most: 4, leastPieces: 3600, unitPieces: 3600 },
            options: ["1", "2"].map((lineId) => ({ lineId, setupId: "bare", secondsPerPiece: 1 })),
          }),
        ],
      });
    expect(timesOf(planOf(plant(2 * HOUR)), "aging").sort(([a], [b]) => a - b)).toEqual([
      [0, 5],
      [2, 5],
    ]);
    expect(timesOf(planOf(plant(2 * HOUR - 1)), "aging")).toEqual([[0, 8]]);
  });

  it("is kept by promises: of the orders that stand, and of the one that is asked for", () => {
    const standing = twoMouldPlant({ jobs: [jobOf("aging", "1", "bare", { latestStartAt: HOUR / 2 })] });
    const desk = openPromise(standing, planOf(standing), new Map());
    if (desk.status !== "open") throw new Error(desk.status);
    // the aging order is due in ten days, but an hour before it would be half an hour too long
    expect(desk.promise(jobOf("new", "1", "bare"))).toMatchObject({ promise: { lots: [{ start: HOUR }] } });
    expect(desk.promise(jobOf("new", "1", "bare", { pieces: 1800 }))).toMatchObject({
      promise: { lots: [{ start: 0 }] },
    });
    const late = desk.promise(jobOf("new", "1", "A", { latestStartAt: 2 * HOUR }));
    expect(late).toMatchObject({
      status: "refused",
      reasons: [
        {
          code: "starts-too-late",
          text: "With no other order planned it would start 1 h after its latest start.",
        },
      ],
    });
  });

  it("is kept on plain lines too, which have searches of their own", () => {
    const plain = (lineIds: readonly string[], prices: Partial<ProblemData["objective"]>): ProblemData => {
      const plant = twoMouldPlant({
        lines: lineIds.map((id) => lineOf(id)),
        moulds: [],
        setups: [{ id: "bare", mouldId: null, sheetId: null, strippedId: "bare" }],
        changeClasses: [{ id: "C", matrix: [[-1]] }],
        changes: [],
        jobs: Array.from({ length: 4 * lineIds.length }, (_, n) => {
          const options = lineIds.map((lineId) => ({ lineId, setupId: "bare", secondsPerPiece: 1 }));
          const aging = n >= 3 * lineIds.length ? { latestStartAt: 0 } : { dueAt: 2 * HOUR };
          return jobOf(`${n}`, "1", "bare", { pieces: 3600 * (1 + (n % 3)), options, ...aging });
        }),
      });
      return { ...plant, objective: { ...plant.objective, ...prices } };
    };
    const late = plain(["1"], {});
    const last = plain(["1", "2"], { tardinessPerWeightHour: 0, makespanPerHour: 1 });
    for (const problem of [late, last]) {
      expect(planOf(problem).unplanned).toEqual([]);
      const jobs = problem.jobs.map(({ latestStartAt: _, ...job }) => job);
      expect(linesArePlain(compile({ ...problem, jobs }))).toBe(true);
    }
  });

  it("is kept in random plants, where plans without it would often break it", () => {
    let broken = 0;
    let refused = 0;
    fc.assert(
      fc.property(problemArb(), (problem) => {
        const latest = new Map(problem.jobs.map((job) => [job.orderId, job.latestStartAt ?? Infinity]));
        const late = ({ lots }: Plan): number =>
          lots.filter((lot) => lot.start > latest.get(lot.orderId)!).length;
        const plan = planOf(problem, 60);
        expect(late(plan)).toBe(0);
        for (const { orderId, reasons } of plan.unplanned) {
          if (!reasons.some(({ code }) => code === "starts-too-late")) continue;
          expect(latest.get(orderId)).toBeLessThan(Infinity);
          refused++;
        }
        const jobs = problem.jobs.map(({ latestStartAt: _, ...job }) => job);
        broken += late(planOf({ ...problem, jobs }, 60));
      }),
      { seed: 101, numRuns: 60 },
    );
    expect(broken).toBeGreaterThan(20);
    expect(refused).toBeGreaterThan(10);
  });

  it("is missed by what the reason says: as much as the order starts later where it has none", () => {
    let judged = 0;
    fc.assert(
      fc.property(problemArb({ ...SMALL_PLANT, pins: false, lots: false }), (problem) => {
        // warm-ups apart: an order without the limit may choose to start after a stop
        const lines = problem.lines.map((line) => ({ ...line, restartWarmUpSeconds: 0 }));
        for (const { latestStartAt, ...job } of problem.jobs) {
          if (latestStartAt === undefined) continue;
          const free = { ...problem, lines, jobs: [{ ...job, options: job.options.slice(0, 1) }] };
          const start = planOf(free, 1).lots[0]?.start;
          const held = { ...free, jobs: [{ ...free.jobs[0]!, latestStartAt }] };
          const reason = reasonsOf(planOf(held, 1), job.orderId).find(([code]) => code === "starts-too-late");
          const by = start === undefined ? 0 : start - latestStartAt;
          if (by > 0) {
            judged++;
            const amount = by < HOUR ? `${Math.ceil(by / 60)} min` : `${Math.round(by / 360) / 10} h`;
            expect(reason?.[1]).toBe(
              `With no other order planned it would start ${amount} after its latest start.`,
            );
          } else expect(reason).toBeUndefined();
        }
      }),
      { seed: 102, numRuns: 150 },
    );
    expect(judged).toBeGreaterThan(30);
  });
});
