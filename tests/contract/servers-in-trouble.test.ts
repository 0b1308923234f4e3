import { bullmqQueue, redisEventBus } from "@formweek/adapters/bullmq";
import { openPglite, openPostgres, sqlUnitOfWork, type OpenDatabase } from "@formweek/adapters/sql";
import { startThread } from "@formweek/adapters/system";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, afterEach, beforeAll, describe, expect, test } from "vitest";
import { eventually } from "../fixtures/eventually.ts";
import { recordingLog } from "../fixtures/recording-log.ts";
import { newId } from "../fixtures/stored-records.ts";
import { testDatabaseUrl } from "../services/reachable-servers.ts";
import { freePort } from "../services/server-process.ts";

describe.skipIf(testDatabaseUrl === null)("PostgreSQL", () => {
  const name = `trouble_${newId().replaceAll("-", "")}`;
  const lost: Error[] = [];
  const opened: OpenDatabase[] = [];
  let main: OpenDatabase;

  const open = async (url: string): Promise<OpenDatabase> => {
    const database = await openPostgres({
      url,
      maxConnections: 3,
      onConnectionLost: (error) => void lost.push(error),
    });
    opened.push(database);
    return database;
  };
  const ownUrl = (): string => {
    const url = new URL(testDatabaseUrl ?? "");
    url.pathname = `/${name}`;
    return url.href;
  };
  beforeAll(async () => {
    main = await open(testDatabaseUrl ?? "");
    await main.database.execute(`create database ${name}`);
  });
  afterEach(async () => {
    for (const database of opened.splice(0)) if (database !== main) await database.close();
  });
  afterAll(async () => {
    await main.database.execute(`drop database ${name} with (force)`);
    await main.close();
  });

  test("four processes that start together on an empty database all find its tables", async () => {
    const all = await Promise.all([1, 2, 3, 4].map(() => open(ownUrl())));
    for (const { database } of all)
      expect(await sqlUnitOfWork(database).read(({ plants }) => plants.list())).toEqual([]);
  });

  test("connections that the server ends are replaced", async () => {
    const [mine, killer] = [await open(ownUrl()), await open(ownUrl())];
    await mine.ping();
    lost.length = 0;
    await killer.database.execute(
      "select pg_terminate_backend(pid) from pg_stat_activity where datname = current_database() and pid <> pg_backend_pid()",
    );
    await eventually("the loss is told", () => lost.length > 0);
    await mine.ping();
    expect(await sqlUnitOfWork(mine.database).read(({ plants }) => plants.list())).toEqual([]);
  });
});

test("a database written by a newer Formweek is refused and left alone", async () => {
  const folder = mkdtempSync(join(tmpdir(), "formweek-newer-"));
  const first = await openPglite({ folder, startThread });
  await first.database.execute("insert into formweek.schema_version values (999, 'of the future', now())");
  await first.close();
  await expect(openPglite({ folder, startThread })).rejects.toThrow(/structure 999.*newer Formweek/);
  // The refusal lets go of the folder.
  await expect(openPglite({ folder, startThread })).rejects.toThrow(/structure 999/);
  rmSync(folder, { recursive: true, force: true });
});

describe("Redis out of reach", () => {
  const nowhere = async () => ({ url: `redis://127.0.0.1:${await freePort()}`, log: recordingLog() });

  test("a job is refused instead of waited for", async () => {
    const queue = bullmqQueue(await nowhere());
    await expect(queue.enqueue("run-solve", { runId: "r" }, "r")).rejects.toThrow();
    await expect(queue.ping()).rejects.toThrow();
    await queue.close();
  });

  test("a message is refused instead of waited for, and the loss is logged once", async () => {
    const options = await nowhere();
    const bus = redisEventBus(options);
    const body = { type: "orders-changed", revision: 1 } as const;
    await expect(bus.publish({ plantId: "p", sequence: 1, at: 1, body })).rejects.toThrow();
    expect(options.log.lines.filter(({ level }) => level === "warn")).toHaveLength(2);
    await bus.close();
  });
});
