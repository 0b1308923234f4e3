import type { Repositories, Result, UnitOfWork } from "@formweek/application";
import type { Database } from "./database.ts";
import { bookStepRepository } from "./book-step-repository.ts";
import { eventRepository } from "./event-repository.ts";
import { holdRepository } from "./hold-repository.ts";
import { importRepository } from "./import-repository.ts";
import { orderRepository } from "./order-repository.ts";
import { pinRepository } from "./pin-repository.ts";
import { planRepository } from "./plan-repository.ts";
import { plantRepository } from "./plant-repository.ts";
import { provisionalRepository } from "./provisional-repository.ts";
import { revisionRepository } from "./revision-repository.ts";
import { runRepository } from "./run-repository.ts";
import { scenarioRepository } from "./scenario-repository.ts";
import { stepRepository } from "./step-repository.ts";
import { isSerialisationFailure } from "./sql-state.ts";

/** Transactions over one database; both engines run the same code. */
export function sqlUnitOfWork(database: Database): UnitOfWork {
  return {
    read: (work) =>
      database.transaction((transaction) => work(repositoriesOf(transaction)), {
        isolationLevel: "repeatable read",
        accessMode: "read only",
      }),
    write: (work) => retrying(() => writeOnce(database, work)),
  };
}

/** Carries a refusal out of the transaction, so that it is rolled back. */
class Refusal<T, E> extends Error {
  readonly result: Result<T, E>;
  constructor(result: Result<T, E>) {
    super("refused");
    this.result = result;
  }
}

async function writeOnce<T, E>(
  database: Database,
  work: (repositories: Repositories) => Promise<Result<T, E>>,
): Promise<Result<T, E>> {
  try {
    return await database.transaction(
      async (transaction) => {
        const result = await work(repositoriesOf(transaction));
        if (!result.ok) throw new Refusal(result);
        return result;
      },
      { isolationLevel: "serializable" },
    );
  } catch (error) {
    if (error instanceof Refusal) return error.result;
    throw error;
  }
}

const maxAttempts = 12;
const firstPauseMs = 5;

/** PostgreSQL refuses one of two transactions that can not be put one after the other; the loser starts again. */
async function retrying<T>(attempt: () => Promise<T>): Promise<T> {
  for (let tries = 1; ; tries++) {
    try {
      return await attempt();
    } catch (error) {
      if (tries === maxAttempts || !isSerialisationFailure(error)) throw error;
      const pauseMs = Math.min(firstPauseMs * 2 ** tries, 500) * (0.5 + Math.random());
      await new Promise((resolve) => setTimeout(resolve, pauseMs));
    }
  }
}

function repositoriesOf(database: Database): Repositories {
  return {
    plants: plantRepository(database),
    orders: orderRepository(database),
    bookSteps: bookStepRepository(database),
    pins: pinRepository(database),
    holds: holdRepository(database),
    revisions: revisionRepository(database),
    imports: importRepository(database),
    runs: runRepository(database),
    scenarios: scenarioRepository(database),
    provisional: provisionalRepository(database),
    plans: planRepository(database),
    steps: stepRepository(database),
    events: eventRepository(database),
  };
}
