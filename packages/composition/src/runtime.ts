import type { Application, Log } from "@formweek/application";
import type { Closing } from "./closing.ts";
import type { Services } from "./services.ts";

/** A composed process. */
export interface Runtime {
  readonly app: Application;
  readonly log: Log;
  /** True where this process runs jobs itself. A server that does is a planner on one machine. */
  readonly runsJobs: boolean;
  /** Begins to run jobs where this process is one that does; first puts back what an earlier process left behind. */
  readonly start: () => Promise<void>;
  /** Asks every service whether it answers. */
  readonly health: () => Promise<Health>;
  /** Ends running jobs (they are put back), then closes everything, the last opened first. A second call waits for the first. */
  readonly close: () => Promise<void>;
}

export interface Health {
  readonly ready: boolean;
  readonly parts: readonly { readonly name: string; readonly up: boolean }[];
}

interface RuntimeParts {
  readonly app: Application;
  readonly services: Services;
  readonly log: Log;
  readonly closing: Closing;
}

const upkeepEveryMs = 60_000;
const answerWithinMs = 3_000;

/** Joins the parts into something that starts, answers for its health, and closes in order. */
export function joinRuntime({ app, services, log, closing }: RuntimeParts): Runtime {
  const upkeep = (): Promise<void> =>
    app.upkeep().catch((error: unknown) => log.error("The upkeep failed; it is tried again", {}, error));
  let closed: Promise<void> | null = null;
  return {
    app,
    log,
    runsJobs: services.consumer !== null,
    start: async () => {
      if (services.consumer === null) return;
      await upkeep();
      const consuming = await services.consumer.consume(app.jobs);
      closing.add(consuming.stop);
      const timer = setInterval(() => void upkeep(), upkeepEveryMs);
      closing.add(() => Promise.resolve(clearInterval(timer)));
    },
    health: async () => {
      const parts = await Promise.all(
        Object.entries(services.checks).map(async ([name, check]) => ({ name, up: await answers(check) })),
      );
      return { ready: closed === null && parts.every(({ up }) => up), parts };
    },
    close: () => (closed ??= closing.closeAll()),
  };
}

function answers(check: () => Promise<void>): Promise<boolean> {
  return new Promise((resolve) => {
    const late = setTimeout(() => resolve(false), answerWithinMs);
    check().then(
      () => resolve(true),
      () => resolve(false),
    );
    late.unref();
  });
}
