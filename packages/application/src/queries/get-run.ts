import { runNotFound } from "../not-found.ts";
import type { ProvisionalHead } from "../ports/provisional-repository.ts";
import type { SolveRun } from "../ports/run-repository.ts";
import { ok, refused } from "../result.ts";
import type { PlantInput, UseCase } from "../use-case.ts";

/** A run, and which is its best plan so far; null where it has none or has ended. */
export interface SeenRun extends SolveRun {
  readonly provisional: ProvisionalHead | null;
}

/** A run as it stands. */
export const getRun: UseCase<PlantInput & { readonly runId: string }, SeenRun> = {
  role: "viewer",
  run: async (ports, { plantId, runId }) => {
    const { run, head } = await ports.store.read(async ({ runs, provisional }) => ({
      run: await runs.get(runId),
      head: await provisional.head(runId),
    }));
    return run === null || run.plantId !== plantId
      ? refused(runNotFound(runId))
      : ok({ ...run, provisional: head });
  },
};
