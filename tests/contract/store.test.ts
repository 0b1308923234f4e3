import { openPglite, openPostgres, sqlUnitOfWork, type OpenDatabase } from "@formweek/adapters/sql";
import { startThread } from "@formweek/adapters/system";
import type { UnitOfWork } from "@formweek/application";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe } from "vitest";
import { testDatabaseUrl } from "../services/reachable-servers.ts";
import { storeSuite } from "./suites/store-suite.ts";

const folder = mkdtempSync(join(tmpdir(), "formweek-store-"));
const opened: OpenDatabase[] = [];

afterAll(async () => {
  for (const database of opened) await database.close();
  rmSync(folder, { recursive: true, force: true });
});

function storeOf(database: OpenDatabase): UnitOfWork {
  opened.push(database);
  return sqlUnitOfWork(database.database);
}

describe("the store in the embedded database", () => {
  storeSuite(async () => storeOf(await openPglite({ folder, startThread })));
});

describe.skipIf(testDatabaseUrl === null)("the store in PostgreSQL", () => {
  storeSuite(async () =>
    storeOf(
      await openPostgres({
        url: testDatabaseUrl ?? "",
        maxConnections: 10,
        onConnectionLost: (error) => console.error(error),
      }),
    ),
  );
});
