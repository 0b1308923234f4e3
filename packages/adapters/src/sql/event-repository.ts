import type { EventRepository, PlantEvent } from "@formweek/application";
import { and, asc, eq, gt, sql } from "drizzle-orm";
import type { Database } from "./database.ts";
import { eventCounters, events } from "./schema.ts";

/** Outbox and history of what happened in each plant. */
export function eventRepository(database: Database): EventRepository {
  return {
    append: async (plantId, at, body) => {
      const sequence = await nextSequence(database, plantId);
      const event: PlantEvent = { plantId, sequence, at, body };
      await database.insert(events).values({ ...event, published: false });
      return event;
    },
    after: async (plantId, sequence, limit) =>
      database
        .select(eventColumns)
        .from(events)
        .where(and(eq(events.plantId, plantId), gt(events.sequence, sequence)))
        .orderBy(asc(events.sequence))
        .limit(limit),
    lastSequence: async (plantId) => {
      const [row] = await database.select().from(eventCounters).where(eq(eventCounters.plantId, plantId));
      return row?.lastSequence ?? 0;
    },
    unpublished: async (limit) =>
      database
        .select(eventColumns)
        .from(events)
        .where(eq(events.published, false))
        .orderBy(asc(events.plantId), asc(events.sequence))
        .limit(limit),
    markPublished: async (published) => {
      const keys = published.map(({ plantId, sequence }) => ({ plant_id: plantId, sequence }));
      await database.execute(sql`update ${events} set published = true
        from json_to_recordset(${JSON.stringify(keys)}::json) as key (plant_id text, sequence bigint)
        where ${events.plantId} = key.plant_id and ${events.sequence} = key.sequence`);
    },
  };
}

const eventColumns = {
  plantId: events.plantId,
  sequence: events.sequence,
  at: events.at,
  body: events.body,
};

/** The update holds the plant's counter until the transaction ends, so that sequences appear in order and without gaps. */
async function nextSequence(database: Database, plantId: string): Promise<number> {
  const [row] = await database
    .insert(eventCounters)
    .values({ plantId, lastSequence: 1 })
    .onConflictDoUpdate({
      target: eventCounters.plantId,
      set: { lastSequence: sql`${eventCounters.lastSequence} + 1` },
    })
    .returning({ sequence: eventCounters.lastSequence });
  if (row === undefined) throw new Error(`No event counter for plant ${plantId}.`);
  return row.sequence;
}
