import type { Page } from "@playwright/test";
import type { PlanDocument } from "@formweek/contracts";
import { expectAccessible } from "./accessible.ts";
import { expect, openPanel, test } from "./app-test.ts";

const latestPlan = async (page: Page): Promise<PlanDocument> => {
  const answer = await page.request.get("/api/plants/ellerwade/plans/latest");
  return ((await answer.json()) as { readonly document: PlanDocument }).document;
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
      await expectAccessible(page, "WCAG 2.2 AA");
      await page.screenshot({ path: `test-results/screens/board-teams-${theme}.png` });

      await page.getByRole("button", { name: "Table", exact: true }).click();
      const byTeam = segments.filter((segment) => segment.kind === "change" && segment.teamId !== null);
      await expect(page.getByText(`${byTeam.length} rows`)).toBeVisible();
      await expect(page.getByRole("columnheader", { name: "Setter team" })).toBeVisible();
      await expectAccessible(page, "WCAG 2.2 AA");

      await rows.selectOption("By mould");
      await expect(page.getByRole("columnheader", { name: "Mould", exact: true })).toBeVisible();
      await page.getByRole("button", { name: "Board", exact: true }).click();
      await page.getByRole("application").focus();
      await page.keyboard.press("Home");
      await page.keyboard.press("ArrowDown");
      await expect(details).toBeVisible();
      await expectAccessible(page, "WCAG 2.2 AA");
      await page.screenshot({ path: `test-results/screens/board-moulds-${theme}.png` });
    });
  });
}

test("what the board shows is in its address: a reload and a link show the same, and Back takes a step away", async ({
  page,
  context,
}) => {
  const { orders, lots } = await latestPlan(page);
  const [{ orderId = "", customer = "" } = {}] = orders.filter((order) =>
    lots.some((lot) => lot.orderId === order.orderId),
  );
  await page.goto("/");
  const customers = page.getByRole("combobox", { name: "Customer" });
  const rows = page.getByRole("combobox", { name: "One row for each" });
  await openPanel(page, "Filters");
  await customers.selectOption(customer);
  await expect(page).toHaveURL(/customer=/);
  const found = page.getByRole("status").filter({ hasText: /orders? found/ });
  const wanted = orders.filter((order) => order.customer === customer).length;
  await expect(found).toHaveText(wanted === 1 ? "1 order found" : `${wanted} orders found`);
  await rows.selectOption("By mould");
  await page.getByRole("combobox", { name: "Time shown" }).selectOption("day");
  await page.getByRole("searchbox", { name: "Find on the board" }).fill(orderId);
  await page.keyboard.press("Enter");
  await expect(page).toHaveURL(new RegExp(`order=${orderId}`));
  await expectAccessible(page, "WCAG 2.2 AA");

  const address = page.url();
  await page.reload();
  const colleague = await context.newPage();
  await colleague.setViewportSize({ width: 1000, height: 700 });
  await colleague.goto(address);
  for (const seen of [page, colleague]) {
    await openPanel(seen, "1 filter on");
    await expect(seen.getByRole("combobox", { name: "Customer" })).toHaveValue(customer);
    await expect(seen.getByRole("combobox", { name: "One row for each" })).toHaveValue("moulds");
    await expect(seen.getByRole("combobox", { name: "Time shown" })).toHaveValue("day");
    await expect(seen.getByRole("searchbox", { name: "Find on the board" })).toHaveValue(orderId);
    await expect(
      seen.getByRole("complementary", { name: "Details" }).getByRole("heading", { level: 2 }),
    ).toContainText(`Order ${orderId}`);
  }

  await page.goBack();
  await expect(rows).toHaveValue("lines");
  await expect(customers).toHaveValue(customer);
  await page.goBack();
  await expect(customers).toHaveValue("");
  await page.goForward();
  await expect(customers).toHaveValue(customer);
  await customers.press("Escape");
  await page.getByRole("button", { name: "Show all", exact: true }).click();
  await expect(page).not.toHaveURL(/customer=/);

  await page.goto("/?customer=Nobody&span=wide&rows=walls");
  await expect(found).toHaveText("0 orders found");
  await openPanel(page, "1 filter on");
  await expect(customers).toHaveValue("Nobody");
  await expect(rows).toHaveValue("lines");
});

test("Back takes away a filter of the order book", async ({ page }) => {
  await page.goto("/orders");
  const onTime = page.getByRole("button", { name: /^On time/ });
  await onTime.click();
  await expect(page).toHaveURL(/state=on\+time/);
  await page.reload();
  await expect(onTime).toHaveAttribute("aria-pressed", "true");
  await page.goBack();
  await expect(onTime).toHaveAttribute("aria-pressed", "false");
});
