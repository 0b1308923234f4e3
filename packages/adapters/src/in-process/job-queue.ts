import type { JobConsumer, JobHandlers, JobName, JobPayloads, JobQueue, Log } from "@formweek/application";

export interface InProcessQueueOptions {
  readonly log: Log;
  /** Jobs that run at the same time, at least 1. */
  readonly concurrency: number;
  /** Pause before the first retry of a failed job, milliseconds; doubled for the second. */
  readonly retryPauseMs: number;
}

/** A job with its payload, one member for each name. */
type Work = {
  readonly [Name in JobName]: { readonly name: Name; readonly payload: JobPayloads[Name] };
}[JobName];

interface LiveJob {
  readonly key: string;
  readonly work: Work;
  failures: number;
  /** Null while it waits. */
  running: { readonly controller: AbortController; readonly ended: Promise<void> } | null;
}

const maxFailures = 3;

/**
 * Jobs of one process, in memory: what was queued or running when the process dies is queued again at the next start
 * from the rows in the store, which are the truth. Jobs start in the order of queueing.
 */
export function inProcessQueue(options: InProcessQueueOptions): JobQueue & JobConsumer {
  const { log, concurrency } = options;
  const live = new Map<string, LiveJob>();
  const waiting: LiveJob[] = [];
  let handlers: JobHandlers | null = null;

  const startWaiting = (): void => {
    while (handlers !== null && waiting.length > 0 && runningJobs(live).length < concurrency) {
      const job = waiting.shift();
      if (job !== undefined) start(job, handlers);
    }
  };

  const start = (job: LiveJob, taken: JobHandlers): void => {
    const controller = new AbortController();
    const ended = handle(taken, job.work, controller.signal)
      .then(
        () => live.delete(job.key),
        (error: unknown) => failed(job, error),
      )
      .then(startWaiting);
    job.running = { controller, ended };
  };

  const failed = (job: LiveJob, error: unknown): void => {
    job.failures += 1;
    job.running = null;
    const again = job.failures < maxFailures && handlers !== null;
    log.error("A job failed", { job: job.work.name, key: job.key, again }, error);
    if (!again) return void live.delete(job.key);
    const pause = setTimeout(() => {
      waiting.push(job);
      startWaiting();
    }, options.retryPauseMs * job.failures);
    pause.unref();
  };

  return {
    enqueue: (name, payload, key) => {
      if (!live.has(key)) {
        const job: LiveJob = { key, work: { name, payload }, failures: 0, running: null };
        live.set(key, job);
        waiting.push(job);
        // Not at once: whoever queues a job finishes what it does first.
        setImmediate(startWaiting);
      }
      return Promise.resolve();
    },
    cancel: (key) => {
      live.get(key)?.running?.controller.abort("cancelled");
      return Promise.resolve();
    },
    isLive: (key) => Promise.resolve(live.has(key)),
    consume: (taken) => {
      handlers = taken;
      startWaiting();
      return Promise.resolve({
        stop: async () => {
          handlers = null;
          const stopping = runningJobs(live);
          for (const { controller } of stopping) controller.abort("closing");
          await Promise.all(stopping.map(({ ended }) => ended));
        },
      });
    },
  };
}

const runningJobs = (live: ReadonlyMap<string, LiveJob>) =>
  [...live.values()].flatMap(({ running }) => (running === null ? [] : [running]));

async function handle(handlers: JobHandlers, work: Work, signal: AbortSignal): Promise<void> {
  await handlers[work.name](work.payload, { signal });
}
