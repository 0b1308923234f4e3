import type { HandEdit, PlanMaking, PlanRepository } from "@formweek/application";
import { and, desc, eq, getTableColumns } from "drizzle-orm";
import type { Database } from "./database.ts";
import { plans } from "./schema.ts";

/** Finished plans; one a run, whoever finishes first, and one a change by hand. */
export function planRepository(database: Database): PlanRepository {
  const { document: _, ...headColumns } = getTableColumns(plans);
  return {
    insertOnce: async (plan) => {
      const inserted = await database
        .insert(plans)
        .values(plan)
        .onConflictDoNothing({ target: plans.runId })
        .returning({ id: plans.id });
      if (inserted[0] !== undefined || plan.runId === null) return plan.id;
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
      return row === undefined ? null : { ...row, ...makingOf(row) };
    },
    list: async (plantId, limit) => {
      const rows = await database
        .select(headColumns)
        .from(plans)
        .where(eq(plans.plantId, plantId))
        .orderBy(desc(plans.createdAt), desc(plans.id))
        .limit(limit);
      return rows.map((row) => ({ ...row, ...makingOf(row) }));
    },
  };
}

interface MakingColumns {
  readonly id: string;
  readonly runId: string | null;
  readonly parentId: string | null;
  readonly edit: HandEdit | null;
}

/** The table's check lets a row have a run, or a parent with an edit, and nothing else. */
function makingOf({ id, runId, parentId, edit }: MakingColumns): PlanMaking {
  if (runId !== null) return { runId, parentId: null, edit: null };
  if (parentId === null || edit === null) throw new Error(`Plan ${id} has neither a run nor a parent.`);
  return { runId, parentId, edit };
}
