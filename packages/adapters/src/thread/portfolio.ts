import type { SolveProgressReport } from "@formweek/application";
import { membersOf, type SolveParams } from "@formweek/scheduler";

/** Members by the thread that carries them, dealt in turn; no thread is without one. */
export function membersByThread(params: SolveParams, threads: number): readonly (readonly number[])[] {
  const members = membersOf(params);
  const used = Math.max(1, Math.min(threads, members.length));
  return Array.from({ length: used }, (_, thread) => members.filter((member) => member % used === thread));
}

/** Progress of all threads as one: work added up, the slowest share, the best plan. Null before the first report. */
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
