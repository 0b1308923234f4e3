import { compose, readWorkerConfig, type Runtime } from "@formweek/composition";
import { serveHealth } from "./health.ts";

const closeWithinMs = 25_000;

/** Takes jobs from the queue until it is told to end. */
async function main(): Promise<void> {
  const settings = readWorkerConfig(process.env);
  if (!settings.ok) {
    for (const { variable, problem, remedy } of settings.faults)
      process.stderr.write(`${variable}: ${problem} ${remedy}\n`);
    process.exitCode = 2;
    return;
  }
  const runtime = await compose(settings.config, "worker");
  const { healthPort } = settings.config;
  if (healthPort !== null) serveHealth(healthPort, runtime.health);
  closeOnSignal(runtime);
  await runtime.start();
  runtime.log.info("The worker waits for jobs");
}

/** The first signal hands running jobs back and closes; a second one, or a close that takes too long, ends at once. */
function closeOnSignal(runtime: Runtime): void {
  let closing = false;
  const close = (): void => {
    if (closing) process.exit(130);
    closing = true;
    setTimeout(() => process.exit(1), closeWithinMs).unref();
    runtime.close().then(
      () => process.exit(0),
      (error: unknown) => {
        runtime.log.error("Closing failed", {}, error);
        process.exit(1);
      },
    );
  };
  process.on("SIGINT", close);
  process.on("SIGTERM", close);
}

main().catch((error: unknown) => {
  process.stderr.write(`${error instanceof Error ? (error.stack ?? error.message) : String(error)}\n`);
  process.exit(1);
});
