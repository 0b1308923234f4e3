import type { PlantEventBody } from "../events.ts";
import type { Ports } from "../ports/ports.ts";
import type { SolveRun } from "../ports/run-repository.ts";
import type { Repositories } from "../ports/unit-of-work.ts";
import { ok, refused } from "../result.ts";

const ATTEMPTS = 5;

/** True while a run waits or works. */
const isActive = (run: SolveRun): boolean => run.state === "queued" || run.state === "running";

/**
 * Changes a run that has not ended, reading it again when someone else wrote in between; null when it has ended or is
 * not there. `also` writes beside it in the same transaction and returns the events to store with it.
 */
export async function changeRun(
  ports: Pick<Ports, "store" | "clock">,
  runId: string,
  change: (run: SolveRun) => SolveRun,
  also: (repositories: Repositories, run: SolveRun) => Promise<AlsoWritten> = (_, run) =>
    Promise.resolve({ run, events: [] }),
): Promise<SolveRun | null> {
  for (let attempt = 1; attempt <= ATTEMPTS; attempt++) {
    const written = await ports.store.write<SolveRun, "ended" | "raced">(async (repositories) => {
      const current = await repositories.runs.get(runId);
      if (current === null || !isActive(current)) return refused("ended" as const);
      const { run, events } = await also(repositories, change(current));
      if (!(await repositories.runs.update(run))) return refused("raced" as const);
      // the best plan so far is that of a run that is going on
      if (run.state !== "running") await repositories.provisional.forget(run.id);
      for (const body of events) await repositories.events.append(run.plantId, ports.clock.now(), body);
      return ok({ ...run, revision: run.revision + 1 });
    });
    if (written.ok) return written.value;
    if (written.error === "ended") return null;
  }
  throw new Error(`run ${runId} was written by others ${ATTEMPTS} times in a row`);
}

/** What `also` decided: the run to write, and events to store with it. */
export interface AlsoWritten {
  readonly run: SolveRun;
  readonly events: readonly PlantEventBody[];
}
