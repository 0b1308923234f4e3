import type { HoldListResponse, OrderBookResponse } from "@formweek/contracts";
import type { APIRequestContext, Locator, Page } from "@playwright/test";
import { plantPath } from "../helpers/board-places.ts";
import { expectAccessible } from "./accessible.ts";
import { expect, test } from "./app-test.ts";

const asked = "/promise?product=C75-60-090+white&pieces=185000&wanted=2026-12-11";

const answer = (page: Page): Locator => page.getByRole("region", { name: "Answer", exact: true });
const held = (page: Page): Locator => page.getByRole("region", { name: "Held for customers" });
const promised = (page: Page): Locator => answer(page).locator(".ready-time").first();

const holds = async (request: APIRequestContext): Promise<HoldListResponse["holds"]> =>
  ((await (await request.get(`${plantPath}/holds`)).json()) as HoldListResponse).holds;

/** No fault of accessibility, and nothing that sticks out of the page. */
async function expectSound(page: Page): Promise<void> {
  await expectAccessible(page);
  expect(await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth)).toBe(0);
}

/** Holds what is offered, by keyboard alone. */
async function holdFor(page: Page, customer: string): Promise<void> {
  const field = answer(page).getByRole("textbox", { name: "Customer" });
  await expect(answer(page).getByRole("button", { name: /^Hold until/ })).toBeEnabled();
  await field.focus();
  await page.keyboard.type(customer);
  await page.keyboard.press("Enter");
}

test("a product is found as it is typed, and the answer comes with the last key", async ({ page }) => {
  const errors: string[] = [];
  page.on("console", (message) => {
    if (message.type() === "error") errors.push(message.text());
  });
  await page.goto("/");
  await page.getByRole("navigation", { name: "Main" }).getByRole("link", { name: "Promise" }).click();
  await expect(page.getByRole("combobox", { name: "Product" })).toBeFocused();
  await expectSound(page);
  await page.keyboard.type("white 90 cup c75");
  const found = page.getByRole("listbox", { name: "Products found" }).getByRole("option");
  await expect(found.first()).toContainText("C75-60-090 white");
  await expect(found.first()).toHaveAttribute("aria-selected", "true");
  await expectSound(page);
  await page.keyboard.press("Enter");
  await expect(page.getByRole("textbox", { name: "Pieces" })).toBeFocused();
  await page.keyboard.type("185x");
  await expect(page.getByText("Write whole pieces from 1 to 1,000,000,000.")).toBeVisible();
  await page.keyboard.press("Backspace");
  await page.keyboard.type("k");
  await expect(answer(page)).toContainText("Ready for dispatch");
  await expect(answer(page)).toContainText("as early as can be");
  await page.getByLabel("Wanted by").fill("2026-12-11");
  await expect(answer(page)).toContainText("to spare");
  await expect(answer(page).getByRole("img", { name: /^Line \d.* neighbours/ })).toBeVisible();
  await expect(answer(page).getByRole("listitem").filter({ hasText: "pieces with" })).toBeVisible();
  await expect(answer(page).getByRole("region", { name: "How sure it is" })).toContainText(
    /in 10|in 20|certain|Hardly/,
  );
  await expect(page).toHaveURL(/product=C75-60-090\+white&pieces=185k&wanted=2026-12-11/);
  // whether there is another way hangs on the plan that stands
  await expect(page.getByRole("region", { name: "Other ways" })).toContainText(
    /What it costs the plant|There is no other way/,
  );
  await expectSound(page);
  const told = await promised(page).textContent();
  await page.reload();
  await expect(promised(page)).toHaveText(told ?? "");
  expect(errors).toEqual([]);
});

