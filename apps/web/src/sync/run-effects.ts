import type { BoardState } from "../state/board-state.ts";
import type { Effect } from "../state/intents.ts";
import type { TimeView } from "../kernels/time-scale.ts";

const storeKey = (plantId: string): string => `formweek.view.${plantId}`;

/** Keeps the view until the tab closes; edits are the business of whoever listens to the board's effects. */
export function runEffect(effect: Effect, state: BoardState): void {
  if (effect.kind !== "keep view") return;
  const plantId = state.plan?.document.plant.id;
  if (plantId !== undefined) sessionStorage.setItem(storeKey(plantId), JSON.stringify(effect.view));
}

/** The view kept for a plant in this tab; null when there is none. */
export function keptView(plantId: string): TimeView | null {
  try {
    const kept: unknown = JSON.parse(sessionStorage.getItem(storeKey(plantId)) ?? "null");
    if (typeof kept !== "object" || kept === null || !("startAt" in kept) || !("secondsPerPx" in kept))
      return null;
    const { startAt, secondsPerPx } = kept;
    return typeof startAt === "number" && typeof secondsPerPx === "number" ? { startAt, secondsPerPx } : null;
  } catch {
    return null;
  }
}

/** True when this page came by a reload, not by a link or by Back. */
export function wasReloaded(): boolean {
  return performance
    .getEntriesByType("navigation")
    .some((entry) => entry instanceof PerformanceNavigationTiming && entry.type === "reload");
}
