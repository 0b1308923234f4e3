import type { FrozenPlan } from "../planning/frozen-plan.ts";
import { instantOfIso } from "../planning/iso-instant.ts";

/** A run of the plan that was given out that keeps its place. Instants, seconds. */
export interface FrozenRun {
  readonly orderId: string;
  readonly lineId: string;
  readonly start: number;
  readonly end: number;
}

/** Runs that are frozen from the planning start on, the earliest first. */
export function frozenRunsOf(frozen: FrozenPlan | null, from: number): readonly FrozenRun[] {
  if (frozen === null) return [];
  return frozen.document.lots
    .map(({ orderId, lineId, start, end }) => ({
      orderId,
      lineId,
      start: instantOfIso(start) ?? 0,
      end: instantOfIso(end) ?? 0,
    }))
    .filter(({ start }) => start >= from && start < frozen.frozenUntil)
    .sort((a, b) => a.start - b.start);
}
