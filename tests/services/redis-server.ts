import { existsSync, mkdtempSync, rmSync } from "node:fs";
import { connect } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { endProcess, freePort, startUntilReady, type StartedServer } from "./server-process.ts";

/** Where Debian puts the Redis server. */
export const REDIS_PROGRAM = "/usr/bin/redis-server";

/** Starts a Redis of its own in a temporary folder, on a free port, with the settings production needs. */
export async function startRedis(): Promise<StartedServer> {
  if (!existsSync(REDIS_PROGRAM)) return { kind: "unavailable", why: "no Redis server is installed" };
  const folder = mkdtempSync(join(tmpdir(), "formweek-redis-"));
  const port = await freePort();
  const settings = {
    bind: "127.0.0.1",
    port: String(port),
    dir: folder,
    appendonly: "yes",
    "maxmemory-policy": "noeviction",
    save: "",
  };
  const args = Object.entries(settings).flatMap(([name, value]) => [`--${name}`, value]);
  const child = await startUntilReady([REDIS_PROGRAM, ...args], { cwd: folder }, () => answersPing(port));
  const stop = async (): Promise<void> => {
    await endProcess(child, "SIGTERM");
    rmSync(folder, { recursive: true, force: true });
  };
  return { kind: "running", server: { url: `redis://127.0.0.1:${String(port)}`, stop } };
}

function answersPing(port: number): Promise<boolean> {
  return new Promise((resolve) => {
    const socket = connect(port, "127.0.0.1", () => socket.write("PING\r\n"));
    const answer = (ready: boolean): void => {
      socket.destroy();
      resolve(ready);
    };
    socket.once("data", (data) => answer(data.toString().startsWith("+PONG")));
    socket.once("error", () => answer(false));
  });
}
