import { expectAccessible } from "./accessible.ts";
import { expect, openPanel, test } from "./app-test.ts";

test("an empty order book leads on", async ({ page }) => {
  await page.route("**/orders", (route) =>
    route.request().resourceType() === "fetch"
      ? route.fulfill({ json: { revision: 0, planInputs: null, orders: [] } })
      : route.fallback(),
  );
  await page.goto("/orders");
  await expect(page.getByRole("heading", { name: "The order book is empty" })).toBeVisible();
  await expect(page.getByRole("button", { name: "Import file…" })).toBeVisible();
  await expectAccessible(page);
  await page.screenshot({ path: "test-results/screens/orders-empty-light-1280.png" });
});

test("a board without a plan offers to make one", async ({ page }) => {
  await page.route("**/plans/latest", (route) =>
    route.fulfill({
      status: 404,
      contentType: "application/problem+json",
      json: {
        type: "about:blank",
        title: "None",
        status: 404,
        detail: "",
        instance: "",
        code: "none",
        cause: "",
        remedy: "",
        faults: [],
      },
    }),
  );
  await page.goto("/");
  await expect(page.getByRole("heading", { name: "There is no plan yet" })).toBeVisible();
  await expect(page.getByRole("button", { name: "Plan the orders" })).toBeEnabled();
  await expectAccessible(page);
  await page.screenshot({ path: "test-results/screens/board-no-plan-light-1280.png" });
});

test("a server that falls silent is told about, and its return is noticed", async ({ page }) => {
  await page.route("**/plans/latest", (route) => route.abort("connectionrefused"));
  await page.goto("/");
  await expect(page.getByRole("alert").getByText("The server did not answer")).toBeVisible({
    timeout: 20_000,
  });
  await page.screenshot({ path: "test-results/screens/board-silent-server-light-1280.png" });
  await expectAccessible(page);
  await page.unroute("**/plans/latest");
  await page.getByRole("button", { name: "Try again" }).click();
  await expect(page.getByRole("application")).toBeVisible();
});

test("going offline keeps the board and says that it may be old", async ({ page, context }) => {
  await page.goto("/");
  await expect(page.getByRole("application")).toBeVisible();
  await context.setOffline(true);
  await expect(page.getByText("The server has not answered since", { exact: false })).toBeVisible();
  await expect(page.getByRole("application")).toBeVisible();
  await page.screenshot({ path: "test-results/screens/board-offline-light-1280.png" });
  await context.setOffline(false);
  await expect(page.getByText("The server has not answered since", { exact: false })).toBeHidden();
});

test("an answer of another shape is refused in words", async ({ page }) => {
  await page.route("**/plans/latest", (route) => route.fulfill({ json: { planId: 5 } }));
  await page.goto("/");
  await expect(page.getByRole("alert").getByText("The server's answer could not be read")).toBeVisible();
});

test("an address that is no page leads back", async ({ page }) => {
  await page.goto("/nowhere");
  await page.getByRole("link", { name: "Go to the board" }).click();
  await expect(page.getByRole("application")).toBeVisible();
});

test("the colours follow the system until the reader chooses, and the choice is kept", async ({ page }) => {
  await page.emulateMedia({ colorScheme: "dark" });
  await page.goto("/");
  const root = page.locator("html");
  await expect(root).toHaveAttribute("data-theme", "dark");
  await openPanel(page, "Settings");
  await page.getByRole("combobox", { name: "Colours" }).selectOption("light");
  await expect(root).toHaveAttribute("data-theme", "light");
  await page.reload();
  await expect(root).toHaveAttribute("data-theme", "light");
});
