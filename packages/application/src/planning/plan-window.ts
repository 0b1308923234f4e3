import { instantOfLocalText } from "@formweek/capacity-model";
import type { Plant, TimeWindow } from "@formweek/capacity-model";

const MINUTE_SECONDS = 60;
const WEEK_SECONDS = 7 * 86_400;

/** From the plant's planning start, or from now to the whole minute, over its horizon weeks of 168 hours. */
export function planWindow(plant: Plant, now: number): TimeWindow {
  const fixed = plant.planFrom === null ? null : instantOfLocalText(plant.timeZone, plant.planFrom);
  const start = fixed ?? Math.ceil(now / MINUTE_SECONDS) * MINUTE_SECONDS;
  return { start, end: start + plant.horizonWeeks * WEEK_SECONDS };
}
