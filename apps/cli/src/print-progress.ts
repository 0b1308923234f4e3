import type { SolveProgressReport } from "@formweek/application";

/** How far a search is, in one line. */
export function progressText({ share, steps, bestTotal, lateOrders }: SolveProgressReport): string {
  return `${Math.round(share * 100)} %, ${steps} steps, ${lateOrders} late, total ${bestTotal.toFixed(0)}`;
}
