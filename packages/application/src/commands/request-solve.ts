import { appError } from "../errors.ts";
import { plantNotFound } from "../not-found.ts";
import type { Ports } from "../ports/ports.ts";
import type { SolveRun } from "../ports/run-repository.ts";
import { ok, refused } from "../result.ts";
import type { PlantInput, UseCase } from "../use-case.ts";

/** Budget of a planning run; null where not given. */
export interface SolveWish extends PlantInput {
  readonly seconds: number | null;
  readonly steps: number | null;
  readonly seed: number | null;
  readonly threads: number | null;
}

/** Budget when none is asked for, seconds. */
const DEFAULT_SECONDS = 10;

/** The key under which a run's job is queued: one job a run. */
export const solveJobKey = (runId: string): string => `run-solve-${runId}`;

/** Asks for a plan of the order book as it stands when the run starts. One run a plant at a time. */
export const requestSolve: UseCase<SolveWish, { readonly runId: string }> = {
  role: "planner",
  run: async (ports, wish, actor) => {
    const run = newRun(ports, wish, actor.id);
    const stored = await ports.store.write(async ({ plants, orders, runs }) => {
      if ((await plants.get(wish.plantId)) === null) return refused(plantNotFound(wish.plantId));
      if ((await orders.book(wish.plantId)).orders.length === 0) return refused(emptyBook);
      return (await runs.insert(run)) ? ok({ runId: run.id }) : refused(alreadySolving);
    });
    if (!stored.ok) return stored;
    await queueRun(ports, run);
    return stored;
  },
};

/** Queues a stored run and tells whoever watches. A queue that fails is no loss: the stored run is queued again by recovery. */
export async function queueRun(ports: Ports, run: SolveRun): Promise<void> {
  const { id: runId, plantId } = run;
  try {
    await ports.queue.enqueue("run-solve", { runId }, solveJobKey(runId));
    await ports.bus.publish({
      plantId,
      sequence: null,
      at: ports.clock.now(),
      body: { type: "solve-progress", runId, state: "queued", progress: null },
    });
  } catch (error) {
    ports.log.error("A planning run waits: its job could not be queued", { runId }, error);
  }
}

function newRun(ports: Ports, wish: SolveWish, requestedBy: string): SolveRun {
  const noBudget = wish.seconds === null && wish.steps === null;
  const seconds = noBudget ? DEFAULT_SECONDS : wish.seconds;
  return {
    id: ports.ids.next(),
    plantId: wish.plantId,
    revision: 1,
    state: "queued",
    params: {
      seed: wish.seed ?? 1,
      maxSteps: wish.steps,
      maxMs: seconds === null ? null : Math.round(seconds * 1000),
      threads: wish.threads ?? 1,
    },
    stopRequested: false,
    requestedAt: ports.clock.now(),
    requestedBy,
    startedAt: null,
    endedAt: null,
    progress: null,
    curve: [],
    planId: null,
    problem: null,
    recoveries: 0,
  };
}

const alreadySolving = appError("solve-in-progress", {
  title: "A plan is being made already.",
  cause: "One planning run at a time works on a plant.",
  remedy: "Wait until it has ended, or stop it: the best plan so far is kept.",
});

const emptyBook = appError("nothing-to-plan", {
  title: "There is nothing to plan.",
  cause: "The order book of this plant is empty.",
  remedy: "Import orders first.",
});
