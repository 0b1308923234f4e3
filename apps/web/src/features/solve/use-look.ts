import type { PlanDocument, PlanResponse } from "@formweek/contracts";
import { useSearchParams } from "wouter";
import { useProvisional } from "../../sync/provisional.ts";
import { isRunning, useSolveRun } from "../../sync/queries.ts";
import { useFollowedSolve } from "../../sync/solves.ts";

/** A run's best plan so far as it is shown. */
export interface ShownProvisional {
  readonly number: number;
  readonly foundAt: string;
  readonly document: PlanDocument;
}

/** A planner's look at the best plan of a run while the run goes on. */
export interface Look {
  /** There is something to look at, or it is looked at. */
  readonly canLook: boolean;
  readonly isLooking: boolean;
  /** It is on the board. */
  readonly isProvisional: boolean;
  /** Null until it has been fetched, and while nobody looks. */
  readonly plan: ShownProvisional | null;
  readonly toggle: () => void;
}

/**
 * Whether the run's best plan so far is on the board is in the page's address, by the run: a reload or a sent link shows it, and the
 * next run is not looked at unasked. It stays on the board until the plan of the ended run is here.
 */
export function useLook(plantId: string, isPlanAwaited: boolean): Look {
  const [address, setAddress] = useSearchParams();
  const { data: run } = useSolveRun(plantId, useFollowedSolve(plantId));
  const isGoing = run !== undefined && (isRunning(run.state) || isPlanAwaited);
  const head = run?.provisional ?? null;
  const isWanted = run !== undefined && isGoing && address.get("look") === run.runId;
  const wanted = isWanted && run !== undefined ? { runId: run.runId, number: head?.number ?? 0 } : null;
  const { data } = useProvisional(plantId, wanted);
  const isLooking = isWanted && data !== null;
  const plan = isLooking ? (data ?? null) : null;
  return {
    canLook: isGoing && (isLooking || head !== null),
    isLooking,
    isProvisional: plan !== null,
    plan,
    toggle: () =>
      setAddress(
        (before) => {
          const next = new URLSearchParams(before);
          if (isLooking || run === undefined) next.delete("look");
          else next.set("look", run.runId);
          return next;
        },
        { replace: true },
      ),
  };
}

/** The plan that the board shows: the one that is looked at, else the standing one. */
export function planShown(standing: PlanResponse | null, { plan }: Look): PlanResponse | null {
  if (plan === null) return standing;
  return { planId: `provisional ${plan.number}`, createdAt: plan.foundAt, document: plan.document };
}
