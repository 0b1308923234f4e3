import type { PlantFrame } from "../planning/plant-frame.ts";

/** An offer is good for so long: while it is talked over, nothing that it needs begins. */
const TALK_SECONDS = 15 * 60;
const MINUTE_SECONDS = 60;

/**
 * Instant before which nothing is offered: a quarter of an hour from now, on a whole minute, but not before the plan begins. A plant
 * that fixes its planning start and whose horizon is over, such as one kept for showing, is asked as of that start.
 */
export function offersFrom({ plant, window }: Pick<PlantFrame, "plant" | "window">, now: number): number {
  if (plant.planFrom !== null && now >= window.end) return window.start;
  const ahead = Math.ceil((now + TALK_SECONDS) / MINUTE_SECONDS) * MINUTE_SECONDS;
  return Math.max(window.start, now < window.start ? window.start : ahead);
}

/** The same for what is taken at once: an offer that is a few minutes old must not have moved by these minutes alone. */
export function heldFrom({ plant, window }: Pick<PlantFrame, "plant" | "window">, now: number): number {
  if (plant.planFrom !== null && now >= window.end) return window.start;
  return Math.max(window.start, Math.ceil(now / MINUTE_SECONDS) * MINUTE_SECONDS);
}
