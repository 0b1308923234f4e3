import type { PGlite } from "@electric-sql/pglite";
import { sql } from "drizzle-orm";
import { drizzle } from "drizzle-orm/pglite";
import { join } from "node:path";
import type { Worker } from "node:worker_threads";
import type { OpenDatabase } from "../database.ts";
import { migrate } from "../migrate.ts";
import { migrations } from "../migrations/index.ts";
import { lockFolder } from "./folder-lock.ts";
import { connectToThread } from "./thread-client.ts";
import type { ThreadData } from "./thread-protocol.ts";

export interface PgliteOptions {
  /** Data folder, made if missing; the database lies in it beside the lock. */
  readonly folder: string;
  /** Starts a thread from a module beside the caller, named without its ending. */
  readonly startThread: (caller: string, module: string, data: ThreadData) => Worker;
}

/**
 * Opens the embedded database: PostgreSQL as WebAssembly in a thread of its own, with real fsync at every commit. Throws
 * `FolderInUse` when another process has the folder. After a crash it recovers from its log like any PostgreSQL.
 */
export async function openPglite({ folder, startThread }: PgliteOptions): Promise<OpenDatabase> {
  const lock = lockFolder(folder);
  try {
    const thread = startThread(import.meta.url, "./pglite-thread", { folder: join(folder, "database") });
    const client = await connectToThread(thread);
    // The column mapper calls `query` and `transaction` only; the thread's client has both in the same form.
    const database = drizzle(client as unknown as PGlite);
    await migrate(database, migrations);
    return {
      database,
      ping: async () => void (await database.execute(sql`select 1`)),
      close: async () => {
        await client.close();
        lock.release();
      },
    };
  } catch (error) {
    lock.release();
    throw error;
  }
}
