import { AxeBuilder } from "@axe-core/playwright";
import type { Page } from "@playwright/test";
import type { PlanDocument } from "@formweek/contracts";
import { expect, test } from "./app-test.ts";

const latestPlan = async (page: Page): Promise<PlanDocument> => {
  const answer = await page.request.get("/api/plants/ellerwade/plans/latest");
  return ((await answer.json()) as { readonly document: PlanDocument }).document;
};

const expectNoFault = async (page: Page): Promise<void> => {
  const { violations } = await new AxeBuilder({ page })
    .withTags(["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"])
    .analyze();
  expect(violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(" | ")}`)).toEqual(
    [],
  );
};

for (const theme of ["light", "dark"] as const) {
  test.describe(`rows, ${theme}`, () => {
    test.use({ colorScheme: theme });

    test("the plan is read by mould and by setter team, on the board and in the table", async ({ page }) => {
      await page.goto("/");
      const { segments } = await latestPlan(page);
      const rows = page.getByRole("combobox", { name: "One row for each" });
      const spoken = page.getByRole("status").filter({ hasText: /Setter team|Nothing selected/ });
      const details = page.getByRole("complementary", { name: "Details" });

      await rows.selectOption("By setter team");
      await page.getByRole("application").focus();
      await page.keyboard.press("ArrowRight");
      await expect(spoken).toContainText(/^Setter team \w, Line \d+: Change/);
      await expect(details.getByRole("heading", { level: 2 })).toContainText(/Change|Mould taken out/);
      await page.keyboard.press("l");
      await expect(spoken).toContainText("Change");
      await expectNoFault(page);
      await page.screenshot({ path: `test-results/screens/board-teams-${theme}.png` });

      await page.getByRole("button", { name: "Table", exact: true }).click();
      const byTeam = segments.filter((segment) => segment.kind === "change" && segment.teamId !== null);
      await expect(page.getByText(`${byTeam.length} rows`)).toBeVisible();
      await expect(page.getByRole("columnheader", { name: "Setter team" })).toBeVisible();
      await expectNoFault(page);

      await rows.selectOption("By mould");
      await expect(page.getByRole("columnheader", { name: "Mould", exact: true })).toBeVisible();
      await page.getByRole("button", { name: "Board", exact: true }).click();
      await page.getByRole("application").focus();
      await page.keyboard.press("Home");
      await page.keyboard.press("ArrowDown");
      await expect(details).toBeVisible();
      await expectNoFault(page);
      await page.screenshot({ path: `test-results/screens/board-moulds-${theme}.png` });
    });
  });
}
