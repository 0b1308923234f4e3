import type { Page } from "@playwright/test";
import { expectAccessible } from "./accessible.ts";
import { expect, howToPlan, openPanel, test } from "./app-test.ts";

interface Screen {
  readonly name: string;
  readonly path: string;
  readonly open?: (page: Page) => Promise<void>;
}

const badRows = ["order;product;pieces;due", "1;no such cup;5;2026-12-04", "2;no such cup;x;never"].join(
  "\n",
);

const screens: readonly Screen[] = [
  { name: "board", path: "/" },
  {
    name: "board-late",
    path: "/?late=1",
    open: async (page) => {
      await page.getByRole("application").focus();
      await page.keyboard.press("l");
      await page.keyboard.press("l");
    },
  },
  {
    name: "board-change",
    path: "/",
    open: async (page) => {
      await page.getByRole("application").focus();
      const change = page.getByRole("complementary").getByRole("heading", { name: /^Change/ });
      for (let step = 0; step < 8 && !(await change.isVisible()); step += 1)
        await page.keyboard.press("ArrowRight");
      await expect(change).toBeVisible();
      for (const key of ["+", "+", "+"]) await page.keyboard.press(key);
    },
  },
  {
    name: "board-eight-weeks",
    path: "/",
    open: async (page) => {
      await page.getByRole("combobox", { name: "Time shown" }).selectOption("eightWeeks");
    },
  },
  { name: "board-table", path: "/", open: (page) => page.getByRole("button", { name: "Table" }).click() },
  {
    name: "board-cost",
    path: "/",
    open: (page) => page.getByText("cost of the plan").click(),
  },
  {
    name: "board-picture",
    path: "/",
    open: async (page) => {
      await openPanel(page, "Take away");
      await page.getByRole("button", { name: "Board as picture…" }).click();
    },
  },
  { name: "board-filters", path: "/?customer=none", open: (page) => openPanel(page, "1 filter on") },
  { name: "board-how-to-plan", path: "/", open: (page) => openPanel(page, howToPlan) },
  { name: "settings", path: "/", open: (page) => openPanel(page, "Settings") },
  { name: "take-away", path: "/orders", open: (page) => openPanel(page, "Take away") },
  { name: "not-found", path: "/nowhere" },
  { name: "sheets", path: "/sheets" },
  { name: "plans", path: "/plans" },
  { name: "promise", path: "/promise?product=C75-60-090+white&pieces=185000&wanted=2026-12-11" },
  { name: "promise-many", path: "/promise/many" },
  { name: "load", path: "/load" },
  { name: "what-if", path: "/what-if" },
  {
    name: "what-if-editor",
    path: "/what-if",
    open: async (page) => {
      await page.getByRole("button", { name: "New scenario…" }).click();
      const editor = page.getByRole("dialog", { name: "New scenario" });
      await editor.getByRole("button", { name: "Add", exact: true }).click();
      await expect(editor.getByRole("heading", { name: "Long hours tire people" })).toBeVisible();
    },
  },
  { name: "orders", path: "/orders" },
  {
    name: "order-panel",
    path: "/orders",
    open: (page) => page.locator("tbody .text-button").first().click(),
  },
  {
    name: "import-report",
    path: "/orders",
    open: async (page) => {
      const file = { name: "bad.csv", mimeType: "text/csv", buffer: Buffer.from(badRows) };
      await page.getByTestId("import-file").setInputFiles(file);
      await expect(page.getByRole("heading", { name: "Checked: bad.csv" })).toBeVisible();
    },
  },
  {
    name: "paste",
    path: "/orders",
    open: (page) => page.getByRole("button", { name: "Paste rows…" }).click(),
  },
  {
    name: "rates",
    path: "/plant/rates",
    open: (page) => page.locator(".cell:not(.cell-refused)").nth(5).click(),
  },
  {
    name: "rates-refused",
    path: "/plant/rates",
    open: (page) => page.locator(".cell-refused").first().click(),
  },
  ...["lines", "moulds", "sheets", "products", "calendars", "crews", "changes"].map((section) => ({
    name: `plant-${section}`,
    path: `/plant/${section}`,
  })),
];

const sizes = [
  { name: "1280", width: 1280, height: 800 },
  { name: "1920", width: 1920, height: 1080 },
  { name: "narrow", width: 390, height: 844 },
] as const;

/** Colours and distances are apart from one another in the styles: each of both is seen once. */
const looks = [
  { theme: "light", density: "roomy" },
  { theme: "dark", density: "compact" },
] as const;

for (const { theme, density } of looks) {
  test.describe(`every screen, ${theme}, ${density}`, () => {
    test.use({ colorScheme: theme });
    test.beforeEach(({ page }) =>
      page.addInitScript((kept) => localStorage.setItem("formweek.density", kept), density),
    );
    for (const screen of screens) {
      test(screen.name, async ({ page }) => {
        const said: string[] = [];
        page.on("console", (message) => {
          if (message.type() === "error" || message.type() === "warning") said.push(message.text());
        });
        page.on("pageerror", ({ message }) => said.push(message));
        await page.goto(screen.path);
        await page.locator("main h1, main h2").first().waitFor({ state: "attached" });
        await page.evaluate(() => document.fonts.ready);
        await screen.open?.(page);
        await expectAccessible(page, "WCAG 2.2 AA");
        for (const { name, width, height } of sizes) {
          await page.setViewportSize({ width, height });
          await page.screenshot({
            path: `test-results/screens/${screen.name}-${theme}-${density}-${name}.png`,
          });
          const isScrolledSideways = await page.evaluate(
            () => document.documentElement.scrollWidth > window.innerWidth,
          );
          expect(isScrolledSideways, `${name} scrolls sideways`).toBe(false);
        }
        expect(said, "errors and warnings in the console").toEqual([]);
      });
    }
  });
}
