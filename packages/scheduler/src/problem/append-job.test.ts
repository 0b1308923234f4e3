import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { problemArb } from "../../../../tests/arbitraries/problem.ts";
import { compile, withJob } from "./compile.ts";

describe("a compiled problem with one job more", () => {
  it("is what compiling all of its jobs gives", () => {
    fc.assert(
      fc.property(problemArb(), (problem) => {
        const last = problem.jobs.at(-1)!;
        const pins = problem.pins.filter((pin) => pin.orderId !== last.orderId);
        const before = compile({ ...problem, pins, jobs: problem.jobs.slice(0, -1) });
        expect(withJob(before, last)).toEqual(compile({ ...problem, pins }));
      }),
      { seed: 95, numRuns: 200 },
    );
  });
});
