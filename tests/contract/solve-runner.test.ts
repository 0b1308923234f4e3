import { startThread } from "@formweek/adapters/system";
import { SolveThreadDied, threadSolveRunner } from "@formweek/adapters/thread";
import type { SolveProgressReport, SolveTask } from "@formweek/application";
import { auditPlan, solve, type Plan, type SolveParams, type SolveResult } from "@formweek/scheduler";
import { createHash } from "node:crypto";
import { Worker } from "node:worker_threads";
import { describe, expect, test } from "vitest";
import { calmProblem } from "../fixtures/calm-problem.ts";

const problem = calmProblem();
const runner = threadSolveRunner({ startThread, progressEveryMs: 50, plansEveryMs: 50, stopGraceMs: 60_000 });
const tenMinutes: SolveParams = { seed: 11, maxSteps: null, maxMs: 600_000 };
const fewSteps: SolveParams = { seed: 11, maxSteps: 300, maxMs: null };

function task(overrides: Partial<SolveTask>): SolveTask {
  return {
    problem,
    params: fewSteps,
    threads: 1,
    onProgress: () => undefined,
    signal: new AbortController().signal,
    ...overrides,
  };
}

/** The same search in this thread. */
function solveHere(params: SolveParams): SolveResult {
  return solve(problem, params, {
    monotonicMs: () => 0,
    isCancelled: () => false,
    onProgress: () => undefined,
  });
}

function planOf(result: SolveResult) {
  if (result.status !== "planned") throw new Error(`no plan: ${JSON.stringify(result)}`);
  return result.plan;
}

/** Total and hash of every byte: a difference in two long plans is told in one line. */
function fingerprint(plan: Plan): string {
  const hash = createHash("sha256").update(JSON.stringify(plan)).digest("hex");
  return `total ${plan.objective.total}, ${plan.segments.length} segments, ${hash}`;
}

describe("the solver in a thread", () => {
  test("a step budget gives the plan that the engine gives in any thread, byte for byte", async () => {
    const there = planOf(await runner.solve(task({})));
    expect(fingerprint(there)).toBe(fingerprint(planOf(solveHere(fewSteps))));
  });

  test("a faulty problem comes back as its faults", async () => {
    const faulty = { ...problem, horizon: { start: problem.horizon.end, end: problem.horizon.start } };
    const result = await runner.solve(task({ problem: faulty }));
    expect(result.status).toBe("faulty-problem");
  });

  test("progress tells shares from 0 to 1, steps and totals that never get worse; a stop keeps the best plan", async () => {
    const stop = new AbortController();
    const reports: SolveProgressReport[] = [];
    const onProgress = (progress: SolveProgressReport): void => {
      reports.push(progress);
      if (reports.length === 4) stop.abort("cancelled");
    };
    const result = await runner.solve(task({ params: tenMinutes, onProgress, signal: stop.signal }));
    expect(result).toMatchObject({ status: "planned", stopped: "cancelled" });
    expect(reports.length).toBeGreaterThanOrEqual(4);
    for (const [index, { share, steps, bestTotal }] of reports.entries()) {
      expect(share).toBeGreaterThanOrEqual(0);
      expect(share).toBeLessThanOrEqual(1);
      expect(steps).toBeGreaterThanOrEqual(reports[index - 1]?.steps ?? 0);
      expect(bestTotal).toBeLessThanOrEqual(reports[index - 1]?.bestTotal ?? Infinity);
    }
    expect(planOf(result).objective.total).toBeLessThanOrEqual(reports.at(-1)?.bestTotal ?? 0);
  });

  test("a task that was stopped before it began still ends with a plan", async () => {
    const result = await runner.solve(task({ params: tenMinutes, signal: AbortSignal.abort("cancelled") }));
    expect(planOf(result).lots.length).toBeGreaterThan(0);
  });

  test("four searches on a step budget come to the same plan in one, two, three and four threads", async () => {
    const params = { ...fewSteps, members: 4 };
    const here = fingerprint(planOf(solveHere(params)));
    for (const threads of [1, 2, 3, 4])
      expect(fingerprint(planOf(await runner.solve(task({ params, threads }))))).toBe(here);
  });

  test("there are as many searches as threads where nothing else is asked", async () => {
    const together = planOf(await runner.solve(task({ threads: 3 })));
    expect(fingerprint(together)).toBe(fingerprint(planOf(solveHere({ ...fewSteps, members: 3 }))));
  });

  test("several searches on a time budget end by it and report shares that never fall", async () => {
    const shares: number[] = [];
    const result = await runner.solve(
      task({
        params: { seed: 11, maxSteps: null, maxMs: 1500, members: 4 },
        threads: 2,
        onProgress: ({ share }) => void shares.push(share),
      }),
    );
    expect(result).toMatchObject({ status: "planned", stopped: "time" });
    expect(shares).toEqual([...shares].sort((a, b) => a - b));
  });

  test("a stop reaches every thread", async () => {
    const stop = new AbortController();
    const result = runner.solve(
      task({
        params: tenMinutes,
        threads: 2,
        signal: stop.signal,
        onProgress: () => stop.abort("cancelled"),
      }),
    );
    expect(await result).toMatchObject({ status: "planned", stopped: "cancelled" });
  });
});

