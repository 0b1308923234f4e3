import { runNotFound } from "../not-found.ts";
import type { ProvisionalPlan } from "../ports/provisional-repository.ts";
import { ok, refused } from "../result.ts";
import type { PlantInput, UseCase } from "../use-case.ts";

/** The best plan that a run has found so far; null where it has none yet or has ended, which is no fault of who asks. */
export const getProvisional: UseCase<PlantInput & { readonly runId: string }, ProvisionalPlan | null> = {
  role: "viewer",
  run: (ports, { plantId, runId }) =>
    ports.store.read(async ({ runs, provisional }) => {
      const run = await runs.get(runId);
      if (run === null || run.plantId !== plantId) return refused(runNotFound(runId));
      return ok(await provisional.get(runId));
    }),
};
