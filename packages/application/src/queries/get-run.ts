import { runNotFound } from "../not-found.ts";
import type { SolveRun } from "../ports/run-repository.ts";
import { ok, refused } from "../result.ts";
import type { PlantInput, UseCase } from "../use-case.ts";

/** A run as it stands. */
export const getRun: UseCase<PlantInput & { readonly runId: string }, SolveRun> = {
  role: "viewer",
  run: async (ports, { plantId, runId }) => {
    const run = await ports.store.read(({ runs }) => runs.get(runId));
    return run === null || run.plantId !== plantId ? refused(runNotFound(runId)) : ok(run);
  },
};
