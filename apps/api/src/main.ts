import { localPlanner } from "@formweek/application";
import { type Config, type Runtime, compose, readConfig } from "@formweek/composition";
import { fileURLToPath } from "node:url";
import { loadDemo, planDemo } from "./demo-week.ts";
import { namedPlanner } from "./named-planner.ts";
import { buildServer } from "./server.ts";
import type { WireServer } from "./wire-type-provider.ts";

const REQUESTS_PER_MINUTE = 1200;
const CLOSE_WITHIN_MS = 20_000;
const boardFolder = fileURLToPath(new URL("../../web/dist", import.meta.url));

const say = (line: string): void => void process.stdout.write(`${line}\n`);

/** Starts the server: settings, store, interface, and where jobs run here, the jobs and a first plan to look at. */
async function main(): Promise<void> {
  const settings = readConfig(process.env);
  if (!settings.ok) {
    for (const { variable, problem, remedy } of settings.faults) say(`${variable}: ${problem} ${remedy}`);
    process.exitCode = 2;
    return;
  }
  const runtime = await compose(settings.config, "server");
  const server = await serve(runtime, settings.config);
  closeOnSignal(runtime, server);
  await runtime.start();
  if (!runtime.runsJobs || !(await loadDemo(runtime.app, say))) return;
  await planDemo(runtime.app, say);
}

async function serve(runtime: Runtime, { host, port }: Config): Promise<WireServer> {
  const server = await buildServer({
    app: runtime.app,
    actorOf: runtime.runsJobs ? namedPlanner : () => localPlanner,
    log: runtime.log,
    readiness: runtime.health,
    boardFolder,
    onlyLoopbackNames: runtime.runsJobs,
    requestsPerMinute: REQUESTS_PER_MINUTE,
  });
  const address = await server.listen({ host, port });
  say(`Formweek is at ${address}`);
  return server;
}

/** The first signal closes in order: no new requests, running jobs put back, store closed. A second one ends at once. */
function closeOnSignal(runtime: Runtime, server: WireServer): void {
  let closing = false;
  const close = (): void => {
    if (closing) process.exit(130);
    closing = true;
    setTimeout(() => process.exit(1), CLOSE_WITHIN_MS).unref();
    server
      .close()
      .then(() => runtime.close())
      .then(
        () => process.exit(0),
        (error: unknown) => {
          runtime.log.error("Closing failed", {}, error);
          process.exit(1);
        },
      );
  };
  process.on("SIGINT", close);
  process.on("SIGTERM", close);
}

main().catch((error: unknown) => {
  say(whyNot(error));
  process.exit(1);
});

/** What keeps the server from starting, in words; what is not foreseen is shown whole. */
function whyNot(error: unknown): string {
  if (!(error instanceof Error)) return String(error);
  if ("code" in error && error.code === "EADDRINUSE") {
    return "Another program listens at this port already. Close it, or choose another port: PORT=4311 npm start";
  }
  return error.name === "FolderInUse" ? error.message : (error.stack ?? error.message);
}
