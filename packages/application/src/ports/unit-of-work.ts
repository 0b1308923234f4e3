import type { Result } from "../result.ts";
import type { BookStepRepository } from "./book-step-repository.ts";
import type { EventRepository } from "./event-repository.ts";
import type { HoldRepository } from "./hold-repository.ts";
import type { ImportRepository } from "./import-repository.ts";
import type { OrderRepository } from "./order-repository.ts";
import type { PinRepository } from "./pin-repository.ts";
import type { PlanRepository } from "./plan-repository.ts";
import type { PlantRepository } from "./plant-repository.ts";
import type { ProvisionalRepository } from "./provisional-repository.ts";
import type { RevisionRepository } from "./revision-repository.ts";
import type { RunRepository } from "./run-repository.ts";
import type { ScenarioRepository } from "./scenario-repository.ts";
import type { StepRepository } from "./step-repository.ts";

/** Repositories of one transaction; not to be used after it ended. */
export interface Repositories {
  readonly plants: PlantRepository;
  readonly orders: OrderRepository;
  /** Steps of the work on the order book. */
  readonly bookSteps: BookStepRepository;
  readonly pins: PinRepository;
  readonly holds: HoldRepository;
  readonly revisions: RevisionRepository;
  readonly imports: ImportRepository;
  readonly runs: RunRepository;
  readonly scenarios: ScenarioRepository;
  /** Best plans of runs that are going on. */
  readonly provisional: ProvisionalRepository;
  readonly plans: PlanRepository;
  /** Steps of the working plan. */
  readonly steps: StepRepository;
  readonly events: EventRepository;
}

export interface UnitOfWork {
  /** One consistent view, nothing written. */
  readonly read: <T>(work: (repositories: Repositories) => Promise<T>) => Promise<T>;
  /**
   * One transaction: committed (really synced) when the work answers ok, rolled back when it refuses or throws. It may
   * be run again from the start after a serialisation failure, so the work has no effect but through its repositories.
   */
  readonly write: <T, E>(
    work: (repositories: Repositories) => Promise<Result<T, E>>,
  ) => Promise<Result<T, E>>;
}
