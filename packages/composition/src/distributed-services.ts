import { bullmqConsumer, bullmqQueue, redisEventBus } from "@formweek/adapters/bullmq";
import { openPostgres, sqlUnitOfWork } from "@formweek/adapters/sql";
import type { Log } from "@formweek/application";
import type { Closing } from "./closing.ts";
import type { DistributedConfig } from "./config.ts";
import type { ProcessRole, Services } from "./services.ts";

const maxConnections = 10;

/** Records in PostgreSQL, jobs and messages over Redis; several processes of either role work together. */
export async function distributedServices(
  config: DistributedConfig,
  { log, role }: { readonly log: Log; readonly role: ProcessRole },
  closing: Closing,
): Promise<Services> {
  const { database, ping, close } = await openPostgres({
    url: config.databaseUrl,
    maxConnections,
    onConnectionLost: (error) => log.warn("A database connection was lost", { reason: error.message }),
  });
  closing.add(close);
  const redis = { url: config.redisUrl, prefix: config.redisPrefix, log };
  const bus = redisEventBus(redis);
  closing.add(bus.close);
  const queue = bullmqQueue(redis);
  closing.add(queue.close);
  const consumer =
    role === "worker" ? bullmqConsumer({ ...redis, concurrency: config.concurrentRuns }) : null;
  if (consumer !== null) closing.add(consumer.close);
  return {
    store: sqlUnitOfWork(database),
    queue,
    bus,
    consumer,
    checks: { database: ping, queue: queue.ping },
  };
}
