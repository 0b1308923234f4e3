import type { Clock } from "./clock.ts";
import type { EventBus } from "./event-bus.ts";
import type { Ids } from "./ids.ts";
import type { JobQueue } from "./job-queue.ts";
import type { Log } from "./log.ts";
import type { SolveRunner } from "./solve-runner.ts";
import type { TableReader } from "./table-reader.ts";
import type { TableWriter } from "./table-writer.ts";
import type { UnitOfWork } from "./unit-of-work.ts";

/** Everything that the application needs from the outside. */
export interface Ports {
  readonly clock: Clock;
  readonly ids: Ids;
  readonly log: Log;
  readonly store: UnitOfWork;
  readonly queue: JobQueue;
  readonly solver: SolveRunner;
  readonly bus: EventBus;
  readonly tableReader: TableReader;
  readonly tableWriter: TableWriter;
}
