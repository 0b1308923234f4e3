import { useSyncExternalStore } from "react";

/** From when on a call is said to take long. */
const longMs = 4_000;

const listeners = new Set<() => void>();
let slow = 0;

function count(by: 1 | -1): void {
  slow += by;
  for (const listener of listeners) listener();
}

/** Watches a call from its start; answers what to do at its end. */
export function watchCall(): () => void {
  let isSlow = false;
  const timer = setTimeout(() => {
    isSlow = true;
    count(1);
  }, longMs);
  return () => {
    clearTimeout(timer);
    if (isSlow) count(-1);
  };
}

/** Whether some call has been waited for long. */
export function useIsSlow(): boolean {
  return useSyncExternalStore(
    (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    () => slow > 0,
  );
}
