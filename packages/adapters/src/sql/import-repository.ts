import type { ImportRepository } from "@formweek/application";
import { and, eq, isNull, lt } from "drizzle-orm";
import type { Database } from "./database.ts";
import { imports } from "./schema.ts";

/** Dry runs that wait to be accepted. */
export function importRepository(database: Database): ImportRepository {
  return {
    insert: async (stored) => {
      await database.insert(imports).values(stored);
    },
    getForUpdate: async (plantId, importId) => {
      const [row] = await database
        .select()
        .from(imports)
        .where(and(eq(imports.plantId, plantId), eq(imports.id, importId)))
        .for("update");
      return row ?? null;
    },
    accept: async (importId, acceptance) => {
      const accepted = await database
        .update(imports)
        .set({ accepted: acceptance, change: null })
        .where(and(eq(imports.id, importId), isNull(imports.accepted)))
        .returning({ id: imports.id });
      return accepted.length === 1;
    },
    forgetBefore: async (at) => {
      const forgotten = await database
        .delete(imports)
        .where(and(isNull(imports.accepted), lt(imports.createdAt, at)))
        .returning({ id: imports.id });
      return forgotten.length;
    },
  };
}
