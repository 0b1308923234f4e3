import { type AppError, appError } from "../errors.ts";
import type { Ports } from "../ports/ports.ts";
import type { RunParams, RunTask, SolveRun } from "../ports/run-repository.ts";
import type { Repositories } from "../ports/unit-of-work.ts";
import { type Result, ok, refused } from "../result.ts";
import type { PlantInput } from "../use-case.ts";

/** The key under which a run's job is queued: one job a run. */
export const solveJobKey = (runId: string): string => `run-solve-${runId}`;

/** Budget and seed that a run is asked for with; null where not given. */
export interface RunWish extends PlantInput {
  readonly seconds: number | null;
  readonly steps: number | null;
  readonly seed: number | null;
  readonly threads: number | null;
}

/** A wish made into the settings of a run; without any budget it gets `usualSeconds`. */
export function runParams(wish: RunWish, usualSeconds: number): RunParams {
  const noBudget = wish.seconds === null && wish.steps === null;
  const seconds = noBudget ? usualSeconds : wish.seconds;
  return {
    seed: wish.seed ?? 1,
    maxSteps: wish.steps,
    maxMs: seconds === null ? null : Math.round(seconds * 1000),
    threads: wish.threads ?? 1,
  };
}

/** What a new run is to do. */
export interface NewRun {
  readonly plantId: string;
  readonly params: RunParams;
  readonly requestedBy: string;
}

/**
 * Stores a run whose task `choose` makes of the records as they are, or refuses, and queues it. One run a plant at a time,
 * whatever its task: each takes all the processors that it may have.
 */
export async function startRun(
  ports: Ports,
  { plantId, params, requestedBy }: NewRun,
  choose: (repositories: Repositories) => Promise<Result<RunTask>>,
): Promise<Result<{ readonly runId: string }>> {
  const id = ports.ids.next();
  const requestedAt = ports.clock.now();
  const stored = await ports.store.write<SolveRun, AppError>(async (repositories) => {
    const task = await choose(repositories);
    if (!task.ok) return task;
    const run: SolveRun = {
      id,
      plantId,
      revision: 1,
      state: "queued",
      task: task.value,
      params,
      stopRequested: false,
      keep: null,
      requestedAt,
      requestedBy,
      startedAt: null,
      endedAt: null,
      progress: null,
      curve: [],
      planId: null,
      findings: null,
      problem: null,
      recoveries: 0,
    };
    return (await repositories.runs.insert(run)) ? ok(run) : refused(alreadyRunning);
  });
  if (!stored.ok) return stored;
  await queueRun(ports, stored.value);
  return ok({ runId: id });
}

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

const alreadyRunning = appError("solve-in-progress", {
  title: "A plan is being made already.",
  cause: "One run at a time works on a plant: planning, a search for remedies, a comparison of plans, or scenarios.",
  remedy: "Wait until it has ended, or stop it: the best so far is kept.",
});
