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
  /** Ends the process and keeps its data; the address falls silent. */
  readonly pause: () => Promise<void>;
  /** Starts it again at the same address with the same data. */
  readonly resume: () => Promise<void>;
}

const program = fileURLToPath(new URL("../../apps/api/dist/main.js", import.meta.url));
const startWithinMs = 90_000;

/** Starts what `npm start` starts after its build, and waits until the demo's week has been planned. */
export async function startApp(): Promise<AppServer> {
  const folder = mkdtempSync(join(tmpdir(), "formweek-e2e-"));
  const start = (port: string): ChildProcess =>
    spawn(process.execPath, [program], {
      env: { ...process.env, FORMWEEK_DATA: join(folder, "data"), PORT: port, LOG_LEVEL: "error" },
      stdio: ["ignore", "pipe", "pipe"],
    });
  let child = start("0");
  const pause = (): Promise<void> => endProcess(child, "SIGTERM");
  const stop = async (): Promise<void> => {
    await pause();
    rmSync(folder, { recursive: true, force: true });
  };
  try {
    const url = await addressOnceSaid(child, /^Planned \d+ orders/m);
    const resume = async (): Promise<void> => {
      child = start(new URL(url).port);
      await addressOnceSaid(child, /^Formweek is at/m);
    };
    return { url, stop, pause, resume };
  } catch (cause) {
    await stop();
    throw cause;
  }
}

/** The address that the app listens at, once it has said something. */
function addressOnceSaid(child: ChildProcess, wanted: RegExp): Promise<string> {
  return new Promise((resolve, reject) => {
    let said = "";
    const fail = (why: string): void => reject(new Error(`${why}\n${said}`));
    const timer = setTimeout(() => fail("The app was not ready in time."), startWithinMs);
    const hear = (chunk: Buffer): void => {
      said += chunk.toString();
      const url = /http:\/\/[^\s"]+/.exec(said)?.[0];
      if (url !== undefined && wanted.test(said)) {
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
