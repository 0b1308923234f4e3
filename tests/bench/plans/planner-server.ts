import { spawn, type ChildProcess } from "node:child_process";
import { existsSync } from "node:fs";
import { join } from "node:path";
import { performance } from "node:perf_hooks";

const root = join(import.meta.dirname, "../../..");
const startWithinMs = 120_000;

/** A running server on a folder of its own. */
export interface PlannerServer {
  readonly address: string;
  readonly folder: string;
  /** From the start of the process to its first answer. */
  readonly startedInMs: number;
  /** Ends it without warning and waits until it is gone. */
  readonly kill: () => Promise<void>;
  /** Asks it to end and waits. */
  readonly stop: () => Promise<void>;
}

/** Whether the command that starts the built server has something to start. */
export function isBuilt(): boolean {
  return existsSync(join(root, "apps/api/dist/main.js"));
}

function ended(child: ChildProcess): Promise<void> {
  return child.exitCode !== null || child.signalCode !== null
    ? Promise.resolve()
    : new Promise((resolve) => child.once("exit", () => resolve()));
}

/** Starts the built server on the folder, on a free port. Rejects with its output when it does not come up. */
export function startServer(folder: string): Promise<PlannerServer> {
  const began = performance.now();
  const child = spawn(process.execPath, [join(root, "apps/api/dist/main.js")], {
    cwd: root,
    env: { ...process.env, FORMWEEK_DATA: folder, PORT: "0", HOST: "127.0.0.1", LOG_LEVEL: "warn" },
    stdio: ["ignore", "pipe", "pipe"],
  });
  const end = async (signal: "SIGKILL" | "SIGTERM") => {
    child.kill(signal);
    await ended(child);
  };
  return new Promise((resolve, reject) => {
    let output = "";
    const late = setTimeout(() => {
      child.kill("SIGKILL");
      reject(new Error(`The server did not come up.\n${output}`));
    }, startWithinMs);
    const read = (chunk: Buffer) => {
      output += chunk.toString();
      const address = /Formweek is at (http:\S+)/.exec(output)?.[1];
      if (address === undefined) return;
      clearTimeout(late);
      resolve({
        address,
        folder,
        startedInMs: performance.now() - began,
        kill: () => end("SIGKILL"),
        stop: () => end("SIGTERM"),
      });
    };
    child.stdout.on("data", read);
    child.stderr.on("data", read);
    child.once("exit", (code) => {
      clearTimeout(late);
      reject(new Error(`The server ended with ${code}.\n${output}`));
    });
  });
}
