import type { HoldEnding, HoldRepository, StoredHold } from "@formweek/application";
import { type SQL, and, asc, desc, eq, inArray, isNotNull, lte, ne } from "drizzle-orm";
import type { Database } from "./database.ts";
import { takeRevision } from "./list-revision.ts";
import { holdLists, holds } from "./schema.ts";

/** Holds as rows, one list with one revision a plant. */
export function holdRepository(database: Database): HoldRepository {
  const one = async (plantId: string, where: SQL): Promise<StoredHold | null> => {
    const [row] = await database
      .select()
      .from(holds)
      .where(and(eq(holds.plantId, plantId), where));
    return row === undefined ? null : holdOf(row);
  };
  return {
    list: async (plantId) => {
      const [list] = await database.select().from(holdLists).where(eq(holdLists.plantId, plantId));
      if (list === undefined) return { revision: 0, holds: [] };
      const rows = await database
        .select()
        .from(holds)
        .where(and(eq(holds.plantId, plantId), eq(holds.state, "held")))
        .orderBy(asc(holds.until), asc(holds.id));
      return { revision: list.revision, holds: rows.map(holdOf) };
    },
    ended: async (plantId, limit) => {
      const rows = await database
        .select()
        .from(holds)
        .where(and(eq(holds.plantId, plantId), ne(holds.state, "held")))
        .orderBy(desc(holds.endedAt), desc(holds.id))
        .limit(limit);
      return rows.map(holdOf);
    },
    get: (plantId, holdId) => one(plantId, eq(holds.id, holdId)),
    withKey: (plantId, key) => one(plantId, eq(holds.key, key)),
    stockShares: async (plantId) => {
      const rows = await database
        .select({ orderId: holds.orderNumber, pieces: holds.stockPieces })
        .from(holds)
        .where(and(eq(holds.plantId, plantId), isNotNull(holds.orderNumber)))
        .orderBy(asc(holds.id));
      return rows.flatMap(({ orderId, pieces }) => (orderId === null ? [] : [{ orderId, pieces }]));
    },
    plantsWithExpired: async (at) => {
      const rows = await database
        .selectDistinct({ plantId: holds.plantId })
        .from(holds)
        .where(and(eq(holds.state, "held"), lte(holds.until, at)));
      return rows.map(({ plantId }) => plantId);
    },
    insert: async (plantId, hold, expectedRevision) => {
      const revision = await takeRevision(database, holdLists, plantId, expectedRevision);
      if (revision === null) return null;
      const { ending, ...rest } = hold;
      await database.insert(holds).values({ plantId, ...rest, ...endingColumns(ending) });
      return revision;
    },
    end: async (plantId, { holdIds, ending }, expectedRevision) => {
      const revision = await takeRevision(database, holdLists, plantId, expectedRevision);
      if (revision === null) return null;
      await database
        .update(holds)
        .set(endingColumns(ending))
        .where(and(eq(holds.plantId, plantId), eq(holds.state, "held"), inArray(holds.id, [...holdIds])));
      return revision;
    },
  };
}

function endingColumns(ending: HoldEnding | null) {
  if (ending === null) return { state: "held" as const, endedBy: null, endedAt: null, orderNumber: null };
  const { state, by, at, orderNumber } = ending;
  return { state, endedBy: by, endedAt: at, orderNumber };
}

function holdOf({
  plantId: _,
  state,
  endedBy,
  endedAt,
  orderNumber,
  ...rest
}: typeof holds.$inferSelect): StoredHold {
  if (state === "held" || endedAt === null) return { ...rest, ending: null };
  return { ...rest, ending: { state, by: endedBy, at: endedAt, orderNumber } };
}
