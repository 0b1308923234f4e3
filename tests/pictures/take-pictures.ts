import { join } from "node:path";
import type { Page } from "@playwright/test";
import { openBrowser, type BenchBrowser } from "../services/open-browser.ts";

/** A picture of the README. */
interface Shot {
  readonly name: string;
  readonly colours: "light" | "dark";
  readonly path: string;
  readonly open?: (page: Page) => Promise<void>;
}

const folder = join(import.meta.dirname, "../../apps/web/pictures");
const size = { width: 1440, height: 900 };

const shots: readonly Shot[] = [
  { name: "board-light", colours: "light", path: "/" },
  {
    name: "board-dark",
    colours: "dark",
    path: "/",
    open: async (page) => {
      await page.getByRole("combobox", { name: "Time shown" }).selectOption("threeDays");
      const board = page.getByRole("application");
      await board.focus();
      await page.keyboard.press("ArrowRight");
      await page.getByRole("complementary").getByRole("heading").first().waitFor();
      await page.keyboard.press("ArrowRight");
      await page.keyboard.press("ArrowRight");
    },
  },
  {
    name: "rates-light",
    colours: "light",
    path: "/plant/rates",
    open: (page) => page.locator(".cell:not(.cell-refused)").nth(5).click(),
  },
];

/** Takes the README's pictures of the built app with the demo plant: `npm run build`, then `npm run pictures`. */
async function take(browser: BenchBrowser): Promise<void> {
  for (const { name, colours, path, open } of shots) {
    await browser.withPage(async (page) => {
      await page.emulateMedia({ colorScheme: colours });
      await page.setViewportSize(size);
      await page.goto(path);
      await page.locator("main h1, main h2").first().waitFor({ state: "attached" });
      await page.evaluate(() => document.fonts.ready);
      await page.waitForLoadState("networkidle");
      await open?.(page);
      await page.waitForTimeout(500);
      await page.screenshot({ path: join(folder, `${name}.png`) });
      console.log(`${name}.png`);
    });
  }
}

const browser = await openBrowser();
try {
  await take(browser);
} finally {
  await browser.close();
}
