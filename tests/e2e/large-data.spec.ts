import type { BookedOrder, PlanDocument } from "@formweek/contracts";
import type { Page } from "@playwright/test";
import { madePlan } from "../../apps/web/src/fixtures/made-plan.ts";
import { expect, test } from "./app-test.ts";

/** The server's answers about its plan replaced by a made one of any size. */
async function showPlan(page: Page, document: PlanDocument): Promise<void> {
  await page.route("**/plans/latest", (route) =>
    route.fulfill({ json: { planId: "made", createdAt: "2026-11-29T10:00:00Z", document } }),
  );
}

/** Pictures of the canvas as they differ from one another. */
async function picture(page: Page): Promise<string> {
  await page.evaluate(
    () => new Promise((drawn) => requestAnimationFrame(() => requestAnimationFrame(drawn))),
  );
  return page.locator("canvas").evaluate((canvas: HTMLCanvasElement) => canvas.toDataURL());
}

test("2,000 runs on 40 lines are drawn, panned, zoomed and scrolled", async ({ page }) => {
  await showPlan(page, madePlan({ lines: 40, runsPerLine: 50, seed: 1 }));
  await page.goto("/");
  const board = page.getByRole("application");
  await expect(board).toBeVisible();
  const first = await picture(page);
  const box = await board.boundingBox();
  if (box === null) throw new Error("the board has a place on the page");
  // on the axis: a drag that begins on a run would carry it
  await page.mouse.move(box.x + 600, box.y + 20);
  await page.mouse.down();
  await page.mouse.move(box.x + 300, box.y + 20, { steps: 12 });
  await page.mouse.up();
  const panned = await picture(page);
  expect(panned).not.toBe(first);
  await page.mouse.wheel(0, 400);
  const scrolled = await picture(page);
  expect(scrolled).not.toBe(panned);
  await page.keyboard.down("Control");
  await page.mouse.wheel(0, -500);
  await page.keyboard.up("Control");
  expect(await picture(page)).not.toBe(scrolled);
  await page.getByRole("button", { name: "Table" }).click();
  await expect(page.getByText("3,960 rows")).toBeVisible();
  expect(await page.locator("tbody tr").count()).toBeLessThan(120);
});

test("a click on a run and on free time opens what lies there", async ({ page }) => {
  await showPlan(page, madePlan({ lines: 3, runsPerLine: 4, seed: 2 }));
  await page.goto("/");
  const board = page.getByRole("application");
  await board.click({ position: { x: 148, y: 90 } });
  const details = page.getByRole("complementary", { name: "Details" });
  await expect(details.getByRole("heading", { name: /^Order 20000/ })).toBeVisible();
  await page.keyboard.press("ArrowRight");
  await expect(details.getByRole("heading", { name: /^Change/ })).toBeVisible();
  await expect(details.getByText("It is not a safety procedure", { exact: false })).toBeVisible();
  await board.click({ position: { x: 620, y: 90 } });
  await expect(details.getByRole("heading", { name: /^Free time/ })).toBeVisible();
});

test("two fingers zoom and one pans on a touch screen", async ({ browser, app }) => {
  const context = await browser.newContext({ hasTouch: true, viewport: { width: 820, height: 1100 } });
  const page = await context.newPage();
  await showPlan(page, madePlan({ lines: 6, runsPerLine: 12, seed: 4 }));
  await page.goto(app.url);
  await expect(page.getByRole("application")).toBeVisible();
  const first = await picture(page);
  const touch = await context.newCDPSession(page);
  const send = (
    type: "touchStart" | "touchMove" | "touchEnd",
    points: readonly (readonly [number, number])[],
  ) =>
    touch.send("Input.dispatchTouchEvent", { type, touchPoints: points.map(([x, y], id) => ({ x, y, id })) });
  const board = await page.getByRole("application").boundingBox();
  const y = (board?.y ?? 0) + 150;
  await send("touchStart", [
    [400, y],
    [500, y],
  ]);
  for (let spread = 10; spread <= 120; spread += 10)
    await send("touchMove", [
      [400 - spread, y],
      [500 + spread, y],
    ]);
  await send("touchEnd", []);
  const zoomed = await picture(page);
  expect(zoomed).not.toBe(first);
  await send("touchStart", [[600, y]]);
  for (let step = 20; step <= 200; step += 20) await send("touchMove", [[600 - step, y]]);
  await send("touchEnd", []);
  expect(await picture(page)).not.toBe(zoomed);
  await context.close();
});

test("a book of 50,000 orders keeps few rows in the page, and finds one", async ({ page }) => {
  const states = ["on time", "late", "unplanned"] as const;
  const orders = Array.from({ length: 50_000 }, (_, place): BookedOrder => ({
    id: `B${String(place).padStart(5, "0")}`,
    customer: `Customer ${place % 40}`,
    productId: "P1",
    pieces: 1000 + place,
    dueAt: "2026-12-03T13:00:00Z",
    earliestStartAt: null,
    weight: 1,
    kind: "firm",
    underTolerance: 0,
    overTolerance: 0.05,
    partsAllowed: true,
    state: states[place % 3] ?? "on time",
    finish: null,
    slackSeconds: null,
    fromStockPieces: 0,
    toMakePieces: 1000,
    reasons: [],
  }));
  await page.route("**/orders", (route) =>
    route.request().resourceType() === "fetch"
      ? route.fulfill({ json: { revision: 1, planInputs: null, orders } })
      : route.fallback(),
  );
  await page.goto("/orders");
  await expect(page.getByText("50,000 orders")).toBeVisible();
  expect(await page.locator("tbody tr").count()).toBeLessThan(80);
  // A book that is still settling may take a key without moving.
  await expect(async () => {
    await page.getByRole("region", { name: "Order book" }).focus();
    await page.keyboard.press("End");
    await expect(page.getByRole("button", { name: "B49999" })).toBeVisible({ timeout: 2000 });
  }).toPass();
  await page.getByRole("searchbox", { name: "Find orders" }).fill("B31234");
  await expect(page.getByText("1 of 50,000 orders")).toBeVisible();
});
