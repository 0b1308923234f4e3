import type { PlanDocument } from "@formweek/contracts";
import { secondsOf } from "./board-plan.ts";

const DAY_HOURS = 24;
const HOUR = 3600;

/** How much of a plan can be frozen when it is published, in days; 0: nothing. Two to five are common practice, no source. */
export const freezeDays = { nothing: 0, day: 1, twoDays: 2, threeDays: 3, fiveDays: 5 } as const;
export type FreezeChoice = keyof typeof freezeDays;

/**
 * Until when runs are frozen by a choice, seconds since the epoch: so many days of 24 hours from the plan's start, or from
 * the next whole hour where the plan has begun; no later than the plan's end. Null: nothing is.
 */
export function frozenUntil(
  { horizon }: Pick<PlanDocument, "horizon">,
  choice: FreezeChoice,
  now: number,
): number | null {
  const days = freezeDays[choice];
  if (days === 0) return null;
  const [start, end] = [secondsOf(horizon.start), secondsOf(horizon.end)];
  const from = Math.max(start, Math.ceil(now / HOUR) * HOUR);
  return Math.min(end, from + days * DAY_HOURS * HOUR);
}

/** How many lots of a plan start before an instant. */
export function runsBefore({ lots }: Pick<PlanDocument, "lots">, until: number): number {
  return lots.filter((lot) => secondsOf(lot.start) < until).length;
}
