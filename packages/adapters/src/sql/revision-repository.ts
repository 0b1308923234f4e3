import type { RevisionRepository } from "@formweek/application";
import { and, eq, sql } from "drizzle-orm";
import type { Database } from "./database.ts";
import { holdLists, holds, orderBooks, pinLists, planSteps, plants } from "./schema.ts";

/** Revisions of a plant's records, without the records. */
export function revisionRepository(database: Database): RevisionRepository {
  return {
    of: async (plantId) => {
      const revisionIn = (list: typeof orderBooks | typeof pinLists | typeof holdLists) =>
        sql<
          string | number
        >`coalesce(${database.select({ revision: list.revision }).from(list).where(eq(list.plantId, plantId))}, 0)`;
      const newestStep = database
        .select({ revision: sql`max(${planSteps.revision})` })
        .from(planSteps)
        .where(eq(planSteps.plantId, plantId));
      const firstToEnd = database
        .select({ until: sql`min(${holds.until})` })
        .from(holds)
        .where(and(eq(holds.plantId, plantId), eq(holds.state, "held")));
      const [row] = await database
        .select({
          plant: plants.revision,
          book: revisionIn(orderBooks),
          pins: revisionIn(pinLists),
          holds: revisionIn(holdLists),
          step: sql<string | number>`coalesce(${newestStep}, 0)`,
          nextExpiry: sql<string | number | null>`${firstToEnd}`,
        })
        .from(plants)
        .where(eq(plants.id, plantId));
      if (row === undefined) return null;
      // drivers hand numbers of 64 bits over as text
      const { plant, book, pins, holds: held, step, nextExpiry } = row;
      return {
        plant,
        book: Number(book),
        pins: Number(pins),
        holds: Number(held),
        step: Number(step),
        nextExpiry: nextExpiry === null ? null : Number(nextExpiry),
      };
    },
  };
}
