import type { Locator, Page } from "@playwright/test";
import { expectAccessible } from "./accessible.ts";
import { expect, howToPlan, selectRun, test } from "./app-test.ts";

const mostTabs = 90;
type TabKey = "Tab" | "Shift+Tab";

/** Goes on by Tab, or back, until a control has the focus; every stop on the way shows that it has it. */
async function tabTo(page: Page, wanted: Locator, key: TabKey = "Tab"): Promise<void> {
  for (let tabs = 0; tabs < mostTabs; tabs += 1) {
    if ((await wanted.count()) === 1 && (await wanted.evaluate((it) => it === document.activeElement)))
      return;
    await page.keyboard.press(key);
    const stop = await page.evaluate(() => {
      const element = document.activeElement;
      if (element === null || element === document.body) return null;
      const { outlineStyle, outlineWidth } = getComputedStyle(element.closest(".find-box") ?? element);
      return {
        name: element.outerHTML.slice(0, 90),
        isShown: outlineStyle !== "none" && outlineWidth !== "0px",
      };
    });
    if (stop !== null) expect(stop.isShown, stop.name).toBe(true);
  }
  await expect(wanted).toBeFocused();
}

/** A dialog holds the focus, and Escape gives it back to what opened it. */
async function dialogHoldsFocus(page: Page, opener: Locator, key: TabKey = "Tab"): Promise<void> {
  await tabTo(page, opener, key);
  await page.keyboard.press("Enter");
  await expect(page.getByRole("dialog")).toBeVisible();
  for (let tabs = 0; tabs < 12; tabs += 1) {
    const place = await page.evaluate(() =>
      document.activeElement === document.body
        ? "window"
        : document.activeElement?.closest("dialog") === null
          ? (document.activeElement?.outerHTML.slice(0, 90) ?? "")
          : "dialog",
    );
    expect(["dialog", "window"]).toContain(place);
    await page.keyboard.press("Tab");
  }
  await page.keyboard.press("Escape");
  await expect(page.getByRole("dialog")).toBeHidden();
  await expect(opener).toBeFocused();
}

/** A panel opens and closes by keyboard, with its first control next in order. */
async function panelOpens(
  page: Page,
  [opener, first]: readonly [Locator, Locator],
  key: TabKey = "Tab",
): Promise<void> {
  await tabTo(page, opener, key);
  await page.keyboard.press("Enter");
  await page.keyboard.press("Tab");
  await expect(first).toBeFocused();
}

const looks = [
  { theme: "light", density: "roomy" },
  { theme: "dark", density: "compact" },
] as const;

