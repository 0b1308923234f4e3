import { workingTimeOf } from "@formweek/capacity-model";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { problemArb, SMALL_PLANT } from "../../../../tests/arbitraries/problem.ts";
import { DAY, HOUR, jobOf, lineOf, twoMouldPlant } from "../../../../tests/helpers/two-mould-plant.ts";
import { stillEnv } from "../../../../tests/helpers/still-env.ts";
import { solve, whyLate, whyThen, type LateChain, type Plan, type ProblemData } from "../index.ts";

function planOf(problem: ProblemData): Plan {
  const result = solve(problem, { seed: 5, maxSteps: 60, maxMs: null }, stillEnv());
  expect(result.status).toBe("planned");
  return (result as { plan: Plan }).plan;
}

function chainOf(problem: ProblemData, orderId: string): LateChain {
  const chain = whyThen(problem, planOf(problem), orderId);
  expect(chain).not.toBeNull();
  return chain!;
}

/** Kind and hours of each link. */
const hoursOf = (chain: LateChain): [string, number][] =>
  chain.links.map((link) => [link.kind, (link.to - link.from) / HOUR]);

describe("the chain that holds an order", () => {
  it("joins root and finish without a gap, in every random plant", () => {
    fc.assert(
      fc.property(problemArb({ ...SMALL_PLANT, jobs: 9 }), (problem) => {
        const plan = planOf(problem);
        for (const { orderId } of plan.lots) {
          const chain = whyThen(problem, plan, orderId)!;
          let at = chain.root.at;
          for (const link of chain.links) {
            expect(link.from).toBe(at);
            expect(link.to).toBeGreaterThan(link.from);
            at = link.to;
          }
          expect(at).toBe(chain.finishAt);
        }
      }),
      { seed: 71, numRuns: 150 },
    );
  });

  it("names every late order once, the worst first", () => {
    fc.assert(
      fc.property(problemArb({ ...SMALL_PLANT, jobs: 9 }), (problem) => {
        const plan = planOf(problem);
        const chains = whyLate(problem, plan);
        const late = problem.jobs.filter((job) =>
          plan.lots.some((lot) => lot.orderId === job.orderId && lot.finish > job.dueAt),
        );
        expect(chains).toHaveLength(late.length);
        expect(new Set(chains.map((chain) => chain.orderId))).toEqual(
          new Set(late.map((job) => job.orderId)),
        );
        const lateness = chains.map((chain) => chain.lateSeconds);
        expect(lateness).toEqual([...lateness].sort((a, b) => b - a));
      }),
      { seed: 72, numRuns: 60 },
    );
  });

  it("leads over a mould that exists once to the order that has it on another line", () => {
    const problem = twoMouldPlant({
      jobs: [
        jobOf("first", "1", "A", { pieces: 10 * 3600, weight: 100, dueAt: 13 * HOUR }),
        jobOf("second", "2", "A", { dueAt: HOUR }),
      ],
      // a team each, so that no change waits for setters
      teams: ["a", "b"].map((id) => ({ id, workingTime: workingTimeOf([[0, 10 * DAY]]) })),
    });
    const chain = chainOf(problem, "second");
    expect(chain.root).toMatchObject({ kind: "line free", lineId: "1", at: 0 });
    expect(hoursOf(chain)).toEqual([
      ["change", 3],
      ["run", 10],
      ["change", 1],
      ["carrying", 1 / 6],
      ["change", 3],
      ["run", 1],
    ]);
    expect(chain.links[1]).toMatchObject({ orderId: "first", lineId: "1" });
    expect(chain.links[3]).toMatchObject({ mouldId: "A", copy: 0, lineId: "2" });
    expect(chain.lateSeconds).toBe(chain.finishAt - HOUR);
  });

  it("leads over a mould whose release began after the change that waits for it", () => {
    const plant = twoMouldPlant({});
    const slow = { usesTrolley: false, scrapKg: 0, mountSeconds: 2 * HOUR, tailSeconds: HOUR };
    const [bare, a, b] = plant.changeClasses[0]!.matrix;
    const problem = twoMouldPlant({
      lines: [lineOf("1"), lineOf("2", { changeClassId: "slow", initial: { setupId: "B", copy: 0 } })],
      changes: [...plant.changes, { ...slow, dismountSeconds: 5 * HOUR }],
      changeClasses: [...plant.changeClasses, { id: "slow", matrix: [bare!, a!, [b![0]!, 3, -1]] }],
      jobs: [
        jobOf("first", "1", "A", { pieces: 10 * HOUR, weight: 100, dueAt: 13 * HOUR }),
        jobOf("second", "2", "A", { dueAt: HOUR }),
      ],
      teams: ["a", "b"].map((id) => ({ id, workingTime: workingTimeOf([[0, 10 * DAY]]) })),
    });
    const chain = chainOf(problem, "second");
    // line 2 takes 5 h to dismount B, and begins that before line 1 begins the 1 h that frees A
    expect(hoursOf(chain)).toEqual([
      ["change", 3],
      ["run", 10],
      ["change", 1],
      ["carrying", 1 / 6],
      ["change", 3],
      ["run", 1],
    ]);
    expect(chain.links[4]).toMatchObject({ lineId: "2", workSeconds: 3 * HOUR });
  });

  it("leads over the one team to the change that it does before", () => {
    const problem = twoMouldPlant({
      jobs: [
        jobOf("first", "1", "A", { weight: 100, dueAt: 4 * HOUR }),
        jobOf("second", "2", "B", { dueAt: HOUR }),
      ],
    });
    // 2 h of mounting on line 1, then the team's 2 h and the tail on line 2
    expect(hoursOf(chainOf(problem, "second"))).toEqual([
      ["change", 2],
      ["change", 3],
      ["run", 1],
    ]);
  });

  it("names setters that are off, a line that is closed, and conditioning", () => {
    const problem = twoMouldPlant({
      lines: [
        lineOf("1", {
          workingTime: workingTimeOf([
            [0, 12 * HOUR],
            [20 * HOUR, 10 * DAY],
          ]),
        }),
      ],
      teams: [{ id: "setters", workingTime: workingTimeOf([[6 * HOUR, 9 * HOUR]]) }],
      jobs: [jobOf("only", "1", "A", { pieces: 4 * 3600, conditioningSeconds: 5 * HOUR, dueAt: HOUR })],
    });
    const chain = chainOf(problem, "only");
    // setters come at 6 h, mount until 8 h, tail until 9 h, 3 h of running, closed from 12 h to 20 h, 1 h of running
    expect(hoursOf(chain)).toEqual([
      ["setters off", 6],
      ["change", 3],
      ["run", 12],
      ["conditioning", 5],
    ]);
    expect(chain.links[2]).toMatchObject({ workSeconds: 4 * HOUR, closedSeconds: 8 * HOUR });
  });

  it("ends at the arrival of the sheet or at the order's earliest start", () => {
    const sheets = [{ id: "PP", stockKg: 0, arrivals: [{ at: 2 * DAY, kg: 1000 }] }];
    const bySheet = twoMouldPlant({ sheets, jobs: [jobOf("o", "1", "A", { sheetId: "PP", dueAt: HOUR })] });
    expect(chainOf(bySheet, "o")).toMatchObject({
      root: { kind: "sheet arrival", sheetId: "PP", at: 2 * DAY },
      links: [{ kind: "run" }],
    });
    const byOrder = twoMouldPlant({
      jobs: [jobOf("o", "1", "A", { earliestStartAt: 2 * DAY, dueAt: HOUR })],
    });
    expect(chainOf(byOrder, "o").root).toMatchObject({ kind: "earliest start", at: 2 * DAY });
  });

  it("is null for an order that the plan does not make", () => {
    const problem = twoMouldPlant({ jobs: [jobOf("o", "1", "A")] });
    expect(whyThen(problem, planOf(problem), "other")).toBeNull();
  });
});
