import { useSyncExternalStore } from "react";

const narrow = window.matchMedia("(max-width: 640px)");

function subscribe(onChange: () => void): () => void {
  narrow.addEventListener("change", onChange);
  return () => narrow.removeEventListener("change", onChange);
}

/** Whether the window is as narrow as a phone's, told anew when that changes. */
export function useNarrowScreen(): boolean {
  return useSyncExternalStore(subscribe, () => narrow.matches);
}
