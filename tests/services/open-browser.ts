import { chromium, type Page } from "@playwright/test";
import { startApp } from "./app-server.ts";
import { CHROMIUM_FLAGS, chromiumProgram } from "./browser.ts";

/** Chromium on the app with the demo plant, planned. */
export interface BenchBrowser {
  readonly url: string;
  /** A page of its own, nothing kept from others. */
  readonly withPage: <Result>(use: (page: Page) => Promise<Result>) => Promise<Result>;
  readonly close: () => Promise<void>;
}

/** On a machine with other work a page may take long. */
const patienceMs = 120_000;
const viewport = { width: 1920, height: 1080 };

export async function openBrowser(): Promise<BenchBrowser> {
  const app = await startApp();
  try {
    const executablePath = chromiumProgram();
    const browser = await chromium.launch({
      args: [...CHROMIUM_FLAGS],
      ...(executablePath === undefined ? {} : { executablePath }),
    });
    return {
      url: app.url,
      withPage: async (use) => {
        const context = await browser.newContext({ viewport, baseURL: app.url });
        try {
          context.setDefaultTimeout(patienceMs);
          // The runner of these files names every function by this, in pages too.
          await context.addInitScript("globalThis.__name = (each) => each;");
          return await use(await context.newPage());
        } finally {
          await context.close();
        }
      },
      close: async () => {
        await browser.close();
        await app.stop();
      },
    };
  } catch (cause) {
    await app.stop();
    throw cause;
  }
}
