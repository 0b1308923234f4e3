import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { problemArb } from "../../../../tests/arbitraries/problem.ts";
import { compile, withJob } from "./compile.ts";
import type { CompiledProblem } from "./compiled-problem.ts";
import { JobRoom } from "./job-room.ts";

/** The jobs, lots and options of a problem as far as another one has them. */
function cutTo(problem: CompiledProblem, like: CompiledProblem): unknown {
  const cut = (part: object, pattern: object): unknown =>
    Object.fromEntries(
      Object.entries(part).map(([name, column]) => {
        const same = (pattern as Record<string, unknown>)[name];
        if (typeof column !== "object") return [name, same];
        return [name, (column as number[]).slice(0, (same as number[]).length)];
      }),
    );
  const { jobs, lots, options, terms, data } = problem;
  return {
    jobs: cut(jobs, like.jobs),
    lots: cut(lots, like.lots),
    options: cut(options, like.options),
    terms,
    data,
  };
}

describe("a problem with room for one job more", () => {
  it("is, with one job after the other written into it, what each joined on gives", () => {
    let shortened = 0;
    fc.assert(
      fc.property(problemArb(), (problem) => {
        const last = problem.jobs.slice(-3);
        const without = new Set(last.map(({ orderId }) => orderId));
        const before = compile({
          ...problem,
          jobs: problem.jobs.slice(0, -3),
          pins: problem.pins.filter((pin) => !without.has(pin.orderId)),
        });
        const room = new JobRoom(before, 4);
        for (const job of last) {
          expect(room.fits(job)).toBe(true);
          const isTimedAsBefore = room.write(job);
          const joined = withJob(before, job);
          expect(cutTo(room.problem, joined)).toEqual(cutTo(joined, joined));
          const sheets = joined.jobs.sheet.subarray(0, before.jobs.count);
          expect(isTimedAsBefore).toBe(sheets.every((sheet, j) => sheet === before.jobs.sheet[j]));
          if (!isTimedAsBefore) shortened++;
        }
      }),
      { seed: 106, numRuns: 100 },
    );
    expect(shortened).toBeGreaterThan(5);
  });
});
