import type { Page } from "@playwright/test";

/**
 * Processor time of a page's main thread while something is done on it, ms. Unlike frame times it hardly depends on what else the
 * machine does.
 */
export async function threadTime<Result>(
  page: Page,
  act: () => Promise<Result>,
): Promise<{ readonly result: Result; readonly ms: number }> {
  const session = await page.context().newCDPSession(page);
  await session.send("Performance.enable", { timeDomain: "threadTicks" });
  const seconds = async (): Promise<number> => {
    const { metrics } = await session.send("Performance.getMetrics");
    return metrics.find(({ name }) => name === "TaskDuration")?.value ?? Number.NaN;
  };
  const before = await seconds();
  const result = await act();
  const ms = 1000 * ((await seconds()) - before);
  await session.detach();
  return { result, ms };
}
