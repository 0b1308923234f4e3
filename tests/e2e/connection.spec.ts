import type { Page } from "@playwright/test";
import { startApp, type AppServer } from "../services/app-server.ts";
import { expectAccessible } from "./accessible.ts";
import { expect, selectRun, test as withApp } from "./app-test.ts";

/** These tests end their server and start it again: it is theirs alone. */
const test = withApp.extend<object, { readonly app: AppServer }>({
  app: [
    async ({}, use) => {
      const app = await startApp();
      await use(app);
      await app.stop();
    },
    { scope: "worker", timeout: 120_000 },
  ],
});

const told = (page: Page, words: string) => page.getByRole("status").filter({ hasText: words });
const gone = (page: Page) => told(page, "The server has not answered since");
const back = (page: Page) => told(page, "The server is back.");
const board = (page: Page) => page.getByRole("application");

/** Takes the first run of the board up by keyboard and lets it go one place further. */
async function moveFirstRun(page: Page): Promise<void> {
  await selectRun(page);
  for (const key of ["m", "ArrowRight", "Enter"]) await page.keyboard.press(key);
}

test("a server that goes and comes back: the board stays, a change is kept and sent again, all is fresh", async ({
  page,
  app,
}) => {
  await page.goto("/");
  await expect(board(page)).toBeVisible();
  await expect(page.getByRole("button", { name: "Publish…" })).toBeEnabled();
  await app.pause();
  await expect(gone(page)).toBeVisible();
  await expect(gone(page)).toContainText("changes are refused and stay here");
  await expectAccessible(page);

  await page.getByRole("button", { name: "Only late" }).click();
  await expect(page.getByText(/orders? found/)).toBeVisible();
  await page.getByRole("button", { name: "Show all" }).click();

  await moveFirstRun(page);
  const unanswered = page.getByRole("alert").filter({ hasText: "The server did not answer: Moved" });
  await expect(unanswered).toBeVisible();
  await page.screenshot({ path: "test-results/screens/board-server-gone-light-1280.png" });

  await app.resume();
  await page.getByRole("button", { name: "Try now" }).click();
  await expect(gone(page)).toBeHidden();
  await expect(back(page)).toBeVisible();
  await expect(unanswered).toBeVisible();
  await unanswered.getByRole("button", { name: "Send again" }).click();
  await expect(unanswered).toBeHidden();
  await expect(page.getByRole("button", { name: "Undo" })).toHaveAccessibleDescription(/^Undo: Moved/);
});

test("a step that was taken though its answer was lost is not taken twice", async ({ page }) => {
  await page.goto("/");
  await expect(page.getByRole("button", { name: "Publish…" })).toBeEnabled();
  await page.route("**/working-plan/edits", async (route) => {
    await route.fetch();
    await route.abort("connectionreset");
  });
  await moveFirstRun(page);
  const unanswered = page.getByRole("alert").filter({ hasText: "The server did not answer: Moved" });
  await expect(unanswered).toBeVisible();
  await page.unroute("**/working-plan/edits");
  const steps = async (): Promise<number> => {
    const answer = await page.request.get("/api/plants");
    const [plant] = (await answer.json()) as [{ id: string }];
    const working = await page.request.get(`/api/plants/${plant.id}/working-plan`);
    return ((await working.json()) as { revision: number }).revision;
  };
  const taken = await steps();
  await unanswered.getByRole("button", { name: "Send again" }).click();
  await expect(page.getByRole("alert").filter({ hasText: "changed" })).toBeVisible();
  expect(await steps()).toBe(taken);
});

test("what others did while the server was out of reach is shown once it is back, under the name they gave", async ({
  page,
  context,
}) => {
  await page.goto("/");
  await expect(page.getByRole("button", { name: "Publish…" })).toBeEnabled();
  const silence = /\/api\//;
  await page.route(silence, (route) => route.abort("connectionrefused"));
  // An open stream is not cut by a route: the page is told that the network is gone and looks for itself.
  await page.evaluate(() => window.dispatchEvent(new Event("offline")));
  await expect(gone(page)).toBeVisible();
  const other = await context.newPage();
  await other.goto("/");
  await other.getByRole("button", { name: "Settings" }).click();
  await other.getByRole("textbox", { name: "Your name" }).fill("  Zoë <b> ");
  await other.keyboard.press("Escape");
  await moveFirstRun(other);
  await expect(other.getByRole("button", { name: "Undo" })).toHaveAccessibleDescription(/^Undo: Moved/);
  await other.close();
  await page.unroute(silence);
  await page.getByRole("button", { name: "Try now" }).click();
  await expect(back(page)).toBeVisible();
  await expect(page.getByText("Zoë <b> changed the plan")).toBeVisible();
});

