import { and, eq } from "drizzle-orm";
import type { Database } from "./database.ts";
import type { holdLists, orderBooks, pinLists } from "./schema.ts";

/** Tables that hold one revision a plant for a list of records. */
type ListTable = typeof orderBooks | typeof pinLists | typeof holdLists;

/** Moves a plant's list on by one revision, which also locks it; null when it is not at the expected one. */
export async function takeRevision(
  database: Database,
  list: ListTable,
  plantId: string,
  expected: number,
): Promise<number | null> {
  const taken =
    expected === 0
      ? await database.insert(list).values({ plantId, revision: 1 }).onConflictDoNothing().returning()
      : await database
          .update(list)
          .set({ revision: expected + 1 })
          .where(and(eq(list.plantId, plantId), eq(list.revision, expected)))
          .returning();
  return taken[0]?.revision ?? null;
}
