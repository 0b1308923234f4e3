import type { ProvisionalRepository } from "@formweek/application";
import { and, eq, not } from "drizzle-orm";
import type { Database } from "./database.ts";
import { provisionalPlans, runs } from "./schema.ts";

/** Best plans so far, one for each run that is going on. */
export function provisionalRepository(database: Database): ProvisionalRepository {
  const { runId: ofRun, number, foundAt, document } = provisionalPlans;
  return {
    put: async (runId, plan) => {
      const [going] = await database
        .select({ id: runs.id })
        .from(runs)
        .where(and(eq(runs.id, runId), eq(runs.state, "running"), not(runs.stopRequested)));
      if (going === undefined) return false;
      await database
        .insert(provisionalPlans)
        .values({ runId, ...plan })
        .onConflictDoUpdate({ target: ofRun, set: { ...plan } });
      return true;
    },
    head: async (runId) => {
      const [row] = await database.select({ number, foundAt }).from(provisionalPlans).where(eq(ofRun, runId));
      return row ?? null;
    },
    get: async (runId) => {
      const [row] = await database
        .select({ number, foundAt, document })
        .from(provisionalPlans)
        .where(eq(ofRun, runId));
      return row ?? null;
    },
    forget: async (runId) => {
      await database.delete(provisionalPlans).where(eq(ofRun, runId));
    },
  };
}
