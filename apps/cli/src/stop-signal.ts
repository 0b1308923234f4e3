import { performance } from "node:perf_hooks";

/** Launchers hand the key press of their terminal on to the process, which then sees it twice. */
const SAME_PRESS_MS = 1000;

/**
 * Aborted by Ctrl-C, by a request to end, or when the terminal is closed, so that what is found so far can be kept. From
 * the call on the process no longer ends by itself then; a second press, a second later or more, ends it at once.
 */
export function stopSignal(): AbortSignal {
  const controller = new AbortController();
  let firstMs = 0;
  const stop = (): void => {
    if (!controller.signal.aborted) {
      firstMs = performance.now();
      controller.abort();
    } else if (performance.now() - firstMs > SAME_PRESS_MS) process.exit(130);
  };
  for (const name of ["SIGINT", "SIGTERM", "SIGHUP"] as const) process.on(name, stop);
  return controller.signal;
}
