import { type PlanBound, boundOf } from "@formweek/scheduler";
import type { Assembled } from "./assembled.ts";

/** Bounds that are remembered: those of a few plants that are worked on at a time. */
const MOST_KNOWN = 8;

/** By what the problem was made from, the one asked for last at the end. */
const known = new Map<string, PlanBound>();

/**
 * The bound on a problem, worked out anew only where the problem is another. A change by hand moves lots and leaves the problem
 * as it is, and on a large plant its bound takes longer than all else of the change. Whoever asks sees no difference but the time.
 */
export function knownBound(assembled: Assembled): PlanBound {
  const name = problemName(assembled);
  const bound = known.get(name) ?? boundOf(assembled.problem);
  known.delete(name);
  known.set(name, bound);
  const [oldest] = known.keys();
  if (known.size > MOST_KNOWN && oldest !== undefined) known.delete(oldest);
  return bound;
}

/**
 * Names all that a problem is made from: the records with their hours and held orders are in the hash; the instant that planning
 * starts from shows in the horizon alone; what is frozen is in the problem's pins alone; and so are prices where a run favours some.
 */
function problemName({ inputHash, problem: { horizon, pins, objective } }: Assembled): string {
  return JSON.stringify([inputHash, horizon, pins, objective]);
}