test("what cannot be promised says why, line by line; what cannot be reached says so and comes back", async ({
  page,
}) => {
  await page.goto("/promise?product=C75-60-090+white&pieces=900000000");
  await expect(answer(page)).toContainText("This cannot be promised");
  await expect(answer(page).locator("dt").first()).toHaveText(/line/i);
  await expectSound(page);
  await page.route("**/promises", (route) => route.abort());
  await page.getByRole("textbox", { name: "Pieces" }).fill("40k");
  const failure = page.getByRole("alert").filter({ hasText: "did not answer" });
  await expect(failure).toBeVisible();
  await page.unroute("**/promises");
  await failure.getByRole("button", { name: "Try again" }).click();
  await expect(answer(page)).toContainText("Ready for dispatch");
});

test("a plant that was never planned says what to do first", async ({ page }) => {
  await page.route("**/plans/latest", (route) => route.fulfill({ status: 404, body: "{}" }));
  await page.goto("/promise");
  await expect(page.getByRole("heading", { level: 1 })).toHaveText(
    "Nothing can be promised before the plant is planned",
  );
  await expectSound(page);
});

test("two sellers: the second is told that the hours are gone, and takes the new date by one key", async ({
  page,
  browser,
  baseURL,
  request,
}) => {
  const other = await browser.newContext({ baseURL: baseURL ?? "" });
  const second = await other.newPage();
  // the second seller's page neither hears of what the first does nor asks anew
  await second.route("**/events", (route) => route.abort());
  let answered: { readonly status: number; readonly body: string } | null = null;
  await second.route("**/promises", async (route) => {
    if (answered === null) {
      const response = await route.fetch();
      answered = { status: response.status(), body: await response.text() };
    }
    await route.fulfill({ ...answered, contentType: "application/json" });
  });
  await second.goto(asked);
  await expect(promised(second)).toBeVisible();
  await page.goto(asked);
  await expect(promised(page)).toHaveText((await promised(second).textContent()) ?? "");
  await holdFor(page, "A first customer");
  await expect(page.getByRole("status").filter({ hasText: "Held for A first customer until" })).toBeVisible();
  await expect(page.getByRole("button", { name: "Next enquiry" })).toBeFocused();
  await expect(held(page).getByRole("listitem").filter({ hasText: "A first customer" })).toContainText(
    "Time left",
  );
  await expectSound(page);

  await holdFor(second, "A second customer");
  const moved = second.getByRole("alert").filter({ hasText: "Somebody else took these hours" });
  await expect(moved).toContainText("later");
  await expect(moved.getByRole("button", { name: /instead$/ })).toBeFocused();
  expect(await holds(request)).toHaveLength(1);
  await expectSound(second);
  await second.keyboard.press("Enter");
  await expect(second.getByRole("status").filter({ hasText: "Held for A second customer" })).toBeVisible();
  expect(await holds(request)).toHaveLength(2);
  // the first seller's list hears of it by itself
  await expect(held(page).getByRole("listitem").filter({ hasText: "A second customer" })).toBeVisible();
  await other.close();
});

test("the planner sees what is held, on the board, in the table and in the steps", async ({
  page,
  request,
}) => {
  const [first] = await holds(request);
  const orderId = first?.orderId ?? "";
  await page.goto(`/?order=${orderId}`);
  const panel = page.getByRole("complementary").getByRole("region", { name: "Held for a customer" });
  await expect(panel).toContainText(first?.customer ?? "");
  await expect(page.getByRole("button", { name: "Undo", exact: true })).toBeDisabled();
  await expect(page.getByRole("button", { name: "Undo", exact: true })).toHaveAttribute(
    "aria-description",
    /held for a customer/,
  );
  await expect(page.getByRole("status").filter({ hasText: /^Held for A second customer/ })).toBeVisible();
  await expectSound(page);
  await page.getByRole("button", { name: "Table" }).click();
  await page.getByRole("searchbox", { name: "Find on the board" }).fill(orderId);
  await expect(
    page
      .getByRole("row")
      .filter({ hasText: orderId })
      .filter({ hasText: `for ${first?.customer}` })
      .first(),
  ).toBeVisible();
});

