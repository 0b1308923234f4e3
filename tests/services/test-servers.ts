import { startPostgres } from "./postgres-server.ts";
import { startRedis } from "./redis-server.ts";
import type { StartedServer, TestServer } from "./server-process.ts";

/** The variable that names each server to the suites, and how to start one when it is not set. */
const SERVERS: readonly {
  readonly variable: string;
  readonly name: string;
  readonly start: () => Promise<StartedServer>;
}[] = [
  { variable: "FORMWEEK_TEST_DATABASE_URL", name: "PostgreSQL", start: startPostgres },
  { variable: "FORMWEEK_TEST_REDIS_URL", name: "Redis", start: startRedis },
];

/**
 * Starts the servers whose variable is not set yet and sets it, for this process and those it starts.
 * One that cannot be started leaves its variable unset, and a line says which tests that skips and why.
 */
export async function startTestServers(): Promise<{ readonly stop: () => Promise<void> }> {
  const running: TestServer[] = [];
  for (const { variable, name, start } of SERVERS) {
    if (process.env[variable] !== undefined) continue;
    const started = await start();
    if (started.kind === "unavailable") {
      console.log(`SKIPPED contract suites on ${name}: ${started.why}`);
      continue;
    }
    process.env[variable] = started.server.url;
    running.push(started.server);
  }
  return {
    stop: async () => {
      for (const server of running.reverse()) await server.stop();
    },
  };
}
