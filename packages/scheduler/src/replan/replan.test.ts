import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { problemArb, SMALL_PLANT } from "../../../../tests/arbitraries/problem.ts";
import { HOUR, jobOf, twoMouldPlant } from "../../../../tests/helpers/two-mould-plant.ts";
import { stillEnv } from "../../../../tests/helpers/still-env.ts";
import {
  applyEdits,
  auditPlan,
  holdToPublished,
  movedOrders,
  solve,
  type Plan,
  type ProblemData,
} from "../index.ts";

function planOf(problem: ProblemData, startFrom?: Plan): Plan {
  const from = startFrom === undefined ? {} : { startFrom };
  const result = solve(problem, { seed: 3, maxSteps: 200, maxMs: null, ...from }, stillEnv());
  expect(result.status === "rejected" ? result.violations : result.status).toBe("planned");
  return (result as { plan: Plan }).plan;
}

const CALM = { frozenUntil: 0, movedLinePerOrder: 50, movedStartPerHour: 5 };

function withBreakdown(problem: ProblemData, lineId: string, hours: readonly [number, number]): ProblemData {
  const { start } = problem.horizon;
  const edit = {
    kind: "line down",
    lineId,
    from: start + hours[0] * HOUR,
    to: start + hours[1] * HOUR,
  } as const;
  const edited = applyEdits(problem, [edit]);
  if (!edited.ok) throw new Error(edited.fault.text);
  return edited.problem;
}

describe("planning anew from a published plan", () => {
  const bothLines = (id: string, part: Parameters<typeof jobOf>[3]): ReturnType<typeof jobOf> => {
    const job = jobOf(id, "1", "A", part);
    return { ...job, options: [...job.options, { lineId: "2", setupId: "A", secondsPerPiece: 1 }] };
  };

  it("moves nothing where nothing has happened", () => {
    fc.assert(
      fc.property(problemArb({ ...SMALL_PLANT, pins: false, terms: false }), (problem) => {
        const published = planOf(problem);
        const anew = planOf(
          holdToPublished(problem, published, { ...CALM, movedLinePerOrder: 1e6, movedStartPerHour: 1e6 }),
          published,
        );
        expect(movedOrders(published, anew, 0)).toEqual([]);
      }),
      { seed: 95, numRuns: 40 },
    );
  });

  it("waits out a short breakdown on its line, and leaves the line for a long one", () => {
    const problem = twoMouldPlant({ jobs: [bothLines("o", { dueAt: 5 * HOUR, pieces: 3600 })] });
    const published = planOf(problem);
    const lineId = published.lots[0]!.lineId;
    const short = withBreakdown(problem, lineId, [3, 4]);
    const patient = planOf(holdToPublished(short, published, CALM), published);
    expect(patient.lots[0]).toMatchObject({ lineId, start: 4 * HOUR });
    const long = withBreakdown(problem, lineId, [3, 40]);
    const moved = planOf(holdToPublished(long, published, CALM), published);
    expect(movedOrders(published, moved, 0)).toMatchObject([{ orderId: "o", changesLine: true }]);
  });

  it("keeps what is frozen to the second, and every plan passes the audit", () => {
    let frozen = 0;
    fc.assert(
      fc.property(
        problemArb({ ...SMALL_PLANT, pins: false }),
        fc.integer({ min: 0, max: 2 }),
        (problem, line) => {
          const published = planOf(problem);
          const broken = withBreakdown(problem, `L${line}`, [48, 72]);
          const frozenUntil = problem.horizon.start + 24 * HOUR;
          const held = holdToPublished(broken, published, { ...CALM, frozenUntil });
          const anew = planOf(held, published);
          expect(auditPlan(held, anew)).toEqual([]);
          for (const pin of held.pins) {
            const lot = anew.lots.find((each) => each.orderId === pin.orderId && each.lot === 0);
            if (lot === undefined) continue;
            expect(lot).toMatchObject({ lineId: pin.lineId, start: pin.startAt });
            frozen++;
          }
        },
      ),
      { seed: 96, numRuns: 60 },
    );
    expect(frozen).toBeGreaterThan(30);
  });

  it("names orders that come or go", () => {
    const problem = twoMouldPlant({ jobs: [jobOf("stays", "1", "A"), jobOf("goes", "2", "B")] });
    const published = planOf(problem);
    const changed = { ...problem, jobs: [problem.jobs[0]!, jobOf("comes", "2", "B")] };
    const moved = movedOrders(published, planOf(holdToPublished(changed, published, CALM), published), 0);
    expect(moved.filter((order) => order.from === null).map((order) => order.orderId)).toEqual(["comes"]);
    expect(moved.filter((order) => order.to === null).map((order) => order.orderId)).toEqual(["goes"]);
  });
});
