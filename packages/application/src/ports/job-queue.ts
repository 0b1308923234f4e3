/** Job name → payload. A payload carries ids only; the rows in the store are the truth. */
export interface JobPayloads {
  readonly "run-solve": { readonly runId: string };
}
export type JobName = keyof JobPayloads;

/** Handlers are idempotent: a job may be delivered again after a crash. A rejection is logged and the job retried at most twice. */
export type JobHandlers = {
  readonly [Name in JobName]: (payload: JobPayloads[Name], context: JobContext) => Promise<void>;
};

export interface JobContext {
  /** Aborted with reason "cancelled" by `cancel(key)`, with reason "closing" when the process goes down. */
  readonly signal: AbortSignal;
}

export interface JobQueue {
  /** Queues a job. A key that already waits or runs is not queued twice; a key that has ended may be queued again. */
  readonly enqueue: <Name extends JobName>(
    name: Name,
    payload: JobPayloads[Name],
    key: string,
  ) => Promise<void>;
  /** Aborts the signal of the job of that key where it runs. A waiting job is left alone: its handler reads the row. Unknown keys are fine. */
  readonly cancel: (key: string) => Promise<void>;
  /** True while a job of that key waits or runs anywhere. */
  readonly isLive: (key: string) => Promise<boolean>;
}

/** The side that runs jobs; `stop` aborts running jobs with reason "closing" and resolves when their handlers have returned. */
export interface JobConsumer {
  readonly consume: (handlers: JobHandlers) => Promise<{ readonly stop: () => Promise<void> }>;
}
