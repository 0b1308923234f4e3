import { isOpen, workingBetween, workingTimeOf } from "@formweek/capacity-model";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { problemArb, SMALL_PLANT } from "../../../../tests/arbitraries/problem.ts";
import { DAY, HOUR, jobOf, lineOf, twoMouldPlant } from "../../../../tests/helpers/two-mould-plant.ts";
import { stillEnv } from "../../../../tests/helpers/still-env.ts";
import {
  applyEdits,
  openEdits,
  solve,
  whyIdle,
  type GapCause,
  type IdleGap,
  type Plan,
  type ProblemData,
  type ProblemEdit,
} from "../index.ts";

function planOf(problem: ProblemData): Plan {
  const result = solve(problem, { seed: 5, maxSteps: 60, maxMs: null }, stillEnv());
  expect(result.status).toBe("planned");
  return (result as { plan: Plan }).plan;
}

const gapsOf = (problem: ProblemData, plan: Plan): readonly IdleGap[] =>
  problem.lines.flatMap((line) => whyIdle(problem, plan, line.id));

/** Cause and hours of each stretch of a line's first gap. */
function firstGap(problem: ProblemData, lineId: string): readonly [GapCause, number][] {
  const [gap] = whyIdle(problem, planOf(problem), lineId);
  return (gap?.stretches ?? []).map(({ cause, from, to }) => [cause, (to - from) / HOUR]);
}

/** A team for each line, so that no change waits for setters. */
const teamEach = ["a", "b"].map((id) => ({ id, workingTime: workingTimeOf([[0, 10 * DAY]]) }));

