import type { LoadResponse } from "@formweek/contracts";
import type { Page } from "@playwright/test";
import { readFileSync } from "node:fs";
import { plantPath } from "../helpers/board-places.ts";
import { expectAccessible } from "./accessible.ts";
import { expect, test } from "./app-test.ts";

const map = (page: Page) => page.getByRole("grid", { name: /^Load by resource and time/ });
const cellButtons = (page: Page) => map(page).getByRole("gridcell").getByRole("button");

test("the plant manager walks the map by keyboard and opens the orders behind a cell", async ({ page }) => {
  const errors: string[] = [];
  page.on("console", (message) => {
    // a hint of the browser's on every page, about a probe of the schema library
    const isHint = message.text().includes("'script-src' was not explicitly set");
    if (message.type() === "error" && !isHint) errors.push(message.text());
  });
  page.on("pageerror", ({ message }) => errors.push(message));
  await page.goto("/");
  await page.getByRole("navigation", { name: "Main" }).getByRole("link", { name: "Load" }).click();
  await expect(page.getByRole("heading", { level: 1, name: "Load" })).toBeVisible();
  await expect(page).toHaveTitle(/^Load · /);
  await expect(page.getByText(/^Planned until /)).toBeVisible();
  await expect(page.getByRole("heading", { name: "Bottleneck" })).toBeVisible();
  expect(await map(page).getByRole("columnheader").count()).toBe(27);

  await cellButtons(page).first().focus();
  await page.keyboard.press("ArrowDown");
  await page.keyboard.press("ArrowRight");
  await page.keyboard.press("ArrowLeft");
  await page.keyboard.press("Enter");
  await expect(page).toHaveURL(/id=.+&at=/);
  await expect(map(page).locator('[aria-selected="true"]')).toHaveCount(1);
  const behind = page.getByRole("table", { name: /^Orders behind / });
  await expect(behind.getByRole("row").nth(1)).toContainText("from the plan");
  await page.getByText("Figures as a table").click();
  await expect(page.getByRole("table", { name: /^How the time of / }).getByRole("row")).toHaveCount(27);
  await expectAccessible(page);
  await page.reload();
  await expect(behind.getByRole("row").nth(1)).toContainText("from the plan");
  expect(errors).toEqual([]);
});

test("kinds, steps of time and pages are in the address; what it gets wrong counts as left out", async ({
  page,
}) => {
  await page.goto("/load?kind=mould&bucket=day");
  await expect(map(page).getByRole("columnheader")).toHaveCount(43);
  await page.getByRole("button", { name: "Later" }).click();
  await expect(page).toHaveURL(/from=\d{4}-\d{2}-\d{2}/);
  await page.getByRole("button", { name: "Shift", exact: true }).click();
  await expect(page).toHaveURL(/bucket=shift/);
  await page.getByRole("button", { name: "Operators" }).click();
  await expect(page).toHaveURL(/kind=pool/);
  await page.goto("/load?kind=oven&bucket=year&from=2026-02-30");
  await expect(map(page).getByRole("columnheader")).toHaveCount(27);
});

test("every kind is free of faults, light and dark, from 390 to 1920 wide", async ({ page }) => {
  test.slow();
  for (const kind of ["line", "mould", "team", "pool"]) {
    for (const [theme, width] of [
      ["light", 390],
      ["dark", 1280],
      ["light", 1920],
    ] as const) {
      await page.setViewportSize({ width, height: 900 });
      await page.addInitScript((chosen) => localStorage.setItem("formweek.theme", chosen), theme);
      await page.goto(`/load?kind=${kind}`);
      await expect(cellButtons(page).first()).toBeVisible();
      await expectAccessible(page);
      const overflow = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
      expect(overflow).toBeLessThanOrEqual(0);
      await page.screenshot({
        path: `test-results/screens/load-${kind}-${theme}-${width}.png`,
        fullPage: true,
      });
    }
  }
});

test("the load shown is saved as a table", async ({ page, request }) => {
  await page.goto("/load?kind=mould");
  const download = page.waitForEvent("download");
  await page.getByRole("button", { name: "Take away" }).click();
  await page.getByRole("link", { name: "Load as CSV" }).click();
  const saved = await download;
  expect(saved.suggestedFilename()).toMatch(/-load-mould-week-.+\.csv$/);
  const lines = readFileSync(await saved.path(), "utf8")
    .trim()
    .split("\r\n");
  const load = (await (await request.get(`${plantPath}/load?kind=mould&bucket=week`)).json()) as LoadResponse;
  expect(lines).toHaveLength(1 + load.resources.length * load.buckets.length);
});

test("a failed answer says so and can be asked for again", async ({ page }) => {
  await page.route("**/load?*", (route) => route.abort());
  await page.goto("/load");
  const alert = page.getByRole("alert");
  await expect(alert).toContainText("The server did not answer", { timeout: 40_000 });
  await page.unroute("**/load?*");
  await alert.getByRole("button", { name: "Try again" }).click();
  await expect(cellButtons(page).first()).toBeVisible();
});
