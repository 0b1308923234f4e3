import { sql } from "drizzle-orm";
import { integer, pgSchema, text, timestamp } from "drizzle-orm/pg-core";
import type { Database } from "./database.ts";
import type { Migration } from "./migrations/migration.ts";

const schemaVersion = pgSchema("formweek").table("schema_version", {
  version: integer("version").primaryKey(),
  name: text("name").notNull(),
  appliedAt: timestamp("applied_at", { withTimezone: true }).notNull(),
});

/** Any fixed number: processes that start together take turns. */
const migrationLock = 4_310_001;

/**
 * Brings the tables up to the newest step, in one transaction: all steps or none. Safe when several processes start at
 * once. Throws when the database was made by a newer Formweek, before anything is touched.
 */
export async function migrate(database: Database, steps: readonly Migration[]): Promise<void> {
  await database.transaction(async (transaction) => {
    await transaction.execute(sql`select pg_advisory_xact_lock(${migrationLock})`);
    await transaction.execute(sql`create schema if not exists formweek`);
    await transaction.execute(sql`create table if not exists formweek.schema_version
      (version integer primary key, name text not null, applied_at timestamptz not null)`);
    const applied = await transaction.select({ version: schemaVersion.version }).from(schemaVersion);
    const current = Math.max(0, ...applied.map((row) => row.version));
    const newest = Math.max(0, ...steps.map((step) => step.version));
    if (current > newest) {
      throw new Error(
        `The stored data has structure ${current}, this Formweek knows up to ${newest}. Start the newer Formweek that wrote it.`,
      );
    }
    for (const step of steps.filter(({ version }) => version > current)) {
      for (const statement of step.statements) await transaction.execute(sql.raw(statement));
      await transaction
        .insert(schemaVersion)
        .values({ version: step.version, name: step.name, appliedAt: sql`now()` });
    }
  });
}
