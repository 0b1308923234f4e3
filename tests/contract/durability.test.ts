import { openPglite, sqlUnitOfWork } from "@formweek/adapters/sql";
import { startThread } from "@formweek/adapters/system";
import { ok, type UnitOfWork } from "@formweek/application";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { setTimeout as pause } from "node:timers/promises";
import { Worker } from "node:worker_threads";
import { afterEach, describe, expect, test } from "vitest";
import { eventually } from "../fixtures/eventually.ts";
import { startSource } from "../fixtures/source-process.ts";
import { newId } from "../fixtures/stored-records.ts";

/** Four rounds are enough to notice a broken store; FORMWEEK_KILL_ROUNDS=20 is the long run. */
const killRounds = Number(process.env["FORMWEEK_KILL_ROUNDS"] ?? 4);

const folders: string[] = [];
afterEach(() => {
  for (const folder of folders.splice(0)) rmSync(folder, { recursive: true, force: true });
});

function newFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), "formweek-durable-"));
  folders.push(folder);
  return folder;
}

const append = (store: UnitOfWork, plantId: string, revision: number) =>
  store.write(async ({ events }) =>
    ok(await events.append(plantId, revision, { type: "orders-changed", revision })),
  );

describe("the embedded database", () => {
  test("asks the disk at every commit, and at none of the reads", async () => {
    const calls = new Int32Array(new SharedArrayBuffer(4));
    const { database, close } = await openPglite({ folder: newFolder(), startThread: countingFsync(calls) });
    const store = sqlUnitOfWork(database);
    const plantId = newId();
    await append(store, plantId, 0);
    const before = Atomics.load(calls, 0);
    for (let revision = 1; revision <= 50; revision++) await append(store, plantId, revision);
    const afterWrites = Atomics.load(calls, 0);
    expect(afterWrites - before).toBeGreaterThanOrEqual(50);
    for (let index = 0; index < 50; index++) await store.read(({ events }) => events.lastSequence(plantId));
    expect(Atomics.load(calls, 0)).toBe(afterWrites);
    await close();
  });

  test(
    `loses nothing that was acknowledged when its process is killed, ${killRounds} times over`,
    async () => {
      const folder = newFolder();
      const plantId = newId();
      let acknowledged = 0;
      for (let round = 0; round < killRounds; round++) {
        const writer = startSource(new URL("./processes/write-events.ts", import.meta.url), [
          folder,
          plantId,
        ]);
        const enough = 5 + ((round * 37) % 100);
        await eventually("it writes", () => writer.lines.length >= enough || writer.hasEnded());
        await writer.kill();
        const said = Number(writer.lines.at(-1));
        expect(said).toBeGreaterThan(acknowledged);
        acknowledged = said;
        const { database, close } = await openPglite({ folder, startThread });
        const stored = await sqlUnitOfWork(database).read(({ events }) =>
          events.after(plantId, 0, 1_000_000),
        );
        await close();
        expect(stored.map(({ sequence }) => sequence)).toEqual(stored.map((_, index) => index + 1));
        // One more may have been committed without its acknowledgement being heard.
        expect(stored.length).toBeGreaterThanOrEqual(acknowledged);
        acknowledged = stored.length;
      }
    },
    killRounds * 60_000,
  );

  test("opens after its process was killed while it made the database", async () => {
    for (const moment of [500, 2_000]) {
      const folder = newFolder();
      const plantId = newId();
      const maker = startSource(new URL("./processes/write-events.ts", import.meta.url), [folder, plantId]);
      await pause(moment);
      await maker.kill();
      const { database, close } = await openPglite({ folder, startThread });
      const written = await append(sqlUnitOfWork(database), plantId, 1);
      expect(written.ok).toBe(true);
      await close();
    }
  });
});

/** Starts the database's thread with every fsync counted: of files and of folders, by the file system of the module. */
function countingFsync(calls: Int32Array<SharedArrayBuffer>) {
  return (caller: string, module: string, data: { readonly folder: string }): Worker => {
    const lines = [
      `import { createRequire, syncBuiltinESMExports } from "node:module";`,
      `import { workerData } from "node:worker_threads";`,
      `import { register } from ${JSON.stringify(import.meta.resolve("tsx/esm/api"))};`,
      `const fs = createRequire(${JSON.stringify(caller)})("node:fs");`,
      `const original = fs.fsyncSync;`,
      `fs.fsyncSync = (handle) => { Atomics.add(workerData.calls, 0, 1); return original(handle); };`,
      `syncBuiltinESMExports();`,
      `register();`,
      `await import(${JSON.stringify(new URL(`${module}.ts`, caller).href)});`,
    ];
    const bootstrap = new URL(`data:text/javascript,${encodeURIComponent(lines.join("\n"))}`);
    return new Worker(bootstrap, { workerData: { ...data, calls }, execArgv: ["--conditions=source"] });
  };
}