describe("the spells in which a line does nothing", () => {
  it("are all that its segments leave of the horizon, and each is explained without a hole, in every random plant", () => {
    fc.assert(
      fc.property(problemArb({ ...SMALL_PLANT, jobs: 9 }), (problem) => {
        const plan = planOf(problem);
        const { start, end } = problem.horizon;
        for (const line of problem.lines) {
          const gaps = whyIdle(problem, plan, line.id);
          const busy = plan.segments.filter((segment) => segment.lineId === line.id);
          const spent = [
            ...busy.map((segment) => segment.end - segment.start),
            ...gaps.map((gap) => gap.to - gap.from),
          ];
          expect(spent.reduce((sum, seconds) => sum + seconds, 0)).toBe(end - start);
          for (const gap of gaps) {
            expect(busy.some((segment) => segment.start < gap.to && gap.from < segment.end)).toBe(false);
            if (gap.next === null) {
              expect(gap.stretches).toEqual([]);
              expect(busy.some((segment) => segment.kind === "run" && segment.start >= gap.to)).toBe(false);
              continue;
            }
            let at = gap.from;
            for (const stretch of gap.stretches) {
              expect(stretch.from).toBe(at);
              expect(stretch.to).toBeGreaterThan(stretch.from);
              at = stretch.to;
            }
            expect(at).toBe(gap.to);
          }
        }
      }),
      { seed: 81, numRuns: 150 },
    );
  });

  it("say nothing that calendars and other lines do not bear out, in every random plant", () => {
    const seen = new Set<string>();
    fc.assert(
      fc.property(problemArb({ ...SMALL_PLANT, jobs: 9 }), (problem) => {
        const plan = planOf(problem);
        for (const gap of gapsOf(problem, plan))
          for (const { cause, from, to } of gap.stretches) {
            seen.add(cause.kind);
            expect(isBorneOut(problem, plan, cause, { from, to })).toBe(true);
          }
      }),
      { seed: 82, numRuns: 150 },
    );
    expect(seen.size).toBeGreaterThan(10);
  });

  it("end sooner when what they wait for is there: by the decoder's own timing of the same sequences", () => {
    const tried = new Map<string, { all: number; sooner: number }>();
    fc.assert(
      fc.property(problemArb({ ...SMALL_PLANT, jobs: 9, pins: false }), (problem) => {
        const plan = planOf(problem);
        for (const gap of gapsOf(problem, plan)) {
          const edit = whatHelps(gap);
          if (edit === null) continue;
          const edited = applyEdits(problem, [edit]);
          const opened = edited.ok ? openEdits(edited.problem, plan) : null;
          if (opened?.ok !== true) throw new Error("the edit can be made");
          const { kind } = gap.stretches[0]!.cause;
          const count = tried.get(kind) ?? { all: 0, sooner: 0 };
          tried.set(kind, count);
          count.all++;
          if (startOfNext(opened.value.plan, gap) < startOfNext(plan, gap)) count.sooner++;
        }
      }),
      { seed: 83, numRuns: 150 },
    );
    const share = (kind: GapCause["kind"]): number => {
      const { all, sooner } = tried.get(kind)!;
      expect(all).toBeGreaterThan(10);
      return sooner / all;
    };
    expect(share("line closed")).toBe(1);
    for (const kind of ["earliest start", "sheet arrival"] as const) expect(share(kind)).toBeGreaterThan(0.9);
    // what is shared may go to another line's step first, or the lot behind the change waits for something else
    for (const kind of ["setters off", "setters busy", "mould elsewhere"] as const)
      expect(share(kind)).toBeGreaterThan(0.5);
  });

  it("name the mould's other line and its order there, then the way of the mould", () => {
    const problem = twoMouldPlant({
      jobs: [
        jobOf("first", "1", "A", { pieces: 10 * 3600, weight: 100, dueAt: 13 * HOUR }),
        jobOf("second", "2", "A", { dueAt: HOUR }),
      ],
      teams: teamEach,
    });
    const lot = { orderId: "first", lot: 0 };
    // line 1 mounts for 3 h with the tail, runs 10 h, dismounts 1 h; the mould is carried for 10 minutes
    expect(firstGap(problem, "2")).toEqual([
      [{ kind: "mould elsewhere", mouldId: "A", copy: 0, lineId: "1", lot }, 14],
      [{ kind: "mould carried", mouldId: "A", copy: 0 }, 1 / 6],
    ]);
  });

  it("name the line at which the only team is", () => {
    const problem = twoMouldPlant({
      jobs: [
        jobOf("first", "1", "A", { weight: 100, dueAt: 4 * HOUR }),
        jobOf("second", "2", "B", { dueAt: HOUR }),
      ],
    });
    expect(firstGap(problem, "2")).toEqual([[{ kind: "setters busy", teamId: "setters", lineId: "1" }, 2]]);
  });

  it("tell setters off, closed hours, late sheet and a release apart", () => {
    const open = workingTimeOf([[4 * HOUR, 10 * DAY]]);
    const job = jobOf("o", "1", "A", { dueAt: HOUR });
    const started = { setupId: "A", copy: 0 };
    expect(
      firstGap(twoMouldPlant({ teams: [{ id: "setters", workingTime: open }], jobs: [job] }), "1"),
    ).toEqual([[{ kind: "setters off", teamId: "setters" }, 4]]);
    expect(
      firstGap(
        twoMouldPlant({ lines: [lineOf("1", { workingTime: open, initial: started })], jobs: [job] }),
        "1",
      ),
    ).toEqual([[{ kind: "line closed", lineId: "1" }, 4]]);
    const sheets = [{ id: "PP", stockKg: 0, arrivals: [{ at: DAY, kg: 1000 }] }];
    const lines = [lineOf("1", { initial: started })];
    expect(firstGap(twoMouldPlant({ lines, sheets, jobs: [{ ...job, sheetId: "PP" }] }), "1")).toEqual([
      [{ kind: "sheet arrival", sheetId: "PP" }, 24],
    ]);
    expect(firstGap(twoMouldPlant({ lines, jobs: [{ ...job, earliestStartAt: DAY }] }), "1")).toEqual([
      [{ kind: "earliest start", orderId: "o" }, 24],
    ]);
  });

  it("say that the line closes too soon to be worth warming up twice", () => {
    const hours = workingTimeOf([
      [0, HOUR],
      [10 * HOUR, 10 * DAY],
    ]);
    const line = { workingTime: hours, initial: { setupId: "A", copy: 0 }, restartWarmUpSeconds: 2 * HOUR };
    const problem = twoMouldPlant({
      lines: [lineOf("1", line)],
      jobs: [jobOf("o", "1", "A", { pieces: 5 * 3600 })],
    });
    expect(firstGap(problem, "1")).toEqual([
      [{ kind: "stop too near", lineId: "1" }, 1],
      [{ kind: "line closed", lineId: "1" }, 9],
    ]);
  });

  it("name the pool where other lines have its operators", () => {
    const part = { poolId: "P", operatorsHundredths: 100 };
    const problem = twoMouldPlant({
      lines: [
        lineOf("1", { ...part, initial: { setupId: "A", copy: 0 } }),
        lineOf("2", { ...part, initial: { setupId: "B", copy: 0 } }),
      ],
      pools: [{ id: "P", crews: [{ workingTime: workingTimeOf([[0, 10 * DAY]]), hundredths: 100 }] }],
      jobs: [jobOf("first", "1", "A", { weight: 100, dueAt: HOUR }), jobOf("second", "2", "B")],
    });
    expect(firstGap(problem, "2")).toEqual([[{ kind: "no operators", lineId: "2", poolId: "P" }, 1]]);
  });

  it("name, where a line has nothing more to do, the orders that it could take over", () => {
    const options = ["1", "2"].map((lineId) => ({ lineId, setupId: "A", secondsPerPiece: 1 }));
    const problem = twoMouldPlant({
      lines: [lineOf("1", { initial: { setupId: "A", copy: 0 } }), lineOf("2")],
      jobs: [
        jobOf("early", "1", "A", { options, dueAt: HOUR }),
        jobOf("late", "1", "A", { options, dueAt: HOUR }),
        jobOf("other", "1", "A", { dueAt: HOUR }),
      ],
    });
    const plan = planOf(problem);
    const [gap] = whyIdle(problem, plan, "2");
    expect(gap).toMatchObject({ from: 0, to: 10 * DAY, next: null, stretches: [] });
    expect(new Set(gap?.couldRunHere)).toEqual(new Set(["early", "late"]));
  });

  it("are none on a line that is not there", () => {
    const problem = twoMouldPlant({ jobs: [jobOf("o", "1", "A")] });
    expect(whyIdle(problem, planOf(problem), "9")).toEqual([]);
  });
});

