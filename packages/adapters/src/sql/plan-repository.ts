import type { PlanRepository } from "@formweek/application";
import { and, desc, eq, getTableColumns } from "drizzle-orm";
import type { Database } from "./database.ts";
import { plans } from "./schema.ts";

/** Finished plans; one a run, whoever finishes first. */
export function planRepository(database: Database): PlanRepository {
  const { document: _, ...headColumns } = getTableColumns(plans);
  return {
    insertOnce: async (plan) => {
      const inserted = await database
        .insert(plans)
        .values(plan)
        .onConflictDoNothing({ target: plans.runId })
        .returning({ id: plans.id });
      if (inserted[0] !== undefined) return inserted[0].id;
      const [earlier] = await database
        .select({ id: plans.id })
        .from(plans)
        .where(eq(plans.runId, plan.runId));
      return earlier?.id ?? plan.id;
    },
    get: async (plantId, planId) => {
      const [row] = await database
        .select()
        .from(plans)
        .where(and(eq(plans.plantId, plantId), eq(plans.id, planId)));
      return row ?? null;
    },
    latest: async (plantId) => {
      const [row] = await database
        .select()
        .from(plans)
        .where(eq(plans.plantId, plantId))
        .orderBy(desc(plans.createdAt), desc(plans.id))
        .limit(1);
      return row ?? null;
    },
    list: (plantId, limit) =>
      database
        .select(headColumns)
        .from(plans)
        .where(eq(plans.plantId, plantId))
        .orderBy(desc(plans.createdAt), desc(plans.id))
        .limit(limit),
  };
}
