import { appError } from "../errors.ts";
import { queueRun, solveJobKey } from "../commands/start-run.ts";
import type { Ports } from "../ports/ports.ts";
import { publishPending } from "../publish-pending.ts";
import { changeRun } from "./change-run.ts";

/** A run that takes its process down with it is not tried for ever. */
const MAX_RECOVERIES = 3;

/**
 * Puts back runs whose job is gone (their process died, or the queue forgot them). Called at start-up and from time to
 * time by whoever runs jobs. Returns how many runs were queued again.
 */
export async function recoverRuns(ports: Ports): Promise<number> {
  const active = await ports.store.read(({ runs }) => runs.listActive());
  let queued = 0;
  for (const run of active) {
    if (await ports.queue.isLive(solveJobKey(run.id))) continue;
    const back = await changeRun(
      ports,
      run.id,
      (current) => {
        if (current.state === "queued") return current;
        const ended = { ...current, endedAt: ports.clock.now() };
        if (current.stopRequested) return { ...ended, state: "stopped" };
        if (current.recoveries >= MAX_RECOVERIES) return { ...ended, state: "failed", problem: diedTooOften };
        return {
          ...current,
          state: "queued",
          startedAt: null,
          progress: null,
          curve: [],
          recoveries: current.recoveries + 1,
        };
      },
      (_, changed) =>
        Promise.resolve({
          run: changed,
          events:
            changed.state === "stopped" || changed.state === "failed"
              ? [{ type: "solve-ended", runId: changed.id, state: changed.state, planId: null }]
              : [],
        }),
    );
    if (back?.state !== "queued") continue;
    ports.log.info("Put back a planning run", { runId: back.id, plantId: back.plantId });
    await queueRun(ports, back);
    queued++;
  }
  await publishPending(ports);
  return queued;
}

const diedTooOften = appError("solver-failed", {
  title: "No plan could be made.",
  cause: `The planner's process ended ${MAX_RECOVERIES + 1} times while it worked on this run.`,
  remedy:
    "Check that the machine has memory left, then start a new run with a smaller budget or fewer threads.",
});
