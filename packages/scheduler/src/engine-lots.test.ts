import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { problemArb, SMALL_PLANT } from "../../../tests/arbitraries/problem.ts";
import { HOUR, jobOf, lineOf, twoMouldPlant } from "../../../tests/helpers/two-mould-plant.ts";
import { stillEnv } from "../../../tests/helpers/still-env.ts";
import { boundOf, solve, type Job, type Plan, type PlannedLot, type ProblemData } from "./index.ts";
import { compile } from "./problem/compile.ts";
import { Decoder } from "./timing/decoder.ts";
import { emptySequences, insertOption } from "./timing/sequences.ts";

function planOf(problem: ProblemData, maxSteps = 400, startFrom?: Plan): Plan {
  const from = startFrom === undefined ? {} : { startFrom };
  const result = solve(problem, { seed: 2, maxSteps, maxMs: null, ...from }, stillEnv());
  expect(result.status === "rejected" ? result.violations : result.status).toBe("planned");
  return (result as { plan: Plan }).plan;
}

const lotsOf = (plan: Plan, orderId: string): PlannedLot[] =>
  plan.lots.filter((lot) => lot.orderId === orderId);

const bothLines = (setupId: string): Job["options"] =>
  ["1", "2"].map((lineId) => ({ lineId, setupId, secondsPerPiece: 1 }));

/** Eight hours on either line, to be packed by 1,000. */
const large = jobOf("large", "1", "bare", {
  pieces: 8 * HOUR + 7,
  dueAt: 5 * HOUR,
  options: bothLines("bare"),
  lots: { most: 3, leastPieces: 2000, unitPieces: 1000 },
});

/** Two copies of each mould, so that both lines may have one. */
const twoCopies = twoMouldPlant({}).moulds.map((mould) => ({ ...mould, copies: 2 }));

describe("an order that may be split", () => {
  it("is split where it would be late in one piece, into whole packing units but for one lot", () => {
    const plan = planOf(twoMouldPlant({ jobs: [large] }));
    const lots = lotsOf(plan, "large");
    expect(new Set(lots.map(({ lineId }) => lineId))).toEqual(new Set(["1", "2"]));
    expect(plan.objective.total).toBe(0);
    expect(lots.filter(({ pieces }) => pieces % 1000 !== 0)).toHaveLength(1);
    const { lots: _, ...whole } = large;
    expect(planOf(twoMouldPlant({ jobs: [whole] })).objective.total).toBeGreaterThan(30);
  });
  it("stays whole where a split would only add a change", () => {
    const calm = { ...large, dueAt: 30 * HOUR, options: bothLines("A") };
    const plan = planOf(twoMouldPlant({ moulds: twoCopies, jobs: [calm] }));
    expect(lotsOf(plan, "large")).toHaveLength(1);
    expect(plan.segments.filter(({ kind }) => kind === "change")).toHaveLength(1);
  });
  it("is joined again when the reason to split it is gone", () => {
    const plant = (dueAt: number): ProblemData =>
      twoMouldPlant({ moulds: twoCopies, jobs: [{ ...large, dueAt, options: bothLines("A") }] });
    const hurried = planOf(plant(9 * HOUR));
    expect(lotsOf(hurried, "large").length).toBeGreaterThan(1);
    expect(lotsOf(planOf(plant(30 * HOUR), 0, hurried), "large")).toHaveLength(2);
    expect(lotsOf(planOf(plant(30 * HOUR), 400, hurried), "large")).toHaveLength(1);
  });
  it("is planned in lots where no line is open long enough for all of it", () => {
    const problem = twoMouldPlant({ jobs: [large], lines: [lineOf("1"), lineOf("2")] });
    const plan = planOf({ ...problem, horizon: { start: 0, end: 5 * HOUR } });
    expect(plan.unplanned).toEqual([]);
    expect(lotsOf(plan, "large").length).toBeGreaterThan(1);
  });
  it("keeps the exact start of its first lot, and the line of all of them", () => {
    const pinned = (lineId: string | null, startAt: number | null): Plan =>
      planOf(twoMouldPlant({ jobs: [large], pins: [{ orderId: "large", lineId, startAt, sequence: null }] }));
    expect(lotsOf(pinned(null, HOUR), "large")[0]).toMatchObject({ lot: 0, start: HOUR });
    expect(new Set(lotsOf(pinned("2", null), "large").map(({ lineId }) => lineId))).toEqual(new Set(["2"]));
  });
});

/** Cheapest of every sequence of every order whole or in two halves; tiny problems only. */
function cheapestOfHalves(problem: ProblemData): number {
  const compiled = compile(problem);
  const { jobs, lots, options } = compiled;
  const decoder = new Decoder(compiled, false);
  const sequences = emptySequences(compiled);
  let best = Infinity;
  const chosen: number[] = [];
  const used = new Set<number>();
  const extend = (): void => {
    sequences.length.fill(0);
    for (const option of chosen) {
      const line = options.line[option]!;
      insertOption(sequences, line, sequences.length[line]!, option);
    }
    best = Math.min(best, decoder.decode(sequences));
    for (let lot = 0; lot < lots.count; lot++) {
      if (used.has(lot) || sequences.pieces[lot] === 0) continue;
      used.add(lot);
      for (let option = lots.firstOption[lot]!; option < lots.firstOption[lot + 1]!; option++) {
        chosen.push(option);
        extend();
        chosen.pop();
      }
      used.delete(lot);
    }
  };
  const halve = (job: number): void => {
    if (job === jobs.count) {
      extend();
      return;
    }
    halve(job + 1);
    const first = lots.firstLot[job]!;
    if (lots.firstLot[job + 1]! - first < 2) return;
    const unit = lots.unitPieces[job]!;
    const half = Math.floor(jobs.pieces[job]! / 2 / unit) * unit;
    if (half < lots.leastPieces[job]!) return;
    sequences.pieces[first] = jobs.pieces[job]! - half;
    sequences.pieces[first + 1] = half;
    halve(job + 1);
    sequences.pieces[first] = jobs.pieces[job]!;
    sequences.pieces[first + 1] = 0;
  };
  halve(0);
  return best;
}

describe("tiny plants with orders that may be split", () => {
  /** Everything is late at once and each line may have each mould: splits pay. */
  const hurriedArb = problemArb({ ...SMALL_PLANT, lines: 2, jobs: 2, moulds: 2, days: 4, pins: false }).map(
    (problem) => ({
      ...problem,
      moulds: problem.moulds.map((mould) => ({ ...mould, copies: 2 })),
      jobs: problem.jobs.map((job) => ({
        ...job,
        dueAt: problem.horizon.start,
        lots: { most: 2, leastPieces: 1, unitPieces: 48 },
      })),
    }),
  );
  it(
    "cost no more than the best of whole and halved orders (56 of 60 at least), and no less than the bound",
    { timeout: 60_000 },
    () => {
      const gaps: number[] = [];
      let split = 0;
      fc.assert(
        fc.property(hurriedArb, (problem) => {
          const plan = planOf(problem, 1500);
          gaps.push(plan.objective.total - cheapestOfHalves(problem));
          if (plan.lots.some(({ lot }) => lot > 0)) split++;
          expect(boundOf(problem).total).toBeLessThanOrEqual(plan.objective.total + 1e-6);
        }),
        { seed: 35, numRuns: 60 },
      );
      expect(gaps.filter((gap) => gap <= 1e-4).length).toBeGreaterThanOrEqual(56);
      expect(split).toBeGreaterThan(5);
    },
  );
});
