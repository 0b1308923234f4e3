import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { problemArb, SMALL_PLANT } from "../../../../tests/arbitraries/problem.ts";
import { stillEnv } from "../../../../tests/helpers/still-env.ts";
import { HOUR, jobOf, lineOf, twoMouldPlant } from "../../../../tests/helpers/two-mould-plant.ts";
import { candidateMoves, openEdits, solve, type Plan, type ProblemData } from "../index.ts";

function planOf(problem: ProblemData): Plan {
  const result = solve(problem, { seed: 5, maxSteps: 40, maxMs: null }, stillEnv());
  expect(result.status).toBe("planned");
  return (result as { plan: Plan }).plan;
}

describe("other places for a late order", () => {
  it("are on lines that may make it, before lots that run there, and never refused for their place in a random plant", () => {
    fc.assert(
      fc.property(problemArb({ ...SMALL_PLANT, jobs: 8 }), (problem) => {
        const plan = planOf(problem);
        const opened = openEdits(problem, plan);
        if (!opened.ok) throw new Error("a planned problem has no faults");
        for (const { orderId, options } of problem.jobs) {
          const moves = candidateMoves(problem, plan, orderId, 20);
          expect(moves.length).toBeLessThanOrEqual(20);
          for (const move of moves) {
            if (move.kind !== "move") throw new Error("moves alone are put forward");
            expect(options.some(({ lineId }) => lineId === move.lineId)).toBe(true);
            const result = opened.value.apply(move);
            const code = result.ok ? null : result.error.code;
            expect(["place-unknown", "lot-unknown", "line-unknown", "does-not-fit"]).not.toContain(code);
          }
        }
      }),
      { seed: 91, numRuns: 60 },
    );
  });

  it("bring an order in time that was put behind another", () => {
    const options = ["1", "2"].map((lineId) => ({ lineId, setupId: "A", secondsPerPiece: 1 }));
    const problem = twoMouldPlant({
      lines: [lineOf("1", { initial: { setupId: "A", copy: 0 } }), lineOf("2")],
      jobs: [
        jobOf("long", "1", "A", { options, pieces: 20 * HOUR }),
        jobOf("late", "1", "A", { options, dueAt: 2 * HOUR }),
      ],
    });
    const opened = openEdits(problem, planOf(problem));
    if (!opened.ok) throw new Error("the problem has no faults");
    const last = opened.value.apply({ kind: "move", orderId: "late", lot: 0, lineId: "1", before: null });
    if (!last.ok) throw new Error("the lot can be last");
    const again = openEdits(problem, last.value);
    const finishes = candidateMoves(problem, last.value, "late", 10).flatMap((move) => {
      const tried = again.ok ? again.value.apply(move) : null;
      return tried?.ok === true
        ? tried.value.lots.filter((lot) => lot.orderId === "late").map((lot) => lot.finish)
        : [];
    });
    expect(Math.min(...finishes)).toBe(HOUR);
  });

  it("are none for an order that is in time or that is not there", () => {
    const problem = twoMouldPlant({ jobs: [jobOf("o", "1", "A")] });
    const plan = planOf(problem);
    expect(candidateMoves(problem, plan, "o", 9)).toEqual([]);
    expect(candidateMoves(problem, plan, "x", 9)).toEqual([]);
  });
});
