import type { Work } from "@formweek/scheduler";

/** Longest stretch that long work keeps others waiting, ms. */
const SLICE_MS = 5;

/** Drives long work on slice by slice, so that the process answers others in between. */
export async function inSlices<T>(work: Work<T>, monotonicMs: () => number): Promise<T> {
  let began = monotonicMs();
  for (;;) {
    const step = work.next();
    if (step.done === true) return step.value;
    if (monotonicMs() - began < SLICE_MS) continue;
    await pause();
    began = monotonicMs();
  }
}

/** Lets the process answer others. */
export const pause = (): Promise<void> => new Promise((resolve) => setImmediate(resolve));
