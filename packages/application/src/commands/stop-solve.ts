import { runNotFound } from "../not-found.ts";
import type { RunState } from "../ports/run-repository.ts";
import { ok, refused } from "../result.ts";
import type { PlantInput, UseCase } from "../use-case.ts";
import { changeRun } from "../jobs/change-run.ts";
import { solveJobKey } from "./start-run.ts";

export interface StopSolveInput extends PlantInput {
  readonly runId: string;
}

/** Ends a run early; its best plan so far is kept. A run that has ended stays as it is, which is no fault. */
export const stopSolve: UseCase<StopSolveInput, { readonly state: RunState }> = {
  role: "planner",
  run: async (ports, { plantId, runId }) => {
    const found = await ports.store.read(({ runs }) => runs.get(runId));
    if (found === null || found.plantId !== plantId) return refused(runNotFound(runId));
    const stopping = await changeRun(ports, runId, (run) => ({ ...run, stopRequested: true }));
    if (stopping === null) return ok({ state: found.state });
    await ports.queue.cancel(solveJobKey(runId));
    return ok({ state: stopping.state });
  },
};
