import type { SolveEnv } from "@formweek/scheduler";

/** An environment whose clock stands still: only steps end a search. */
export function stillEnv(): SolveEnv {
  return { monotonicMs: () => 0, isCancelled: () => false, onProgress: () => undefined };
}
