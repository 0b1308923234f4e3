import type { Plan } from "@formweek/scheduler";
import { describe, expect, test } from "vitest";
import type { PlantMessage } from "../ports/event-bus.ts";
import type { Ports } from "../ports/ports.ts";
import type { PlanDocument } from "../planning/plan-document.ts";
import type { ProvisionalPlan } from "../ports/provisional-repository.ts";
import type { SolveRun } from "../ports/run-repository.ts";
import { provisionalKeeper } from "./provisional-keeper.ts";

const run = { id: "R", plantId: "P" } as SolveRun;
const planOf = (name: string): Plan => ({ name }) as unknown as Plan;

const never = (): boolean => false;

/** A keeper over a store that is a list, with a clock that stands until it is put on. */
function kept({ isStopped = never, storeFails = never, describeMs = 0 } = {}) {
  const stored: ProvisionalPlan[] = [];
  const told: PlantMessage[] = [];
  const warnings: string[] = [];
  let ms = 0;
  const put = (_: string, plan: ProvisionalPlan): Promise<boolean> => {
    if (storeFails()) return Promise.reject(new Error("the disk is full"));
    if (!isStopped()) stored.push(plan);
    return Promise.resolve(!isStopped());
  };
  const ports = {
    clock: { now: () => 1000 + Math.floor(ms / 1000), monotonicMs: () => ms },
    bus: { publish: (message: PlantMessage) => Promise.resolve(void told.push(message)) },
    log: { warn: (words: string) => void warnings.push(words) },
    store: { write: (work: (repositories: unknown) => unknown) => work({ provisional: { put } }) },
  } as unknown as Pick<Ports, "store" | "bus" | "clock" | "log">;
  const keeper = provisionalKeeper(ports, run, (plan) => {
    ms += describeMs;
    return plan as unknown as PlanDocument;
  });
  const after = async (more: number): Promise<void> => {
    await new Promise((resolve) => setTimeout(resolve));
    ms += more;
    keeper.tick();
    await new Promise((resolve) => setTimeout(resolve));
  };
  return { keeper, stored, told, warnings, after };
}

describe("a run's best plan so far", () => {
  test("is stored and told of at once, then once a second, the newest of those that came meanwhile", async () => {
    const { keeper, stored, told, after } = kept();
    for (const name of ["a", "b", "c"]) keeper.offer(planOf(name));
    await after(999);
    expect(stored.map(({ document }) => document)).toEqual([planOf("a")]);
    await after(1);
    expect(stored.map(({ number, document }) => [number, document])).toEqual([
      [1, planOf("a")],
      [2, planOf("c")],
    ]);
    expect(told.map(({ body }) => body)).toEqual([
      { type: "better-plan", runId: "R", number: 1 },
      { type: "better-plan", runId: "R", number: 2 },
    ]);
    await after(5000);
    expect(stored).toHaveLength(2);
  });

  test("takes a tenth of the time at most, where it takes long to describe", async () => {
    const { keeper, stored, after } = kept({ describeMs: 400 });
    keeper.offer(planOf("a"));
    keeper.offer(planOf("b"));
    await after(3500);
    expect(stored).toHaveLength(1);
    await after(100);
    expect(stored).toHaveLength(2);
  });

  test("can be had again by the numbers that a stop may name, and no others", async () => {
    const { keeper, after } = kept();
    for (const name of ["a", "b", "c", "d"]) {
      keeper.offer(planOf(name));
      await after(1000);
    }
    expect([0, 1, 2, 3, 4, 5].map((number) => keeper.plan(number))).toEqual([
      null,
      null,
      planOf("b"),
      planOf("c"),
      planOf("d"),
      null,
    ]);
  });

  test("is not told of where the store does not take it, and takes no number then", async () => {
    let isStopped = true;
    const { keeper, told, after } = kept({ isStopped: () => isStopped });
    keeper.offer(planOf("a"));
    await after(1000);
    expect([told, keeper.plan(1)]).toEqual([[], null]);
    isStopped = false;
    keeper.offer(planOf("b"));
    await after(1000);
    expect(keeper.plan(1)).toEqual(planOf("b"));
  });

  test("does no harm to the run where it cannot be stored", async () => {
    let isFull = true;
    const { keeper, stored, warnings, after } = kept({ storeFails: () => isFull });
    keeper.offer(planOf("a"));
    await after(1000);
    expect([stored.length, warnings.length]).toEqual([0, 1]);
    isFull = false;
    keeper.offer(planOf("b"));
    await after(1000);
    expect(stored).toHaveLength(1);
  });

  test("is not stored any more once all is settled", async () => {
    const { keeper, stored, after } = kept();
    keeper.offer(planOf("a"));
    await keeper.settle();
    keeper.offer(planOf("b"));
    await after(10_000);
    expect(stored.map(({ document }) => document)).toEqual([planOf("a")]);
  });
});
