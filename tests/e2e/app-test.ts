import { test as base } from "@playwright/test";
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

export { expect } from "@playwright/test";