function startOfNext(plan: Plan, { next }: IdleGap): number {
  const lot = plan.lots.find((each) => each.orderId === next?.orderId && each.lot === next.lot);
  return lot?.start ?? Infinity;
}

/** What takes away the only cause of a gap. */
function whatHelps({ stretches, lineId, from, to, next }: IdleGap): ProblemEdit | null {
  const [first] = stretches;
  if (stretches.length !== 1 || first === undefined || next === null) return null;
  switch (first.cause.kind) {
    case "line closed":
      return { kind: "extra shift", lineId, from, to };
    case "setters off":
    case "setters busy":
      return { kind: "extra team", from, to: to + 40 * DAY };
    case "earliest start":
      return { kind: "earlier start", orderId: next.orderId, at: from };
    case "sheet arrival":
      return { kind: "earlier sheet", sheetId: first.cause.sheetId, seconds: to - from };
    case "mould elsewhere":
      return { kind: "mould copy", mouldId: first.cause.mouldId };
    default:
      return null;
  }
}

function isBorneOut(
  problem: ProblemData,
  plan: Plan,
  cause: GapCause,
  { from, to }: { readonly from: number; readonly to: number },
): boolean {
  const line = (id: string) => problem.lines.find((each) => each.id === id)!;
  const changes = plan.segments.flatMap((segment) => (segment.kind === "change" ? [segment] : []));
  switch (cause.kind) {
    case "line closed":
      return workingBetween(line(cause.lineId).workingTime, from, to) === 0;
    case "setters off":
      return workingBetween(problem.teams.find(({ id }) => id === cause.teamId)!.workingTime, from, to) === 0;
    case "setters busy":
      return changes.some(
        (change) =>
          change.lineId === cause.lineId && change.teamId === cause.teamId && change.tailStart >= to,
      );
    case "trolley busy":
      return changes.some(
        (change) =>
          change.lineId === cause.lineId && change.trolleyId === cause.trolleyId && change.tailStart >= to,
      );
    case "mould elsewhere":
      return changes.some(
        ({ lineId, mouldOut, mountStart }) =>
          lineId === cause.lineId &&
          mouldOut?.mouldId === cause.mouldId &&
          mouldOut.copy === cause.copy &&
          mountStart >= to,
      );
    case "no operators":
    case "stop too near":
      return isOpen(line(cause.lineId).workingTime, from);
    default:
      return true;
  }
}