test("a hold becomes an order by keyboard, another is given back", async ({ page, request }) => {
  await page.goto("/promise");
  const first = held(page).getByRole("listitem").filter({ hasText: "A first customer" });
  await first.getByRole("button", { name: /an order$/ }).press("Enter");
  await expect(first.getByLabel("Order number")).toBeFocused();
  await page.keyboard.press("Enter");
  await expect(first.getByRole("alert")).toContainText("Write the order number.");
  await expectSound(page);
  await page.keyboard.type("A-20418");
  await page.keyboard.press("Enter");
  await expect(first).toBeHidden();
  const book = (await (await request.get(`${plantPath}/orders`)).json()) as OrderBookResponse;
  expect(book.orders.find(({ id }) => id === "A-20418")).toMatchObject({
    customer: "A first customer",
    state: "on time",
  });

  const second = held(page).getByRole("listitem").filter({ hasText: "A second customer" });
  await second.getByRole("button", { name: /^Release/ }).press("Enter");
  await second.getByRole("button", { name: "Really release?" }).press("Enter");
  await expect(second).toBeHidden();
  await expect(held(page)).toContainText("Nothing is held at present.");
  await held(page).getByText("Ended (2)").click();
  const ended = held(page).getByRole("list", { name: /ended/ });
  await expect(ended).toContainText("became an order");
  await expect(ended).toContainText("released");
  expect(new Set((await holds(request)).map(({ state }) => state))).toEqual(new Set(["ordered", "released"]));
});

test("many enquiries are pasted: faults by row, then answers that are taken away or opened", async ({
  page,
}) => {
  await page.goto("/promise/many");
  const rows = page.getByLabel("Rows copied from a spreadsheet");
  await expect(rows).toBeVisible();
  await expectSound(page);
  const ask = page.getByRole("button", { name: "Work out the dates" });
  await ask.click();
  await expect(page.getByRole("alert")).toContainText("There is no row of enquiries in it");
  await rows.fill("C75-60-090 white\t40000\t2026-12-11\nC70-66-080 black\tnine\t");
  await ask.click();
  // the header that the rows lacked stands above them now, so that they can be counted
  await expect(rows).toHaveValue(/^product\tpieces\twanted\n/);
  const faults = page.getByRole("alert");
  await expect(faults).toContainText("row 3, pieces");
  await expect(faults).toContainText("nine");
  await expectSound(page);
  await rows.fill(
    "product\tpieces\twanted\nC75-60-090 white\t40000\t2026-12-11\nC70-66-080 black\t900000000\t",
  );
  await ask.click();
  const answers = page.getByRole("region", { name: "Answers row by row" }).first();
  await expect(answers.getByRole("row").nth(1)).toContainText("to spare");
  await expect(answers.getByRole("row").nth(2)).toContainText("not possible");
  await expectSound(page);
  const download = page.waitForEvent("download");
  await page.getByRole("button", { name: "Answers as XLSX" }).click();
  expect((await download).suggestedFilename()).toBe("ellerwade-dates.xlsx");
  await answers.getByRole("link", { name: "Open the enquiry of row 2" }).click();
  await expect(promised(page)).toBeVisible();
  await expect(page).toHaveURL(/product=C75-60-090\+white&pieces=40000&wanted=2026-12-11/);
});

for (const [width, height] of [
  [390, 844],
  [1280, 800],
  [1920, 1080],
] as const) {
  test(`at ${width} px in light and dark the page is sound`, async ({ page }) => {
    await page.setViewportSize({ width, height });
    for (const colorScheme of ["light", "dark"] as const) {
      await page.emulateMedia({ colorScheme });
      await page.goto(asked);
      await expect(promised(page)).toBeVisible();
      await expect(page.getByRole("region", { name: "Other ways" })).toHaveAttribute("aria-busy", "false");
      await expectSound(page);
    }
  });
}
