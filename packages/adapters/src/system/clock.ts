import type { Clock } from "@formweek/application";
import { performance } from "node:perf_hooks";

/** The machine's clock. */
export const systemClock: Clock = {
  now: () => Math.floor(Date.now() / 1000),
  monotonicMs: () => performance.now(),
};
