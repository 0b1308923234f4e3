import type { ScenarioRepository, StoredScenario } from "@formweek/application";
import { and, asc, eq, getTableColumns, sql } from "drizzle-orm";
import type { Database } from "./database.ts";
import { scenarios } from "./schema.ts";

const { plantId: ofPlant, sketch, ...columns } = getTableColumns(scenarios);

/** Scenarios as rows; their plans come only where they are asked for. */
export function scenarioRepository(database: Database): ScenarioRepository {
  const named = (plantId: string, id: string) => and(eq(ofPlant, plantId), eq(scenarios.id, id));
  const get = async (plantId: string, id: string): Promise<StoredScenario | null> => {
    const [row] = await database.select(columns).from(scenarios).where(named(plantId, id));
    return row ?? null;
  };
  return {
    list: (plantId) =>
      database
        .select(columns)
        .from(scenarios)
        .where(eq(ofPlant, plantId))
        .orderBy(asc(sql`${scenarios.id} collate "C"`)),
    get,
    sketch: async (plantId, id) => {
      const [row] = await database.select({ sketch }).from(scenarios).where(named(plantId, id));
      return row?.sketch ?? null;
    },
    insert: async (plantId, scenario) => {
      await database.insert(scenarios).values({ plantId, ...scenario });
    },
    rewrite: async (plantId, { id, revision, name, changes, by, at }) => {
      const written = await database
        .update(scenarios)
        .set({ revision: revision + 1, name, changes, by, at, adopted: null })
        .where(and(named(plantId, id), eq(scenarios.revision, revision)))
        .returning({ revision: scenarios.revision });
      return written.length === 1;
    },
    remove: async (plantId, id, revision) => {
      const removed = await database
        .delete(scenarios)
        .where(and(named(plantId, id), eq(scenarios.revision, revision)))
        .returning({ id: scenarios.id });
      return removed.length === 1;
    },
    putOutcome: async (plantId, id, { outcome, sketch: found }) => {
      const written = await database
        .update(scenarios)
        .set({ outcome, sketch: found })
        .where(named(plantId, id))
        .returning({ id: scenarios.id });
      return written.length === 1;
    },
    markAdopted: async (plantId, { id, revision }, adopted) => {
      await database
        .update(scenarios)
        .set({ adopted })
        .where(and(named(plantId, id), eq(scenarios.revision, revision)));
    },
  };
}
