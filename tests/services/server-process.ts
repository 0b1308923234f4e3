import { spawn, type ChildProcess, type SpawnOptions } from "node:child_process";
import { createServer } from "node:net";
import { setTimeout as pause } from "node:timers/promises";

/** A server started for the tests: where it answers, and how to end it and remove its data. */
export interface TestServer {
  readonly url: string;
  readonly stop: () => Promise<void>;
}

/** A server that runs, or why it cannot. */
export type StartedServer =
  | { readonly kind: "running"; readonly server: TestServer }
  | { readonly kind: "unavailable"; readonly why: string };

/** A TCP port of this machine that is free at this moment. */
export function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const probe = createServer();
    probe.once("error", reject);
    probe.listen(0, "127.0.0.1", () => {
      const address = probe.address();
      probe.close(() =>
        address !== null && typeof address === "object"
          ? resolve(address.port)
          : reject(new Error("no port was given")),
      );
    });
  });
}

/** Starts a program and returns once `isReady` says so; ends it and explains when it exits before or takes over 30 s. */
export async function startUntilReady(
  command: readonly [program: string, ...args: string[]],
  options: SpawnOptions,
  isReady: () => boolean | Promise<boolean>,
): Promise<ChildProcess> {
  const [program, ...args] = command;
  const child = spawn(program, args, { ...options, stdio: ["ignore", "ignore", "pipe"] });
  let said = "";
  child.stderr?.on("data", (chunk: Buffer) => (said = (said + chunk.toString()).slice(-2000)));
  let failure: Error | undefined;
  child.once("error", (error) => (failure = error));
  for (let tries = 0; tries < 300; tries += 1) {
    if (failure !== undefined) throw failure;
    if (child.exitCode !== null) throw new Error(`${program} ended at once: ${said}`);
    if (await isReady()) return child;
    await pause(100);
  }
  child.kill("SIGKILL");
  throw new Error(`${program} was not ready after 30 s: ${said}`);
}

/** Asks a process to end with the given signal and waits until it has. */
export async function endProcess(child: ChildProcess, signal: NodeJS.Signals): Promise<void> {
  if (child.exitCode !== null || child.signalCode !== null) return;
  const ended = new Promise<void>((resolve) => child.once("exit", () => resolve()));
  child.kill(signal);
  await ended;
}
