import type { PinnedPlace } from "../ports/pin-repository.ts";

/** A line, a start or both as a place; null when both are missing. */
export function pinnedPlace(lineId: string | null, startAt: number | null): PinnedPlace | null {
  if (lineId !== null) return { lineId, startAt };
  return startAt === null ? null : { lineId, startAt };
}
