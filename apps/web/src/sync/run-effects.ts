import type { BoardState } from "../state/board-state.ts";
import type { Effect } from "../state/intents.ts";
import type { TimeView } from "../kernels/time-scale.ts";

const storeKey = (plantId: string): string => `formweek.view.${plantId}`;

/** The browser's store is slow for every frame of a move: a view is written once the move rests so long, or the page goes. */
const restMs = 100;

let unwritten: { readonly plantId: string; readonly view: TimeView } | null = null;
let timer: ReturnType<typeof setTimeout> | undefined;

function writeView(): void {
  clearTimeout(timer);
  if (unwritten !== null) sessionStorage.setItem(storeKey(unwritten.plantId), JSON.stringify(unwritten.view));
  unwritten = null;
}
window.addEventListener("pagehide", writeView);

/** Keeps the view until the tab closes; edits are the business of whoever listens to the board's effects. */
export function runEffect(effect: Effect, state: BoardState): void {
  if (effect.kind !== "keep view") return;
  const plantId = state.plan?.document.plant.id;
  if (plantId === undefined) return;
  unwritten = { plantId, view: effect.view };
  clearTimeout(timer);
  timer = setTimeout(writeView, restMs);
}

/** The view kept for a plant in this tab; null when there is none. */
export function keptView(plantId: string): TimeView | null {
  writeView();
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
