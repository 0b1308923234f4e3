import type { OrderRepository } from "@formweek/application";
import type { Order } from "@formweek/capacity-model";
import { asc, eq, getTableColumns, sql } from "drizzle-orm";
import type { Database } from "./database.ts";
import { takeRevision } from "./list-revision.ts";
import { orderBooks, orders } from "./schema.ts";

/** Orders as rows, one book with one revision a plant. */
export function orderRepository(database: Database): OrderRepository {
  return {
    book: async (plantId) => {
      const [book] = await database.select().from(orderBooks).where(eq(orderBooks.plantId, plantId));
      if (book === undefined) return { revision: 0, orders: [] };
      const { plantId: _, ...columns } = getTableColumns(orders);
      const rows = await database
        .select(columns)
        .from(orders)
        .where(eq(orders.plantId, plantId))
        .orderBy(asc(orders.dueAt), asc(sql`${orders.id} collate "C"`));
      return { revision: book.revision, orders: rows };
    },
    apply: async (plantId, change, expectedRevision) => {
      const revision = await takeRevision(database, orderBooks, plantId, expectedRevision);
      if (revision === null) return null;
      for (const ids of chunks(change.removeIds)) await remove(database, plantId, ids);
      for (const rows of chunks(change.put)) await put(database, plantId, rows);
      return revision;
    },
  };
}

async function remove(database: Database, plantId: string, ids: readonly string[]): Promise<void> {
  await database.execute(sql`delete from ${orders} where plant_id = ${plantId}
    and id in (select json_array_elements_text(${JSON.stringify(ids)}::json))`);
}

/** All rows travel as one JSON parameter: several times faster than a parameter a field, and no limit on their number. */
async function put(database: Database, plantId: string, rows: readonly Order[]): Promise<void> {
  await database.execute(sql`
    insert into ${orders} (plant_id, id, customer, product_id, pieces, due_at, earliest_start_at,
      weight, kind, under_tolerance, over_tolerance, parts_allowed)
    select ${plantId}, "id", "customer", "productId", "pieces", "dueAt", "earliestStartAt",
      "weight", "kind", "underTolerance", "overTolerance", "partsAllowed"
    from json_to_recordset(${JSON.stringify(rows)}::json) as row ("id" text, "customer" text, "productId" text,
      "pieces" bigint, "dueAt" bigint, "earliestStartAt" bigint, "weight" double precision, "kind" text,
      "underTolerance" double precision, "overTolerance" double precision, "partsAllowed" boolean)
    on conflict (plant_id, id) do update set customer = excluded.customer, product_id = excluded.product_id,
      pieces = excluded.pieces, due_at = excluded.due_at, earliest_start_at = excluded.earliest_start_at,
      weight = excluded.weight, kind = excluded.kind, under_tolerance = excluded.under_tolerance,
      over_tolerance = excluded.over_tolerance, parts_allowed = excluded.parts_allowed`);
}

const chunkRows = 5_000;

function* chunks<T>(rows: readonly T[]): Generator<readonly T[]> {
  for (let from = 0; from < rows.length; from += chunkRows) yield rows.slice(from, from + chunkRows);
}
