import { bullmqConsumer, bullmqQueue, redisEventBus } from "@formweek/adapters/bullmq";
import { inProcessEventBus, inProcessQueue } from "@formweek/adapters/in-process";
import { describe, expect, test } from "vitest";
import { eventually } from "../fixtures/eventually.ts";
import { recordingLog } from "../fixtures/recording-log.ts";
import { newId } from "../fixtures/stored-records.ts";
import { testRedisUrl } from "../services/reachable-servers.ts";
import { eventBusSuite } from "./suites/event-bus-suite.ts";
import { jobQueueSuite } from "./suites/job-queue-suite.ts";

const redis = () => ({ url: testRedisUrl ?? "", prefix: `test-${newId()}`, log: recordingLog() });

describe("the job queue in one process", () => {
  jobQueueSuite(() => {
    const both = inProcessQueue({ log: recordingLog(), concurrency: 2, retryPauseMs: 5 });
    return Promise.resolve({ queue: both, consumer: both, close: () => Promise.resolve() });
  });
});

describe.skipIf(testRedisUrl === null)("the job queue on Redis", () => {
  jobQueueSuite(() => {
    const options = redis();
    const queue = bullmqQueue(options);
    const consumer = bullmqConsumer({ ...options, concurrency: 2 });
    const close = async (): Promise<void> => {
      await consumer.close();
      await queue.close();
    };
    return Promise.resolve({ queue, consumer, close });
  });

  test("a job that was running when its worker closed is handed to another worker, without using up a try", async () => {
    const options = redis();
    const queue = bullmqQueue(options);
    const [first, second] = [
      bullmqConsumer({ ...options, concurrency: 1 }),
      bullmqConsumer({ ...options, concurrency: 1 }),
    ];
    const key = newId();
    const ran: string[] = [];
    const untilAborted = (name: string) => ({
      "run-solve": (_: unknown, { signal }: { readonly signal: AbortSignal }) => {
        ran.push(name);
        if (name === "second") return Promise.resolve();
        return new Promise<void>((resolve) => signal.addEventListener("abort", () => resolve()));
      },
    });
    await queue.enqueue("run-solve", { runId: key }, key);
    for (let round = 0; round < 4; round++) {
      const working = await first.consume(untilAborted("first"));
      await eventually("the first works on it", () => ran.length === round + 1);
      await working.stop();
      expect(await queue.isLive(key)).toBe(true);
    }
    const working = await second.consume(untilAborted("second"));
    await eventually("the job is done", async () => !(await queue.isLive(key)));
    expect(ran).toEqual(["first", "first", "first", "first", "second"]);
    await working.stop();
    for (const end of [first, second, queue]) await end.close();
  });

  test("a cancel given in one process reaches the worker in another", async () => {
    const options = redis();
    const [asking, ownQueue] = [bullmqQueue(options), bullmqQueue(options)];
    const consumer = bullmqConsumer({ ...options, concurrency: 1 });
    const key = newId();
    let reason: unknown = null;
    const working = await consumer.consume({
      "run-solve": (_, { signal }) =>
        new Promise<void>((resolve) =>
          signal.addEventListener("abort", () => {
            reason = signal.reason;
            resolve();
          }),
        ),
    });
    await ownQueue.enqueue("run-solve", { runId: key }, key);
    await eventually("it is cancelled", async () => {
      await asking.cancel(key);
      return reason !== null;
    });
    expect(reason).toBe("cancelled");
    await working.stop();
    for (const end of [consumer, asking, ownQueue]) await end.close();
  });
});

describe("the event bus in one process", () => {
  eventBusSuite(() => {
    const bus = inProcessEventBus(recordingLog());
    return Promise.resolve({ speaker: bus, hearer: bus, close: () => Promise.resolve() });
  });
});

describe.skipIf(testRedisUrl === null)("the event bus on Redis", () => {
  eventBusSuite(() => {
    const options = redis();
    const [speaker, hearer] = [redisEventBus(options), redisEventBus(options)];
    const close = async (): Promise<void> => {
      await speaker.close();
      await hearer.close();
    };
    return Promise.resolve({ speaker, hearer, close });
  });
});
