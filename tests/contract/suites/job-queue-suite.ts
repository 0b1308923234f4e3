import type { JobConsumer, JobContext, JobHandlers, JobQueue } from "@formweek/application";
import { afterAll, afterEach, beforeAll, expect, test } from "vitest";
import { eventually } from "../../fixtures/eventually.ts";
import { newId } from "../../fixtures/stored-records.ts";

/** A queue and its working side; `close` ends both. Two jobs run at a time. */
export interface QueueUnderTest {
  readonly queue: JobQueue;
  readonly consumer: JobConsumer;
  readonly close: () => Promise<void>;
}

/** What every job queue must do. */
export function jobQueueSuite(open: () => Promise<QueueUnderTest>): void {
  let under: QueueUnderTest;
  let consuming: { readonly stop: () => Promise<void> } | null = null;
  beforeAll(async () => {
    under = await open();
  });
  const mine = new Set<string>();
  afterEach(async () => {
    await consuming?.stop();
    consuming = null;
    mine.clear();
  });
  afterAll(() => under.close());

  const consume = async (handler: JobHandlers["run-solve"]): Promise<void> => {
    // A queue that outlives its worker hands over what an earlier test left running.
    consuming = await under.consumer.consume({
      "run-solve": (payload, context) =>
        mine.has(payload.runId) ? handler(payload, context) : Promise.resolve(),
    });
  };
  const enqueue = async (key: string): Promise<void> => {
    mine.add(key);
    await under.queue.enqueue("run-solve", { runId: key }, key);
  };
  const gone = (key: string) =>
    eventually(`${key} is no longer live`, async () => !(await under.queue.isLive(key)));

  test("jobs that were queued before anyone works are run, each once, with their payload", async () => {
    const keys = [newId(), newId(), newId()];
    for (const key of keys) await enqueue(key);
    for (const key of keys) expect(await under.queue.isLive(key)).toBe(true);
    const ran: string[] = [];
    await consume(({ runId }) => Promise.resolve(void ran.push(runId)));
    for (const key of keys) await gone(key);
    expect(new Set(ran)).toEqual(new Set(keys));
    expect(ran).toHaveLength(keys.length);
  });

  test("a key that waits or runs is not queued twice; one that has ended may be queued again", async () => {
    const key = newId();
    let runs = 0;
    let release = (): void => undefined;
    const held = new Promise<void>((resolve) => (release = resolve));
    await enqueue(key);
    await enqueue(key);
    await consume(() => {
      runs += 1;
      return held;
    });
    await eventually("the job runs", () => runs === 1);
    await enqueue(key);
    release();
    await gone(key);
    expect(runs).toBe(1);
    await enqueue(key);
    await eventually("it runs again", () => runs === 2);
    await gone(key);
  });

  test("a key may hold any character", async () => {
    const key = `run:${newId()}/ü 1`;
    const ran: string[] = [];
    await consume(({ runId }) => Promise.resolve(void ran.push(runId)));
    await enqueue(key);
    await eventually("it ran", () => ran.length === 1);
    await gone(key);
    expect(ran).toEqual([key]);
  });

  test("no more than two jobs run at once, and all run in the end", async () => {
    const keys = Array.from({ length: 8 }, newId);
    let running = 0;
    let most = 0;
    let ended = 0;
    await consume(async () => {
      running += 1;
      most = Math.max(most, running);
      await new Promise((resolve) => setTimeout(resolve, 30));
      running -= 1;
      ended += 1;
    });
    for (const key of keys) await enqueue(key);
    await eventually("all have run", () => ended === keys.length);
    expect(most).toBe(2);
  });

  test("cancel aborts the signal of the running job with the reason", async () => {
    const [key, other] = [newId(), newId()];
    const signals = new Map<string, AbortSignal>();
    await consume(async ({ runId }, { signal }) => {
      signals.set(runId, signal);
      await aborted(signal);
    });
    await enqueue(key);
    await enqueue(other);
    await eventually("both run", () => signals.size === 2);
    await under.queue.cancel(key);
    await gone(key);
    expect(signals.get(key)?.reason).toBe("cancelled");
    expect(signals.get(other)?.aborted).toBe(false);
  });

  test("a cancel of a waiting job leaves it to its handler; of an unknown key it does nothing", async () => {
    const key = newId();
    const seen: boolean[] = [];
    await under.queue.cancel(newId());
    await enqueue(key);
    await under.queue.cancel(key);
    await consume(async (_, { signal }) => {
      await new Promise((resolve) => setTimeout(resolve, 600));
      seen.push(signal.aborted);
    });
    await gone(key);
    expect(seen).toEqual([false]);
  });

  test("a job that fails is tried three times in all, and then is no longer live", async () => {
    const key = newId();
    let tries = 0;
    await consume(() => {
      tries += 1;
      return Promise.reject(new Error(`attempt ${tries} failed`));
    });
    await enqueue(key);
    await gone(key);
    expect(tries).toBe(3);
  });

  test("a job that fails once is done at the second try", async () => {
    const key = newId();
    let tries = 0;
    await consume(() => (++tries === 1 ? Promise.reject(new Error("once")) : Promise.resolve()));
    await enqueue(key);
    await gone(key);
    expect(tries).toBe(2);
  });

  test("stop aborts running jobs with reason closing and waits for their handlers", async () => {
    const key = newId();
    let context: JobContext | null = null;
    let returned = false;
    await consume(async (_, given) => {
      context = given;
      await aborted(given.signal);
      await new Promise((resolve) => setTimeout(resolve, 50));
      returned = true;
    });
    await enqueue(key);
    await eventually("it runs", () => context !== null);
    await consuming?.stop();
    consuming = null;
    expect(returned).toBe(true);
    expect((context as JobContext | null)?.signal.reason).toBe("closing");
  });
}

function aborted(signal: AbortSignal): Promise<void> {
  return new Promise((resolve) => {
    if (signal.aborted) resolve();
    signal.addEventListener("abort", () => resolve(), { once: true });
  });
}
