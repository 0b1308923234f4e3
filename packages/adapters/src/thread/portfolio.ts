import type { SolveProgressReport } from "@formweek/application";
import type { SolveParams, SolveResult } from "@formweek/scheduler";

/** Parameters of each search: the first has the given seed, the others the seeds after it. */
export function searchesOf(params: SolveParams, threads: number): readonly SolveParams[] {
  return Array.from({ length: Math.max(1, threads) }, (_, index) => ({
    ...params,
    seed: params.seed + index,
  }));
}

/** The plan with the lowest total, ties to the earlier search; without any plan, what the first search said. At least one result. */
export function bestResult(results: readonly SolveResult[]): SolveResult {
  return results.reduce((best, result) => (isBetter(result, best) ? result : best));
}

function isBetter(result: SolveResult, best: SolveResult): boolean {
  if (result.status !== "planned") return false;
  return best.status !== "planned" || result.plan.objective.total < best.plan.objective.total;
}

/** Progress of all searches as one: work added up, the slowest share, the best plan. Null before the first report. */
export function mergedProgress(reports: readonly (SolveProgressReport | null)[]): SolveProgressReport | null {
  const known = reports.filter((report) => report !== null);
  const [first, ...others] = known;
  if (first === undefined) return null;
  let best = first;
  for (const report of others) if (report.bestTotal < best.bestTotal) best = report;
  return {
    share: known.length < reports.length ? 0 : Math.min(...known.map((report) => report.share)),
    steps: known.reduce((sum, report) => sum + report.steps, 0),
    elapsedMs: Math.max(...known.map((report) => report.elapsedMs)),
    bestTotal: best.bestTotal,
    lateOrders: best.lateOrders,
  };
}
