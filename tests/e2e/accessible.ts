import { AxeBuilder } from "@axe-core/playwright";
import type { Page } from "@playwright/test";
import { expect } from "./app-test.ts";

const wcag = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"];

/** No fault by the rules of WCAG 2.2 AA, nor by the good practice that is looked for besides. */
export async function expectAccessible(page: Page, rules: "all" | "WCAG 2.2 AA" = "all"): Promise<void> {
  const axe = new AxeBuilder({ page });
  const { violations } = await (rules === "all" ? axe : axe.withTags(wcag)).analyze();
  expect(violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(" | ")}`)).toEqual(
    [],
  );
  // the analysis ends in a page of its own, and a key pressed before this one is in front again is lost
  await page.bringToFront();
}
