import type { Plan } from "@formweek/scheduler";
import type { PlanDocument } from "../planning/plan-document.ts";
import type { Ports } from "../ports/ports.ts";
import type { SolveRun } from "../ports/run-repository.ts";
import { ok } from "../result.ts";

/** Least time between two provisional plans that are stored, ms. */
const EVERY_MS = 1000;
/** Describing and storing one holds up whatever else the process does: at most one part of the time in so many. */
const TIME_PER_PLAN = 10;
/** A stop may name any of so many newest: the one that was looked at may be outrun by the time it is named. */
export const KEEPABLE = 3;

export interface ProvisionalKeeper {
  readonly offer: (plan: Plan) => void;
  /** To be called now and then: stores what was offered too soon after another. */
  readonly tick: () => void;
  /** Resolves when nothing is being stored; nothing is stored afterwards. */
  readonly settle: () => Promise<void>;
  /** A plan that was stored under a number that a stop may name. */
  readonly plan: (number: number) => Plan | null;
}

/** Stores a run's best plan so far for whoever wants to look at it, and tells of it; the newest of several that come close together. */
export function provisionalKeeper(
  ports: Pick<Ports, "store" | "bus" | "clock" | "log">,
  run: SolveRun,
  describe: (plan: Plan) => PlanDocument,
): ProvisionalKeeper {
  const { store, bus, clock, log } = ports;
  const kept = new Map<number, Plan>();
  let waiting: Plan | null = null;
  let writing: Promise<void> | null = null;
  let number = 0;
  let nextMs = -Infinity;
  let isSettled = false;

  const write = async (plan: Plan): Promise<void> => {
    const next = number + 1;
    const foundAt = clock.now();
    const document = describe(plan);
    const stored = await store.write(async ({ provisional }) =>
      ok(await provisional.put(run.id, { number: next, foundAt, document })),
    );
    if (!stored.ok || !stored.value) return;
    number = next;
    kept.set(next, plan);
    kept.delete(next - KEEPABLE);
    const body = { type: "better-plan", runId: run.id, number: next } as const;
    await bus.publish({ plantId: run.plantId, sequence: null, at: foundAt, body });
  };

  const tick = (): void => {
    const fromMs = clock.monotonicMs();
    if (waiting === null || writing !== null || isSettled || fromMs < nextMs) return;
    const plan = waiting;
    waiting = null;
    writing = write(plan)
      .catch((error: unknown) => {
        log.warn("A provisional plan was not stored", { runId: run.id, reason: String(error) });
      })
      .finally(() => {
        nextMs = fromMs + Math.max(EVERY_MS, TIME_PER_PLAN * (clock.monotonicMs() - fromMs));
        writing = null;
      });
  };

  return {
    offer: (plan) => {
      waiting = plan;
      tick();
    },
    tick,
    settle: async () => {
      isSettled = true;
      await writing;
    },
    plan: (wanted) => kept.get(wanted) ?? null,
  };
}
