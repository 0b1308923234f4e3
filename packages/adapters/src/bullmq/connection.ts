import type { Log } from "@formweek/application";
import { Redis } from "ioredis";

/** `patient` waits for a lost server for ever (workers, listeners); `prompt` fails a command soon, so that a request is answered. */
export type Patience = "patient" | "prompt";

/** Opens a connection that reconnects by itself; a lost server is logged once, not at every attempt. */
export function openRedis(url: string, patience: Patience, log: Log): Redis {
  const redis = new Redis(url, {
    maxRetriesPerRequest: patience === "patient" ? null : 3,
    retryStrategy: (attempt) => Math.min(50 * attempt, 1000),
    connectTimeout: 5_000,
  });
  let lost = false;
  redis.on("error", (error: Error) => {
    if (!lost) log.warn("Redis does not answer", { reason: error.message });
    lost = true;
  });
  redis.on("ready", () => {
    if (lost) log.info("Redis answers again");
    lost = false;
  });
  return redis;
}
