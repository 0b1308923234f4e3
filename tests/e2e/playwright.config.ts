import { defineConfig } from "@playwright/test";
import { CHROMIUM_FLAGS, chromiumProgram } from "../services/browser.ts";

const executablePath = chromiumProgram();

/** Browser runs of the built app. Each test starts the server it needs, on a port and a data folder of its own. */
export default defineConfig({
  testDir: ".",
  testMatch: "**/*.spec.ts",
  outputDir: "../../test-results",
  timeout: 120_000,
  expect: { timeout: 15_000 },
  fullyParallel: false,
  workers: 1,
  retries: 0,
  forbidOnly: true,
  use: {
    browserName: "chromium",
    headless: true,
    viewport: { width: 1280, height: 800 },
    trace: "off",
    launchOptions: { args: [...CHROMIUM_FLAGS], ...(executablePath === undefined ? {} : { executablePath }) },
  },
});
