import { startingParams, tradeOffOf, tradeOffRuns } from "@formweek/scheduler";
import type { PlannedResult, ProblemData, SolveParams, TradeOffResult } from "@formweek/scheduler";
import type { SolveProgressReport, SolveRunner } from "../ports/solve-runner.ts";

export interface TradeOffAsk {
  readonly problem: ProblemData;
  /** Budget of all solves together. */
  readonly params: SolveParams;
  readonly threads: number;
}

export interface TradeOffWatch {
  /** Abort: the plans found so far. */
  readonly signal: AbortSignal;
  readonly onProgress: (progress: SolveProgressReport) => void;
}

/** The engine's trade-off run with each solve off the event loop: several plans, no one of which beats another. */
export async function findTradeOff(
  solver: SolveRunner,
  { problem, params, threads }: TradeOffAsk,
  { signal, onProgress }: TradeOffWatch,
): Promise<TradeOffResult> {
  const runs = tradeOffRuns(problem, params);
  const results: PlannedResult[] = [];
  for (const [index, run] of runs.entries()) {
    if (index > 0 && signal.aborted) break;
    const result = await solver.solve({
      problem: run.problem,
      params: startingParams(run, results),
      threads,
      onProgress: (progress) => onProgress({ ...progress, share: (index + progress.share) / runs.length }),
      signal,
    });
    if (result.status === "cancelled" && results.length > 0) break;
    if (result.status !== "planned") return result;
    results.push(result);
  }
  const [base, ...others] = results;
  return tradeOffOf(problem, [base!, ...others]);
}
