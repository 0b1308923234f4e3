import { appError } from "../errors.ts";
import { KEEPABLE } from "../jobs/provisional-keeper.ts";
import { runNotFound } from "../not-found.ts";
import type { ProvisionalHead } from "../ports/provisional-repository.ts";
import type { RunState } from "../ports/run-repository.ts";
import { ok, refused } from "../result.ts";
import type { PlantInput, UseCase } from "../use-case.ts";
import { changeRun } from "../jobs/change-run.ts";
import { solveJobKey } from "./start-run.ts";

export interface StopSolveInput extends PlantInput {
  readonly runId: string;
  /** Number of the provisional plan that is to be kept; null: the best at the end. */
  readonly keep: number | null;
}

/**
 * Ends a run early. Its best plan so far is kept, or just the provisional plan that is named, which may be one of the newest few. A
 * run that has ended stays as it is, which is no fault.
 */
export const stopSolve: UseCase<StopSolveInput, { readonly state: RunState }> = {
  role: "planner",
  run: async (ports, { plantId, runId, keep }) => {
    const found = await ports.store.read(({ runs }) => runs.get(runId));
    if (found === null || found.plantId !== plantId) return refused(runNotFound(runId));
    const stopping = await changeRun(
      ports,
      runId,
      (run) => run,
      async ({ provisional }, run) => {
        const newest = await provisional.head(runId);
        const isKept = keep === null || (newest !== null && isKeepable(keep, newest));
        const isStop = isKept && !run.stopRequested;
        return { run: isStop ? { ...run, stopRequested: true, keep } : run, events: [] };
      },
    );
    if (stopping === null) return ok({ state: found.state });
    if (!stopping.stopRequested) return refused(planOutrun);
    await ports.queue.cancel(solveJobKey(runId));
    return ok({ state: stopping.state });
  },
};

const isKeepable = (number: number, newest: ProvisionalHead): boolean =>
  number > newest.number - KEEPABLE && number <= newest.number;

const planOutrun = appError("plan-outrun", {
  title: "The run was not stopped.",
  cause: "It has found better plans meanwhile, and the one that was to be kept is not there any more.",
  remedy: "Look at its best plan as it is now, then stop it again.",
});
