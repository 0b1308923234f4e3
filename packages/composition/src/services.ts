import type { EventBus, JobConsumer, JobQueue, UnitOfWork } from "@formweek/application";

/** What a process is for. On one machine the server does the worker's part, too. */
export type ProcessRole = "server" | "worker";

/** What differs between one machine and several: where records, jobs and messages are kept. */
export interface Services {
  readonly store: UnitOfWork;
  readonly queue: JobQueue;
  readonly bus: EventBus;
  /** Null: jobs run in other processes. */
  readonly consumer: JobConsumer | null;
  /** What `/health/ready` asks, by name; each rejects when it is down. */
  readonly checks: Readonly<Record<string, () => Promise<void>>>;
}
