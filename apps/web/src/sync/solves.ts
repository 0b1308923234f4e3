import { SolveAccepted, type Concern } from "@formweek/contracts";
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

/** How long comparing plans takes: several are made. */
export const comparingSeconds = 30;

/** A run that a planner wants. */
export type WantedRun =
  | { readonly kind: "plan"; readonly seconds: number; readonly favour: Concern | null }
  | { readonly kind: "trade-off"; readonly seconds: number }
  /** `revision`: of the working plan in which the order is late. */
  | { readonly kind: "remedies"; readonly orderId: string; readonly revision: number }
  | { readonly kind: "scenarios"; readonly scenarioIds: readonly string[]; readonly seconds: number }
  | { readonly kind: "help"; readonly seconds: number };

/** Starts a run and follows it. */
export function useStartRun(plantId: string): UseMutationResult<SolveAccepted, CallError, WantedRun> {
  return useMutation({
    mutationFn: (wanted) => {
      const [path, body] = askOf(wanted);
      return call({
        path: `/plants/${encodeURIComponent(plantId)}/${path}`,
        answer: SolveAccepted,
        method: "POST",
        body,
      });
    },
    onSuccess: ({ runId }) => followSolve(plantId, runId),
  });
}

function askOf(wanted: WantedRun): readonly [path: string, body: Readonly<Record<string, unknown>>] {
  switch (wanted.kind) {
    case "plan": {
      const { seconds, favour } = wanted;
      return ["solves", favour === null ? { seconds } : { seconds, favour }];
    }
    case "trade-off":
      return ["trade-offs", { seconds: wanted.seconds }];
    case "remedies":
      return ["remedies", { orderId: wanted.orderId, revision: wanted.revision }];
    case "scenarios":
      return ["scenarios/solves", { scenarioIds: wanted.scenarioIds, seconds: wanted.seconds }];
    case "help":
      return ["scenarios/help", { seconds: wanted.seconds }];
  }
}

/** A run to be stopped; `keep`: number of the provisional plan that is to be kept, null: the best at the end. */
export interface WantedStop {
  readonly runId: string;
  readonly keep: number | null;
}

/** Ends a run early; the best so far is kept, or the one that is named. */
export function useStopSolve(plantId: string): UseMutationResult<unknown, CallError, WantedStop> {
  return useMutation({
    mutationFn: ({ runId, keep }) =>
      call({
        path: `/plants/${encodeURIComponent(plantId)}/solves/${encodeURIComponent(runId)}/stop`,
        answer: Anything,
        method: "POST",
        body: keep === null ? {} : { keep },
      }),
  });
}
