import type { PgDatabase, PgQueryResultHKT } from "drizzle-orm/pg-core";

/** A database or a transaction in it, whichever engine is behind. */
export type Database = PgDatabase<PgQueryResultHKT>;

/** An opened database with its tables up to date. */
export interface OpenDatabase {
  readonly database: Database;
  /** Resolves when the database answers, rejects when it does not. */
  readonly ping: () => Promise<void>;
  /** Waits for statements under way. A second call does nothing. */
  readonly close: () => Promise<void>;
}