test("a broken event stream: work goes on, and news is asked for", async ({ page }) => {
  let asked = 0;
  await page.route("**/events", (route) => route.abort("connectionreset"));
  page.on("request", (request) => {
    if (request.url().endsWith("/plans/latest")) asked += 1;
  });
  await page.goto("/");
  await expect(board(page)).toBeVisible();
  await expect(page.getByText("No news from the server since", { exact: false })).toBeVisible();
  await expect.poll(() => asked, { timeout: 30_000 }).toBeGreaterThan(2);
  await moveFirstRun(page);
  await expect(page.getByRole("button", { name: "Undo" })).toHaveAccessibleDescription(/^Undo: Moved/);
  await page.unroute("**/events");
  await page.getByRole("button", { name: "Try now" }).click();
  await expect(page.getByText("No news from the server since", { exact: false })).toBeHidden();
});

test("a slow server is told of until it answers", async ({ page }) => {
  let answer = (): void => undefined;
  const waiting = new Promise<void>((resolve) => (answer = resolve));
  await page.route("**/orders", async (route) => {
    if (route.request().resourceType() === "fetch") await waiting;
    await route.fallback();
  });
  await page.goto("/");
  await expect(page.getByText("The server takes long to answer.")).toBeVisible();
  await expectAccessible(page);
  answer();
  await expect(page.getByText("The server takes long to answer.")).toBeHidden();
});

test("a part that a newer server no longer has: one reload, at the same address", async ({ page }) => {
  await page.goto("/");
  await expect(board(page)).toBeVisible();
  await page.route("**/assets/orders-screen-*.js", (route) => route.fulfill({ status: 404, json: {} }));
  await page.getByRole("link", { name: "Orders" }).click();
  const missing = page.getByRole("alert").filter({ hasText: "This part of the page could not be fetched" });
  await expect(missing).toBeVisible();
  await expectAccessible(page);
  await page.getByRole("link", { name: "Board" }).click();
  await expect(board(page)).toBeVisible();
  await page.getByRole("link", { name: "Orders" }).click();
  await missing.getByRole("button", { name: "Reload" }).click();
  await expect(missing).toContainText("the part is still missing");
  await expect(missing.getByRole("button")).toHaveCount(0);
  await expect(page).toHaveURL(/\/orders$/);
  await page.unroute("**/assets/orders-screen-*.js");
  await page.goto("/plans");
  await page.route("**/assets/orders-screen-*.js", (route) => route.fulfill({ status: 404, json: {} }));
  await page.getByRole("link", { name: "Orders" }).click();
  await expect(missing).toBeVisible();
  await page.unroute("**/assets/orders-screen-*.js");
  await missing.getByRole("button", { name: "Reload" }).click();
  await expect(page.getByRole("heading", { name: "Order book" })).toBeVisible();
  await expect(page).toHaveURL(/\/orders$/);
});

test("a part that is missing while the server is gone: the page is not thrown away", async ({
  page,
  app,
}) => {
  await page.goto("/");
  await expect(board(page)).toBeVisible();
  await app.pause();
  await expect(gone(page)).toBeVisible();
  await page.getByRole("link", { name: "Plant", exact: true }).click();
  const missing = page.getByRole("alert").filter({ hasText: "This part of the page could not be fetched" });
  await missing.getByRole("button", { name: "Reload" }).click();
  await expect(missing).toContainText("The page was not reloaded");
  await page.getByRole("link", { name: "Board" }).click();
  await expect(board(page)).toBeVisible();
  await app.resume();
  await page.getByRole("button", { name: "Try now" }).click();
  await page.getByRole("link", { name: "Plant", exact: true }).click();
  await page.getByRole("button", { name: "Reload" }).click();
  await expect(page.getByRole("navigation", { name: "Parts of the plant" })).toBeVisible();
  await expect(page).toHaveURL(/\/plant$/);
});
