import { SolveAccepted } from "@formweek/contracts";
import { useMutation, type UseMutationResult } from "@tanstack/react-query";
import { useSyncExternalStore } from "react";
import { z } from "zod";
import type { CallError } from "./client.ts";
import { call } from "./client.ts";

const Anything = z.unknown();

/** Which solve of each plant this browser follows; kept over a reload. */
const storeKey = (plantId: string): string => `formweek.solve.${plantId}`;
const listeners = new Set<() => void>();

export function followSolve(plantId: string, runId: string | null): void {
  if (runId === null) localStorage.removeItem(storeKey(plantId));
  else localStorage.setItem(storeKey(plantId), runId);
  for (const listener of listeners) listener();
}

/** The run that is followed, also one that was started before the page was loaded or by someone else. */
export function useFollowedSolve(plantId: string): string | null {
  return useSyncExternalStore(
    (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    () => localStorage.getItem(storeKey(plantId)),
  );
}

/** How long planning thinks unless something else is chosen. */
export const usualSeconds = 15;

/** Starts a solve of so many seconds and follows it. */
export function useStartSolve(plantId: string): UseMutationResult<SolveAccepted, CallError, number> {
  return useMutation({
    mutationFn: (seconds) =>
      call({
        path: `/plants/${encodeURIComponent(plantId)}/solves`,
        answer: SolveAccepted,
        method: "POST",
        body: { seconds },
      }),
    onSuccess: ({ runId }) => followSolve(plantId, runId),
  });
}

/** Ends a solve early; the best plan so far is kept. */
export function useStopSolve(plantId: string): UseMutationResult<unknown, CallError, string> {
  return useMutation({
    mutationFn: (runId) =>
      call({
        path: `/plants/${encodeURIComponent(plantId)}/solves/${encodeURIComponent(runId)}/stop`,
        answer: Anything,
        method: "POST",
      }),
  });
}
