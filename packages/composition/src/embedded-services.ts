import { inProcessEventBus, inProcessQueue } from "@formweek/adapters/in-process";
import { openPglite, sqlUnitOfWork } from "@formweek/adapters/sql";
import { startThread } from "@formweek/adapters/system";
import type { Log } from "@formweek/application";
import type { Closing } from "./closing.ts";
import type { EmbeddedConfig } from "./config.ts";
import type { Services } from "./services.ts";

/** Everything in this process and its data folder. */
export async function embeddedServices(
  config: EmbeddedConfig,
  log: Log,
  closing: Closing,
): Promise<Services> {
  const { database, ping, close } = await openPglite({ folder: config.dataFolder, startThread });
  closing.add(close);
  const jobs = inProcessQueue({ log, concurrency: config.concurrentRuns, retryPauseMs: 1_000 });
  return {
    store: sqlUnitOfWork(database),
    queue: jobs,
    bus: inProcessEventBus(log),
    consumer: jobs,
    checks: { database: ping },
  };
}
