import { test as base, type Page } from "@playwright/test";
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

/** The button of how to plan, whose words say what is chosen. */
export const howToPlan = /^How to plan:/;

export { expect } from "@playwright/test";
