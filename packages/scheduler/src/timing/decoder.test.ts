import { workingTimeOf } from "@formweek/capacity-model";
import { describe, expect, it } from "vitest";
import { DAY, HOUR, jobOf, lineOf, twoMouldPlant } from "../../../../tests/helpers/two-mould-plant.ts";
import { stillEnv } from "../../../../tests/helpers/still-env.ts";
import { solve, type ChangeSegment, type Job, type Plan, type ProblemData } from "../index.ts";

function planOf(problem: ProblemData, maxSteps = 200): Plan {
  const result = solve(problem, { seed: 1, maxSteps, maxMs: null }, stillEnv());
  expect(result.status === "rejected" ? result.violations : result.status).toBe("planned");
  return (result as { plan: Plan }).plan;
}

function lot(plan: Plan, orderId: string): { start: number; end: number; lineId: string } {
  const found = plan.lots.find((each) => each.orderId === orderId);
  expect(found, orderId).toBeDefined();
  return found!;
}

const changesOf = (plan: Plan): ChangeSegment[] =>
  plan.segments.filter((segment) => segment.kind === "change");

describe("the timing of a plan", () => {
  it("waits for mounting by the team, then for the tail by the line", () => {
    const plan = planOf(twoMouldPlant({ jobs: [jobOf("a", "1", "A")] }));
    expect(lot(plan, "a")).toMatchObject({ start: 3 * HOUR, end: 4 * HOUR });
  });
  it("lets one team do one change at a time", () => {
    const plan = planOf(twoMouldPlant({ jobs: [jobOf("a", "1", "A"), jobOf("b", "2", "B")] }));
    expect([lot(plan, "a").start, lot(plan, "b").start].sort((x, y) => x - y)).toEqual([3 * HOUR, 5 * HOUR]);
  });
  it("lets two teams do two, but only one where both need the trolley", () => {
    const teams = ["one", "two"].map((id) => ({ id, workingTime: workingTimeOf([[0, 10 * DAY]]) }));
    const jobs = [jobOf("a", "1", "A"), jobOf("b", "2", "B")];
    expect(planOf(twoMouldPlant({ teams, jobs })).lots.map(({ start }) => start)).toEqual([
      3 * HOUR,
      3 * HOUR,
    ]);
    const base = twoMouldPlant({});
    const changes = base.changes.map((spec) => ({ ...spec, usesTrolley: true }));
    const lines = ["1", "2"].map((id) => lineOf(id, { trolleyId: "T" }));
    const starts = planOf(twoMouldPlant({ teams, jobs, changes, lines })).lots.map(({ start }) => start);
    expect(starts.sort((x, y) => x - y)).toEqual([3 * HOUR, 5 * HOUR]);
  });
  it("strips a mould from an idle line, carries it, and mounts it on the other", () => {
    const plan = planOf(
      twoMouldPlant({ jobs: [jobOf("a", "1", "A", { dueAt: 4 * HOUR }), jobOf("b", "2", "A")] }),
    );
    const stripping = changesOf(plan).find((change) => change.stripping);
    expect(stripping).toMatchObject({
      lineId: "1",
      start: 4 * HOUR,
      end: 5 * HOUR,
      toSetupId: "bare",
      mouldOut: { mouldId: "A", copy: 0 },
    });
    const mounting = changesOf(plan).find((change) => change.lineId === "2");
    expect(mounting?.mountStart).toBe(5 * HOUR + 600);
    expect(lot(plan, "b").start).toBe(8 * HOUR + 600);
  });
  it("lets a line that changes to another mould anyhow do so at once, rather than strip it", () => {
    const lines = [lineOf("1", { initial: { setupId: "A", copy: 0 } }), lineOf("2")];
    const jobs = [
      jobOf("a", "2", "A", { dueAt: 5 * HOUR }),
      jobOf("b", "1", "B", { earliestStartAt: 50 * HOUR }),
    ];
    // before the search finds that a stripping is dearer, but lets the other line begin sooner
    const plan = planOf(twoMouldPlant({ lines, jobs }), 0);
    expect(changesOf(plan).map(({ lineId, start, stripping }) => ({ lineId, start, stripping }))).toEqual([
      { lineId: "1", start: 0, stripping: false },
      { lineId: "2", start: 3 * HOUR, stripping: false },
    ]);
  });
  it("begins a run after the stop that would cost it more warm-up than it makes before", () => {
    const workingTime = workingTimeOf([
      [0, 5 * HOUR],
      [10 * HOUR, 30 * HOUR],
    ]);
    const restart = { restartLimitSeconds: HOUR, restartWarmUpSeconds: 2 * HOUR };
    const lines = [lineOf("1", { workingTime, initial: { setupId: "A", copy: 0 }, ...restart })];
    const runOf = (earliestStartAt: number): { start: number; end: number } =>
      lot(
        planOf(twoMouldPlant({ lines, jobs: [jobOf("a", "1", "A", { pieces: 14_400, earliestStartAt })] })),
        "a",
      );
    expect(runOf(4 * HOUR)).toMatchObject({ start: 10 * HOUR, end: 14 * HOUR });
    // two hours made before the stop are worth the warm-up of two hours
    expect(runOf(3 * HOUR)).toMatchObject({ start: 3 * HOUR, end: 14 * HOUR });
  });
  it("does not strip where a second copy hangs free", () => {
    const moulds = twoMouldPlant({}).moulds.map((mould) => ({ ...mould, copies: 2 }));
    const plan = planOf(
      twoMouldPlant({ moulds, jobs: [jobOf("a", "1", "A", { dueAt: 4 * HOUR }), jobOf("b", "2", "A")] }),
    );
    expect(changesOf(plan).some((change) => change.stripping)).toBe(false);
  });
  it("needs no change between two orders of one set-up", () => {
    const plan = planOf(twoMouldPlant({ jobs: [jobOf("a", "1", "A"), jobOf("b", "1", "A")] }));
    expect(changesOf(plan)).toHaveLength(1);
    expect(plan.lots.map(({ end }) => end).sort((x, y) => x - y)).toEqual([4 * HOUR, 5 * HOUR]);
  });
  it("swaps two moulds between two lines without a ring of waiting", () => {
    const lines = [
      lineOf("1", { initial: { setupId: "A", copy: 0 } }),
      lineOf("2", { initial: { setupId: "B", copy: 0 } }),
    ];
    const plan = planOf(twoMouldPlant({ lines, jobs: [jobOf("b", "1", "B"), jobOf("a", "2", "A")] }));
    expect(plan.unplanned).toEqual([]);
    expect(changesOf(plan).filter((change) => change.stripping)).toHaveLength(1);
  });
  it("changes only in the team's hours, and keeps a change whole over a pause of the shift", () => {
    const teams = [
      {
        id: "day",
        workingTime: workingTimeOf([
          [8 * HOUR, 9 * HOUR],
          [10 * HOUR, 12 * HOUR],
        ]),
      },
    ];
    const plan = planOf(twoMouldPlant({ teams, jobs: [jobOf("a", "1", "A")] }));
    expect(changesOf(plan)[0]).toMatchObject({
      start: 8 * HOUR,
      mountStart: 8 * HOUR,
      tailStart: 11 * HOUR,
      end: 12 * HOUR,
    });
  });
  it("stops a run at closed time and warms up after a long stop", () => {
    const workingTime = workingTimeOf([
      [0, 4 * HOUR],
      [8 * HOUR, 20 * HOUR],
    ]);
    const line = lineOf("1", {
      workingTime,
      initial: null,
      restartLimitSeconds: 2 * HOUR,
      restartWarmUpSeconds: 1800,
    });
    const plan = planOf(
      twoMouldPlant({ lines: [line], jobs: [jobOf("a", "1", "bare", { pieces: 6 * 3600 })] }),
    );
    expect(lot(plan, "a")).toMatchObject({ start: 0, end: 10 * HOUR + 1800 });
    expect(plan.segments.map(({ kind, start, end }) => [kind, start / 1800, end / 1800])).toEqual([
      ["run", 0, 8],
      ["stop", 8, 16],
      ["stop", 16, 17],
      ["run", 17, 21],
    ]);
    expect(plan.segments.flatMap((segment) => (segment.kind === "run" ? [segment.pieces] : []))).toEqual([
      14_400, 7200,
    ]);
  });
  it("does not warm up after a stop within the limit", () => {
    const workingTime = workingTimeOf([
      [0, 4 * HOUR],
      [5 * HOUR, 20 * HOUR],
    ]);
    const line = lineOf("1", {
      workingTime,
      initial: null,
      restartLimitSeconds: 2 * HOUR,
      restartWarmUpSeconds: 1800,
    });
    const plan = planOf(
      twoMouldPlant({ lines: [line], jobs: [jobOf("a", "1", "bare", { pieces: 6 * 3600 })] }),
    );
    expect(lot(plan, "a").end).toBe(7 * HOUR);
  });
  it("never runs two lines on one line's operators", () => {
    const lines = ["1", "2"].map((id) =>
      lineOf(id, { initial: null, poolId: "P", operatorsHundredths: 100 }),
    );
    const pools = [{ id: "P", crews: [{ workingTime: workingTimeOf([[0, 10 * DAY]]), hundredths: 150 }] }];
    const plan = planOf(
      twoMouldPlant({ lines, pools, jobs: [jobOf("a", "1", "bare"), jobOf("b", "2", "bare")] }),
    );
    expect(plan.lots.map(({ start }) => start).sort((x, y) => x - y)).toEqual([0, HOUR]);
  });
  it("starts a run when its sheet covers it and all before it", () => {
    const sheets = [{ id: "S", stockKg: 400, arrivals: [{ at: 30 * HOUR, kg: 400 }] }];
    const jobs = [jobOf("a", "1", "bare", { sheetId: "S" }), jobOf("b", "2", "bare", { sheetId: "S" })];
    const plan = planOf(twoMouldPlant({ sheets, jobs }));
    expect(plan.lots.map(({ start }) => start).sort((x, y) => x - y)).toEqual([0, 30 * HOUR]);
  });
  it("may change before the earliest start, but not run", () => {
    const jobs = [jobOf("a", "1", "A", { earliestStartAt: 2 * DAY })];
    const plan = planOf(twoMouldPlant({ jobs }));
    expect(lot(plan, "a").start).toBe(2 * DAY);
    expect(changesOf(plan)[0]!.end).toBeLessThanOrEqual(2 * DAY);
    const later = planOf(twoMouldPlant({ jobs, changeAwaitsEarliestStart: true }));
    expect(changesOf(later)[0]!.start).toBe(2 * DAY);
    expect(lot(later, "a").start).toBe(2 * DAY + 3 * HOUR);
  });
  it("counts lateness after conditioning", () => {
    const plan = planOf(
      twoMouldPlant({ jobs: [jobOf("a", "1", "bare", { dueAt: 3 * HOUR, conditioningSeconds: 4 * HOUR })] }),
    );
    expect(plan.lots[0]).toMatchObject({ end: HOUR, finish: 5 * HOUR });
    expect(plan.objective.terms[0]).toMatchObject({ name: "weighted tardiness", amount: 2, cost: 20 });
  });
  it("keeps pins: line, place in the sequence, exact start", () => {
    const either = (setupId: string): Partial<Job> => ({
      options: ["1", "2"].map((lineId) => ({ lineId, setupId, secondsPerPiece: 1 })),
    });
    const jobs = ["a", "b", "c", "d"].map((id) => jobOf(id, "1", "bare", either("bare")));
    const pins = [
      { orderId: "a", lineId: "2", startAt: null, sequence: 2 },
      { orderId: "b", lineId: "2", startAt: null, sequence: 1 },
      { orderId: "c", lineId: null, startAt: 7 * HOUR + 5, sequence: null },
    ];
    const plan = planOf(twoMouldPlant({ jobs, pins }));
    expect([lot(plan, "a").lineId, lot(plan, "b").lineId]).toEqual(["2", "2"]);
    expect(lot(plan, "b").end).toBeLessThanOrEqual(lot(plan, "a").start);
    expect(lot(plan, "c").start).toBe(7 * HOUR + 5);
  });
  it("keeps moulds out of use while they are served", () => {
    const moulds = twoMouldPlant({}).moulds.map((mould) => ({
      ...mould,
      outOfService: [{ copy: 0, start: 2 * HOUR, end: 9 * HOUR }],
    }));
    const plan = planOf(twoMouldPlant({ moulds, jobs: [jobOf("a", "1", "A")] }));
    expect(changesOf(plan)[0]!.mountStart).toBe(9 * HOUR);
    expect(lot(plan, "a").start).toBe(12 * HOUR);
  });
  it("mounts a mould before it is served, where it is back before the order may start", () => {
    const startsWith = (from: number): readonly [mountStart: number, run: number] => {
      const moulds = twoMouldPlant({}).moulds.map((mould) => ({
        ...mould,
        outOfService: [{ copy: 0, start: from, end: 30 * HOUR }],
      }));
      const jobs = [jobOf("a", "1", "A", { earliestStartAt: 28 * HOUR })];
      const plan = planOf(twoMouldPlant({ moulds, jobs }));
      return [changesOf(plan)[0]!.mountStart, lot(plan, "a").start];
    };
    // at once, as shortly before the run would be too late
    expect(startsWith(3 * HOUR)).toEqual([0, 30 * HOUR]);
    expect(startsWith(3 * HOUR - 1)).toEqual([30 * HOUR, 33 * HOUR]);
  });
});
