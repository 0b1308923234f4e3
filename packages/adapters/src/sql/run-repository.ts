import type { RunRepository } from "@formweek/application";
import { and, asc, eq, inArray } from "drizzle-orm";
import type { Database } from "./database.ts";
import { runs } from "./schema.ts";

/** Solves asked for, one row each. */
export function runRepository(database: Database): RunRepository {
  return {
    insert: async (run) => {
      const inserted = await database
        .insert(runs)
        .values(run)
        .onConflictDoNothing()
        .returning({ id: runs.id });
      return inserted.length === 1;
    },
    get: async (runId) => {
      const [row] = await database.select().from(runs).where(eq(runs.id, runId));
      return row ?? null;
    },
    listActive: () =>
      database
        .select()
        .from(runs)
        .where(inArray(runs.state, ["queued", "running"]))
        .orderBy(asc(runs.requestedAt), asc(runs.id)),
    update: async (run) => {
      const { id, revision, ...rest } = run;
      const updated = await database
        .update(runs)
        .set({ ...rest, revision: revision + 1 })
        .where(and(eq(runs.id, id), eq(runs.revision, revision)))
        .returning({ id: runs.id });
      return updated.length === 1;
    },
    saveProgress: async (runId, progress, curve) => {
      await database
        .update(runs)
        .set({ progress, curve })
        .where(and(eq(runs.id, runId), eq(runs.state, "running")));
    },
  };
}
