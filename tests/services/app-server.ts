import { spawn, type ChildProcess } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { endProcess } from "./server-process.ts";

/** The built app on a port and a fresh data folder of its own. */
export interface AppServer {
  readonly url: string;
  /** Ends the process and removes its data. */
  readonly stop: () => Promise<void>;
}

const program = fileURLToPath(new URL("../../apps/api/dist/main.js", import.meta.url));
const startWithinMs = 90_000;

/** Starts what `npm start` starts after its build, and waits until the demo's week has been planned. */
export async function startApp(): Promise<AppServer> {
  const folder = mkdtempSync(join(tmpdir(), "formweek-e2e-"));
  const child = spawn(process.execPath, [program], {
    env: { ...process.env, FORMWEEK_DATA: join(folder, "data"), PORT: "0", LOG_LEVEL: "error" },
    stdio: ["ignore", "pipe", "pipe"],
  });
  const stop = async (): Promise<void> => {
    await endProcess(child, "SIGTERM");
    rmSync(folder, { recursive: true, force: true });
  };
  try {
    return { url: await addressOnceReady(child), stop };
  } catch (cause) {
    await stop();
    throw cause;
  }
}

function addressOnceReady(child: ChildProcess): Promise<string> {
  return new Promise((resolve, reject) => {
    let said = "";
    const fail = (why: string): void => reject(new Error(`${why}\n${said}`));
    const timer = setTimeout(() => fail("The app was not ready in time."), startWithinMs);
    const hear = (chunk: Buffer): void => {
      said += chunk.toString();
      const url = /http:\/\/[^\s"]+/.exec(said)?.[0];
      if (url !== undefined && /^Planned \d+ orders/m.test(said)) {
        clearTimeout(timer);
        resolve(url);
      }
      if (said.includes("was not planned")) fail("The demo's week was not planned.");
    };
    child.stdout?.on("data", hear);
    child.stderr?.on("data", hear);
    child.once("exit", () => {
      clearTimeout(timer);
      fail("The app ended before it was ready.");
    });
  });
}
