import type { StopReason } from "../result.ts";
import type { SolveEnv, SolveParams } from "../solve-env.ts";
import type { Search } from "./search-method.ts";

export interface IterationEnd {
  readonly steps: number;
  readonly stopped: StopReason;
}

/** Least time between two progress reports, ms. */
const REPORT_EVERY_MS = 100;

/** Share by which sums of many terms may differ in their last digits. */
const ROUNDING = 1e-9;

export interface Iteration {
  readonly search: Search;
  readonly params: SolveParams;
  readonly env: SolveEnv;
  readonly startedMs: number;
  /** Money that no plan can go below. */
  readonly floor: number;
  readonly report: (steps: number, elapsedMs: number, share: number) => void;
}

/**
 * Runs a search to its budget. The clock decides only when to stop and, without a step budget, how far the budget is spent;
 * with a step budget alone every choice is a function of seed and steps.
 */
export function iterate({ search, params, env, startedMs, floor, report }: Iteration): IterationEnd {
  const { maxSteps, maxMs } = params;
  let steps = 0;
  let share = 0;
  let lastReport = startedMs;
  const optimal = (): boolean => search.bestMoney() <= floor + ROUNDING * Math.max(1, floor);
  for (;;) {
    if (steps % search.stepsPerLook === 0) {
      const now = env.monotonicMs();
      if (env.isCancelled()) return { steps, stopped: "cancelled" };
      if (optimal()) return { steps, stopped: "optimal" };
      if (maxMs !== null && now - startedMs >= maxMs) return { steps, stopped: "time" };
      if (maxSteps === null && maxMs !== null) share = (now - startedMs) / maxMs;
      if (now - lastReport >= REPORT_EVERY_MS) {
        lastReport = now;
        const shown = maxSteps === null ? share : steps / Math.max(1, maxSteps);
        report(steps, now - startedMs, Math.min(1, shown));
      }
    }
    if (maxSteps !== null) {
      if (steps >= maxSteps) return { steps, stopped: "steps" };
      share = steps / maxSteps;
    }
    search.step(share);
    steps++;
  }
}
