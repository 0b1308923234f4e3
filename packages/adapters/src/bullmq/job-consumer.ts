import type { JobConsumer, JobHandlers, JobPayloads } from "@formweek/application";
import { DelayedError, Worker, type Job } from "bullmq";
import type { Redis } from "ioredis";
import { openRedis } from "./connection.ts";
import { cancelKeyOf, defaultPrefix, queueName } from "./job-names.ts";
import type { RedisOptions } from "./job-queue.ts";

export interface ConsumerOptions extends RedisOptions {
  /** Jobs that run at the same time in this process, at least 1. */
  readonly concurrency: number;
}

/**
 * A worker that is killed loses its lock after 5 s, and another looks for lost locks every 2 s: its job starts again
 * within about 7 s. The search runs in a thread, so this thread is always free to renew the lock.
 */
const lockTimings = { lockDuration: 5_000, stalledInterval: 2_000, maxStalledCount: 3 } as const;
const cancelPollMs = 250;

/** The working side; a process may have one of each. */
export function bullmqConsumer(
  options: ConsumerOptions,
): JobConsumer & { readonly close: () => Promise<void> } {
  const { log, concurrency, prefix = defaultPrefix } = options;
  const redis = openRedis(options.url, "patient", log);
  const controllers = new Set<AbortController>();

  const consume = async (handlers: JobHandlers): Promise<{ readonly stop: () => Promise<void> }> => {
    const closing = new AbortController();
    const process = async (job: Job, token?: string): Promise<void> => {
      const controller = new AbortController();
      const cancelKey = cancelKeyOf(prefix, job.id ?? "");
      // A stop asked for earlier is in the row that the handler is about to read.
      await redis.del(cancelKey);
      // A worker may be handed one more job while it closes, such as the one that it has just put back.
      if (closing.signal.aborted) await handOver(job, token);
      controllers.add(controller);
      const watch = setInterval(() => void abortIfAsked(redis, cancelKey, controller), cancelPollMs);
      try {
        await handle(handlers, job, controller.signal);
        if (controller.signal.reason === "closing") await handOver(job, token);
      } finally {
        clearInterval(watch);
        controllers.delete(controller);
      }
    };
    const worker = new Worker(queueName, process, { connection: redis, prefix, concurrency, ...lockTimings });
    // A lost connection comes here at every attempt to reconnect; the connection itself tells of it once.
    worker.on("error", (error) => {
      if (redis.status === "ready") log.warn("The worker's queue failed", { reason: error.message });
    });
    worker.on("failed", (job, error) =>
      log.error("A job failed", { job: job?.name ?? "unknown", attempt: job?.attemptsMade ?? 0 }, error),
    );
    await worker.waitUntilReady();
    return {
      stop: async () => {
        closing.abort();
        for (const controller of controllers) controller.abort("closing");
        await worker.close();
      },
    };
  };
  return {
    consume,
    close: () => {
      redis.disconnect();
      return Promise.resolve();
    },
  };
}

/** Puts the job back for another worker, or for this one's next start; a handler whose work was done finds that and returns. */
async function handOver(job: Job, token: string | undefined): Promise<never> {
  await job.moveToDelayed(Date.now(), token);
  throw new DelayedError();
}

async function abortIfAsked(redis: Redis, cancelKey: string, controller: AbortController): Promise<void> {
  try {
    if (redis.status === "ready" && (await redis.exists(cancelKey)) === 1) controller.abort("cancelled");
  } catch {
    // The connection is lost: asked again at the next turn, after it is back.
  }
}

async function handle(handlers: JobHandlers, job: Job, signal: AbortSignal): Promise<void> {
  if (job.name !== "run-solve") throw new Error(`No handler for the job "${job.name}".`);
  await handlers[job.name](job.data as JobPayloads["run-solve"], { signal });
}
