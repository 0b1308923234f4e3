import { type PinRepository, pinnedPlace } from "@formweek/application";
import { and, asc, eq, sql } from "drizzle-orm";
import type { Database } from "./database.ts";
import { takeRevision } from "./list-revision.ts";
import { pinLists, pins } from "./schema.ts";

/** Pins as rows, one list with one revision a plant. */
export function pinRepository(database: Database): PinRepository {
  return {
    list: async (plantId) => {
      const [list] = await database.select().from(pinLists).where(eq(pinLists.plantId, plantId));
      if (list === undefined) return { revision: 0, pins: [] };
      const rows = await database
        .select()
        .from(pins)
        .where(eq(pins.plantId, plantId))
        .orderBy(asc(sql`${pins.orderId} collate "C"`));
      return {
        revision: list.revision,
        pins: rows.flatMap(({ orderId, lineId, startAt, pinnedBy, pinnedAt }) => {
          const place = pinnedPlace(lineId, startAt);
          return place === null ? [] : [{ orderId, ...place, pinnedBy, pinnedAt }];
        }),
      };
    },
    put: async (plantId, pin, expectedRevision) => {
      const revision = await takeRevision(database, pinLists, plantId, expectedRevision);
      if (revision === null) return null;
      const { orderId, ...place } = pin;
      await database
        .insert(pins)
        .values({ plantId, orderId, ...place })
        .onConflictDoUpdate({ target: [pins.plantId, pins.orderId], set: place });
      return revision;
    },
    remove: async (plantId, orderId, expectedRevision) => {
      const revision = await takeRevision(database, pinLists, plantId, expectedRevision);
      if (revision === null) return null;
      await database.delete(pins).where(and(eq(pins.plantId, plantId), eq(pins.orderId, orderId)));
      return revision;
    },
  };
}