for (const { theme, density } of looks) {
  test.describe(`without a mouse, ${theme}, ${density}`, () => {
    test.use({ colorScheme: theme });
    test.beforeEach(({ page }) =>
      page.addInitScript((kept) => localStorage.setItem("formweek.density", kept), density),
    );

    test("the board: skip to it, filter, plan, move a run, publish", async ({ page }) => {
      const button = (name: string | RegExp): Locator => page.getByRole("button", { name });
      const board = page.getByRole("application");
      await page.goto("/");
      await expect(board).toBeVisible();
      await page.keyboard.press("Tab");
      const skip = page.getByRole("link", { name: "Skip to content" });
      await expect(skip).toBeFocused();
      await expect(skip).toBeInViewport();
      await page.keyboard.press("Enter");
      await expect(page.getByRole("main")).toBeFocused();

      const seconds = page.getByRole("combobox", { name: "Think for" });
      await panelOpens(page, [button(howToPlan), seconds]);
      await page.keyboard.press("ArrowUp");
      await expect(seconds).toHaveValue("5");
      await expectAccessible(page);
      await page.keyboard.press("Escape");
      await expect(button(howToPlan)).toBeFocused();
      await expect(seconds).toBeHidden();
      await tabTo(page, button("Plan again"));
      await page.keyboard.press("Enter");
      await expect(button("Stop and keep the best plan so far")).toBeFocused();
      await expect(page.getByText("The new plan is on the board.")).toBeVisible({ timeout: 60_000 });
      await expect(page.locator(".solve :focus")).toHaveCount(1);

      const customer = page.getByRole("combobox", { name: "Customer" });
      await panelOpens(page, [button("Filters"), customer]);
      await page.keyboard.press("ArrowDown");
      await expectAccessible(page);
      await page.keyboard.press("Escape");
      await expect(button("1 filter on")).toBeFocused();
      await tabTo(page, button("Show all"));
      await page.keyboard.press("Enter");
      await expect(page.getByRole("searchbox", { name: "Find on the board" })).toBeFocused();

      await tabTo(page, board);
      await selectRun(page);
      for (const key of ["m", "ArrowRight", "Enter"]) await page.keyboard.press(key);
      await expect(button("Undo")).toHaveAccessibleDescription(/^Undo: Moved/);
      await page.keyboard.press("Escape");
      await expect(page.getByRole("complementary", { name: "Details" })).toBeHidden();
      await expect(board).toBeFocused();

      await dialogHoldsFocus(page, button("Publish…"));
      await panelOpens(page, [button("Take away"), page.getByRole("link", { name: "Print sheets" })]);
      await dialogHoldsFocus(page, button("Board as picture…"));
      await page.keyboard.press("Escape");
      await expect(button("Take away")).toBeFocused();
    });

    test("orders: find one, open it, take the book away", async ({ page }) => {
      await page.goto("/orders");
      await tabTo(page, page.getByRole("searchbox", { name: "Find orders" }));
      await page.keyboard.type("cup");
      await expect(page).toHaveURL(/find=cup/);
      const first = page.locator("tbody .text-button").first();
      await tabTo(page, first);
      await page.keyboard.press("Enter");
      await expect(first).toHaveAttribute("aria-expanded", "true");
      await expectAccessible(page);
      await page.keyboard.press("Escape");
      await expect(first).toHaveAttribute("aria-expanded", "false");
      await expect(first).toBeFocused();
      const takeAway = page.getByRole("button", { name: "Take away" });
      await panelOpens(page, [takeAway, page.getByRole("link", { name: "Export CSV" })], "Shift+Tab");
      await page.keyboard.press("Escape");
      await expect(takeAway).toBeFocused();
      await dialogHoldsFocus(page, page.getByRole("button", { name: "Paste rows…" }), "Shift+Tab");
    });

    test("sheets, plans, rates and a page that is none", async ({ page }) => {
      await page.goto("/sheets");
      await tabTo(page, page.getByRole("combobox", { name: "Line" }));
      await page.keyboard.press("ArrowDown");
      await expect(page).toHaveURL(/line=/);
      await expectAccessible(page);

      await page.goto("/plans");
      await tabTo(page, page.getByRole("main").getByRole("combobox").first());
      await expectAccessible(page);

      await page.goto("/plant");
      await tabTo(page, page.locator(".cell:not(.cell-refused)").first());
      await page.keyboard.press("Enter");
      await expect(page.getByRole("complementary")).toBeVisible();
      await expectAccessible(page);
      await page.keyboard.press("Escape");
      await expect(page.getByRole("complementary")).toBeHidden();
      await tabTo(page, page.getByRole("link", { name: "Moulds", exact: true }), "Shift+Tab");
      await page.keyboard.press("Enter");
      await expect(page).toHaveURL(/\/plant\/moulds$/);

      await page.goto("/nowhere");
      await tabTo(page, page.getByRole("link", { name: "Go to the board" }));
      await expectAccessible(page);
      await page.keyboard.press("Enter");
      await expect(page.getByRole("application")).toBeVisible();
    });

    test("what-if: a scenario is written and ticked", async ({ page }) => {
      await page.goto("/what-if");
      await dialogHoldsFocus(page, page.getByRole("button", { name: "New scenario…" }));
      await page.keyboard.press("Enter");
      await page.keyboard.type(`Repair, ${theme}`);
      await tabTo(page, page.getByRole("combobox", { name: "Add a change" }));
      await page.keyboard.press("ArrowDown");
      await tabTo(page, page.getByRole("button", { name: "Add", exact: true }));
      await page.keyboard.press("Enter");
      await tabTo(page, page.getByRole("textbox", { name: "Reason" }), "Shift+Tab");
      await page.keyboard.type("Oven repair");
      await expectAccessible(page);
      await page.keyboard.press("Enter");
      await expect(page.getByRole("dialog")).toBeHidden();
      const tick = page.getByRole("checkbox", { name: `Repair, ${theme}` });
      await expect(tick).toBeChecked();
      await tabTo(page, tick, "Shift+Tab");
      await page.keyboard.press("Space");
      await expect(tick).not.toBeChecked();
      await expectAccessible(page);
    });

    test("settings: each is reached, and Escape gives the focus back", async ({ page }) => {
      await page.goto("/orders");
      const settings = page.getByRole("button", { name: "Settings" });
      await panelOpens(page, [settings, page.getByRole("combobox", { name: "Language" })]);
      await tabTo(page, page.getByRole("combobox", { name: "Spacing" }));
      await page.keyboard.press(density === "roomy" ? "ArrowDown" : "ArrowUp");
      await expect(page.locator("html")).toHaveAttribute(
        "data-density",
        density === "roomy" ? "compact" : "roomy",
      );
      await page.keyboard.press("Tab");
      await expect(page.getByRole("textbox", { name: "Your name" })).toBeFocused();
      await expectAccessible(page);
      await page.keyboard.press("Escape");
      await expect(settings).toBeFocused();
    });
  });
}

test("the board starts in the upper third of a small screen and is in sight on a phone", async ({ page }) => {
  const top = async (): Promise<number> => (await page.getByRole("application").boundingBox())?.y ?? Infinity;
  for (const density of ["roomy", "compact"]) {
    await page.goto("/");
    await page.evaluate((kept) => localStorage.setItem("formweek.density", kept), density);
    await page.reload();
    await page.setViewportSize({ width: 1280, height: 800 });
    await expect(page.getByText("Not published yet").or(page.getByText("Published by"))).toBeVisible();
    expect(await top(), `${density}, 1280`).toBeLessThan(800 / 3);
    await page.setViewportSize({ width: 390, height: 844 });
    await expect(page.getByRole("application")).toBeInViewport({ ratio: 0.5 });
  }
});
