import { FolderInUse, lockFolder, openPglite } from "@formweek/adapters/sql";
import { startThread } from "@formweek/adapters/system";
import { spawnSync } from "node:child_process";
import { mkdtempSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, describe, expect, test } from "vitest";
import { eventually } from "../fixtures/eventually.ts";
import { startSource, type SourceProcess } from "../fixtures/source-process.ts";

const folders: string[] = [];
const processes: SourceProcess[] = [];

afterEach(async () => {
  for (const running of processes.splice(0)) await running.kill();
  for (const folder of folders.splice(0)) rmSync(folder, { recursive: true, force: true });
});

function newFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), "formweek-lock-"));
  folders.push(folder);
  return folder;
}

async function takenElsewhere(folder: string): Promise<SourceProcess> {
  const running = startSource(new URL("./processes/take-folder.ts", import.meta.url), [folder]);
  processes.push(running);
  await eventually("the other process has tried", () => running.lines.length === 1);
  return running;
}

function leaveLock(folder: string, content: string): void {
  writeFileSync(join(folder, "formweek.lock"), content);
}

const lockOf = (pid: number, startTicks: string | null): string =>
  JSON.stringify({ pid, startTicks, token: `left-by-${pid}` });

/** Number of a process that has ended. */
function deadPid(): number {
  return spawnSync(process.execPath, ["-e", ""]).pid;
}

describe("the lock of a data folder", () => {
  test("is refused to a second process with the first one's number and the folder, and free after its release", async () => {
    const folder = newFolder();
    const holder = await takenElsewhere(folder);
    expect(holder.lines).toEqual(["taken"]);
    const attempt = (): unknown => lockFolder(folder);
    expect(attempt).toThrow(FolderInUse);
    expect(attempt).toThrow(`process ${holder.pid}`);
    expect(attempt).toThrow(folder);
  });

  test("keeps a second process from opening the database", async () => {
    const folder = newFolder();
    const holder = await takenElsewhere(folder);
    await expect(openPglite({ folder, startThread })).rejects.toThrow(`process ${holder.pid}`);
    expect(readdirSync(folder)).toEqual(["formweek.lock"]);
  });

  test("is refused twice within a process, and released once", () => {
    const folder = newFolder();
    const first = lockFolder(folder);
    expect(() => lockFolder(folder)).toThrow(FolderInUse);
    first.release();
    const second = lockFolder(folder);
    first.release();
    expect(() => lockFolder(folder)).toThrow(FolderInUse);
    second.release();
    expect(readdirSync(folder)).toEqual([]);
  });

  test("of a killed process is taken over", async () => {
    const folder = newFolder();
    const holder = await takenElsewhere(folder);
    await holder.kill();
    lockFolder(folder).release();
    expect(readdirSync(folder)).toEqual([]);
  });

  test("makes a missing folder", () => {
    const folder = join(newFolder(), "a", "b");
    lockFolder(folder).release();
    expect(readdirSync(folder)).toEqual([]);
  });

  const leftovers: Readonly<Record<string, () => string>> = {
    "whose process has ended": () => lockOf(deadPid(), "123"),
    "whose number was given to a newer process": () => lockOf(process.ppid, "1"),
    "of an earlier process with our own number": () => lockOf(process.pid, "1"),
    "that was cut off": () => '{"pid":',
    "that is empty": () => "",
  };
  for (const [name, content] of Object.entries(leftovers)) {
    test(`${name} is taken over`, () => {
      const folder = newFolder();
      leaveLock(folder, content());
      const lock = lockFolder(folder);
      expect(() => lockFolder(folder)).toThrow(FolderInUse);
      lock.release();
      expect(readdirSync(folder)).toEqual([]);
    });
  }

  test("goes to exactly one of six processes that find a dead one's lock together", async () => {
    const folder = newFolder();
    leaveLock(folder, lockOf(deadPid(), "123"));
    const racing = await Promise.all(Array.from({ length: 6 }, () => takenElsewhere(folder)));
    const outcomes = racing.map(({ lines }) => lines[0]);
    expect(outcomes.filter((outcome) => outcome === "taken")).toHaveLength(1);
    expect(outcomes.filter((outcome) => outcome === "FolderInUse")).toHaveLength(5);
  });
});
