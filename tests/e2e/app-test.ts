import { expect, test as base, type Page } from "@playwright/test";
import { startApp, type AppServer } from "../services/app-server.ts";

/** Tests against the real app; one server for each worker, so that a spec's tests build on one another's data. */
export const test = base.extend<object, { readonly app: AppServer }>({
  app: [
    // The tool asks for a pattern as first argument even when nothing is taken from it.

    async ({}, use) => {
      const app = await startApp();
      await use(app);
      await app.stop();
    },
    { scope: "worker", timeout: 120_000 },
  ],
  baseURL: async ({ app }, use) => {
    await use(app.url);
  },
});

/** Opens the panel of a button, where it is not open yet. */
export async function openPanel(page: Page, name: string | RegExp): Promise<void> {
  const button = page.getByRole("button", { name });
  await button.waitFor();
  if ((await button.getAttribute("aria-expanded")) === "false") await button.click();
}

/** Walks the board by keyboard to the first run: a plan may begin with a change. */
export async function selectRun(page: Page): Promise<void> {
  const board = page.getByRole("application");
  const run = page.getByRole("complementary").getByRole("heading", { name: /^Order / });
  await board.focus();
  await page.keyboard.press("Home");
  for (let step = 0; step < 12; step += 1) {
    await page.keyboard.press("ArrowRight");
    await page.evaluate(
      () => new Promise((shown) => requestAnimationFrame(() => requestAnimationFrame(shown))),
    );
    if (await run.isVisible()) return;
  }
  await expect(run).toBeVisible();
}

/** The button of how to plan, whose words say what is chosen. */
export const howToPlan = /^How to plan:/;

export { expect };
