import { randomUUID } from "node:crypto";
import { linkSync, mkdirSync, readFileSync, realpathSync, renameSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { isRunning, ownIdentity, type ProcessIdentity } from "./process-identity.ts";

/** The folder is in use; the message names the folder and the process. */
export class FolderInUse extends Error {
  readonly folder: string;
  readonly pid: number;
  constructor(folder: string, pid: number) {
    super(
      `The data folder ${folder} is in use by process ${pid}. Stop that process, or start with another folder in FORMWEEK_DATA.`,
    );
    this.name = "FolderInUse";
    this.folder = folder;
    this.pid = pid;
  }
}

export interface FolderLock {
  /** A second call does nothing. */
  readonly release: () => void;
}

interface LockContent extends ProcessIdentity {
  /** Differs for every lock ever taken. */
  readonly token: string;
}

const lockName = "formweek.lock";
const heldHere = new Set<string>();

/**
 * Takes the folder (made if missing) for this process alone, or throws `FolderInUse`: two processes on one embedded
 * database lose data. The lock of a process that was killed is taken over. Works for processes that see one another's
 * process numbers; two containers that share a folder do not.
 */
export function lockFolder(folder: string): FolderLock {
  mkdirSync(folder, { recursive: true });
  const path = join(realpathSync(folder), lockName);
  if (heldHere.has(path)) throw new FolderInUse(folder, process.pid);
  const mine: LockContent = { ...ownIdentity(), token: randomUUID() };
  if (!createWhole(path, mine)) takeOver(folder, path, mine);
  heldHere.add(path);
  let held = true;
  return {
    release: () => {
      if (!held) return;
      held = false;
      heldHere.delete(path);
      if (read(path)?.token === mine.token) rmSync(path, { force: true });
    },
  };
}

/** Replaces the lock of a dead process. One taker at a time: the right to replace this very lock is a file itself. */
function takeOver(folder: string, path: string, mine: LockContent): void {
  const found = read(path);
  if (found !== null && isHeld(found)) throw new FolderInUse(folder, found.pid);
  const right = `${path}.${found?.token ?? "unreadable"}`;
  if (!createWhole(right, mine)) {
    const taker = read(right);
    if (taker !== null && isHeld(taker)) throw new FolderInUse(folder, taker.pid);
    rmSync(right, { force: true });
    return takeOver(folder, path, mine);
  }
  try {
    const now = read(path);
    if (now !== null && now.token !== found?.token) throw new FolderInUse(folder, now.pid);
    const whole = writeAside(path, mine);
    renameSync(whole, path);
  } finally {
    rmSync(right, { force: true });
  }
}

/** A lock with our own number that is not held here was left by an earlier process of that number (containers restart with the same). */
const isHeld = (lock: LockContent): boolean => lock.pid !== process.pid && isRunning(lock);

/** Creates the file with its content in one step, so that nobody ever reads half of it; false when it exists. */
function createWhole(path: string, content: LockContent): boolean {
  const whole = writeAside(path, content);
  try {
    linkSync(whole, path);
    return true;
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === "EEXIST") return false;
    throw error;
  } finally {
    rmSync(whole, { force: true });
  }
}

function writeAside(path: string, content: LockContent): string {
  const aside = `${path}.${randomUUID()}`;
  writeFileSync(aside, JSON.stringify(content));
  return aside;
}

/** Null when there is no readable lock, such as after a power cut. */
function read(path: string): LockContent | null {
  try {
    const { pid, startTicks, token } = JSON.parse(readFileSync(path, "utf8")) as LockContent;
    return { pid, startTicks, token };
  } catch {
    return null;
  }
}