describe("plans on the way", () => {
  test.each([1, 2])(
    "of %i threads pass the audit, and each is better than the one before",
    async (threads) => {
      const stop = new AbortController();
      const plans: Plan[] = [];
      const onBetterPlan = (plan: Plan): void => {
        plans.push(plan);
        if (plans.length === 3) stop.abort("cancelled");
      };
      const asked = task({ params: tenMinutes, threads, onBetterPlan, signal: stop.signal });
      const last = planOf(await runner.solve(asked));
      for (const plan of plans) expect(auditPlan(problem, plan)).toEqual([]);
      const totals = [...plans, last].map(({ objective }) => objective.total);
      expect(totals).toEqual([...totals].sort((a, b) => b - a));
      expect(new Set(totals.slice(0, 3)).size).toBe(3);
    },
  );

  test("leave the plan of a step budget as it is", async () => {
    const plans: Plan[] = [];
    const there = await runner.solve(task({ onBetterPlan: (plan) => void plans.push(plan) }));
    expect(fingerprint(planOf(there))).toBe(fingerprint(planOf(solveHere(fewSteps))));
  });
});

describe("a thread that goes wrong", () => {
  const endings: Readonly<Record<string, string>> = {
    throws: "throw new Error('engine bug')",
    "exits without a result": "process.exit(7)",
    "runs out of memory": "const kept = []; for (;;) kept.push(new Array(100_000).fill(kept.length))",
  };
  const startBroken = (code: string) => (_: string, __: string, data: unknown) =>
    new Worker(code, { eval: true, workerData: data, resourceLimits: { maxOldGenerationSizeMb: 32 } });

  for (const [ending, code] of Object.entries(endings)) {
    test(`one that ${ending} fails the task, and this process goes on`, async () => {
      const options = { progressEveryMs: 50, plansEveryMs: 50, stopGraceMs: 60_000 };
      const broken = threadSolveRunner({ ...options, startThread: startBroken(code) });
      await expect(broken.solve(task({ threads: 2 }))).rejects.toBeInstanceOf(SolveThreadDied);
      expect((await runner.solve(task({}))).status).toBe("planned");
    });
  }

  test("one that does not listen is ended by force after the grace", async () => {
    const deaf = threadSolveRunner({
      startThread: startBroken("for (;;);"),
      progressEveryMs: 50,
      plansEveryMs: 50,
      stopGraceMs: 100,
    });
    const stop = new AbortController();
    const result = deaf.solve(task({ params: tenMinutes, signal: stop.signal }));
    stop.abort("cancelled");
    await expect(result).rejects.toBeInstanceOf(SolveThreadDied);
  });
});
