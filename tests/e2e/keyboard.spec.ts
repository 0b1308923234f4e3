import { expect, test } from "./app-test.ts";

test("the board is walked by keyboard alone, and says what it reaches", async ({ page }) => {
  await page.goto("/");
  const board = page.getByRole("application");
  await expect(board).toBeVisible();
  for (let tabs = 0; tabs < 40; tabs += 1) {
    await page.keyboard.press("Tab");
    if (await board.evaluate((canvas) => canvas === document.activeElement)) break;
  }
  await expect(board).toBeFocused();
  const spoken = page.getByRole("status").filter({ hasText: /Line|Nothing selected/ });
  const details = page.getByRole("complementary", { name: "Details" });
  const heard = new Set<string>();
  for (const key of [
    "ArrowRight",
    "ArrowRight",
    "ArrowRight",
    "ArrowDown",
    "ArrowRight",
    "End",
    "Home",
    "ArrowUp",
    "l",
  ]) {
    await page.keyboard.press(key);
    await expect(details).toBeVisible();
    heard.add(await spoken.innerText());
  }
  expect(heard.size).toBeGreaterThanOrEqual(6);
  await page.keyboard.press("Escape");
  await expect(details).toBeHidden();
});

test("zooming and panning by keyboard change the view, and a reload keeps it", async ({ page }) => {
  await page.goto("/");
  const span = page.getByRole("combobox", { name: "Time shown" });
  await expect(span).toHaveValue("week");
  await page.getByRole("application").focus();
  for (let press = 0; press < 5; press += 1) await page.keyboard.press("+");
  await expect(span).toHaveValue("day");
  await page.keyboard.press("PageDown");
  await page.reload();
  await expect(span).toHaveValue("day");
  await page.getByRole("application").focus();
  for (let press = 0; press < 14; press += 1) await page.keyboard.press("-");
  await expect(span).toHaveValue("eightWeeks");
});

test("every menu, filter and table is reached and shown to have the focus", async ({ page }) => {
  for (const path of ["/", "/orders", "/plant/lines", "/plant/calendars"]) {
    await page.goto(path);
    await page.getByRole("main").locator("h1").first().waitFor({ state: "attached" });
    const reached: string[] = [];
    for (let tabs = 0; tabs < 30; tabs += 1) {
      await page.keyboard.press("Tab");
      const focus = await page.evaluate(() => {
        const element = document.activeElement;
        if (element === null || element === document.body) return null;
        const holder = element.closest(".find-box") ?? element;
        const { outlineStyle, outlineWidth } = getComputedStyle(holder);
        return {
          name: element.outerHTML.slice(0, 80),
          isShown: outlineStyle !== "none" && outlineWidth !== "0px",
        };
      });
      if (focus === null) break;
      expect(focus.isShown, `${path}: ${focus.name}`).toBe(true);
      reached.push(focus.name);
    }
    expect(reached.length).toBeGreaterThan(7);
  }
});

test("orders are sorted, filtered and opened by keyboard, and the address keeps it", async ({ page }) => {
  await page.goto("/orders");
  await page.getByRole("button", { name: "Pieces" }).focus();
  await page.keyboard.press("Enter");
  await page.keyboard.press("Enter");
  await expect(page.getByRole("columnheader", { name: "Pieces" })).toHaveAttribute("aria-sort", "descending");
  await page.getByRole("searchbox", { name: "Find orders" }).fill("cup");
  await expect(page).toHaveURL(/find=cup/);
  await page.reload();
  await expect(page.getByRole("columnheader", { name: "Pieces" })).toHaveAttribute("aria-sort", "descending");
  await expect(page.getByRole("searchbox", { name: "Find orders" })).toHaveValue("cup");
  const first = page.locator("tbody .text-button").first();
  await first.focus();
  await page.keyboard.press("Enter");
  await expect(first).toHaveAttribute("aria-expanded", "true");
  await page.keyboard.press("Escape");
  await expect(first).toHaveAttribute("aria-expanded", "false");
});
