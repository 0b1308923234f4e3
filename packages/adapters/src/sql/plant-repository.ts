import type { PlantRepository } from "@formweek/application";
import { Plant } from "@formweek/capacity-model";
import { and, asc, eq, sql } from "drizzle-orm";
import type { Database } from "./database.ts";
import { plants } from "./schema.ts";

/** Plants, one document each. A stored document is parsed when read: fields added since get their defaults. */
export function plantRepository(database: Database): PlantRepository {
  return {
    list: () =>
      database
        .select({
          id: plants.id,
          name: plants.name,
          timeZone: plants.timeZone,
          currency: plants.currency,
          revision: plants.revision,
        })
        .from(plants)
        .orderBy(asc(sql`${plants.id} collate "C"`)),
    get: async (plantId) => {
      const [row] = await database.select().from(plants).where(eq(plants.id, plantId));
      return row === undefined ? null : { plant: Plant.parse(row.document), revision: row.revision };
    },
    put: async (plant, expectedRevision) => {
      const head = { name: plant.name, timeZone: plant.timeZone, currency: plant.currency };
      const written =
        expectedRevision === null
          ? await database
              .insert(plants)
              .values({ id: plant.id, revision: 1, ...head, document: plant })
              .onConflictDoNothing()
              .returning({ revision: plants.revision })
          : await database
              .update(plants)
              .set({ revision: expectedRevision + 1, ...head, document: plant })
              .where(and(eq(plants.id, plant.id), eq(plants.revision, expectedRevision)))
              .returning({ revision: plants.revision });
      return written[0]?.revision ?? null;
    },
  };
}
