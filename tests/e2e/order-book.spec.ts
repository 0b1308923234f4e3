import type { OrderBookResponse } from "@formweek/contracts";
import type { APIRequestContext, Locator, Page } from "@playwright/test";
import { expectAccessible } from "./accessible.ts";
import { expect, test } from "./app-test.ts";

const ordersPath = "/api/plants/ellerwade/orders";
type Booked = OrderBookResponse["orders"][number];

const bookOf = async (request: APIRequestContext): Promise<readonly Booked[]> =>
  ((await (await request.get(ordersPath)).json()) as OrderBookResponse).orders;
const orderOf = async (request: APIRequestContext, id: string): Promise<Booked | undefined> =>
  (await bookOf(request)).find((order) => order.id === id);
const termsOf = (order: Booked) => ({
  id: order.id,
  customer: order.customer,
  productId: order.productId,
  pieces: order.pieces,
  dueAt: order.dueAt,
  earliestStartAt: order.earliestStartAt,
  weight: order.weight,
  kind: order.kind,
  underTolerance: order.underTolerance,
  overTolerance: order.overTolerance,
  partsAllowed: order.partsAllowed,
});

const said = (page: Page, words: string | RegExp): Locator =>
  page.getByRole("status").filter({ hasText: words });
const rowOf = (page: Page, id: string): Locator =>
  page.getByRole("row").filter({ has: page.getByRole("button", { name: id, exact: true }) });

test("filters of the book are in its address, and Back takes each away", async ({ page, request }) => {
  const [first] = await bookOf(request);
  if (first === undefined) throw new Error("the demo has orders");
  await page.goto("/orders");
  await page.getByRole("combobox", { name: "Customer" }).selectOption(first.customer);
  await page.getByRole("combobox", { name: "Product" }).selectOption(first.productId);
  await expect(page).toHaveURL(/product=/);
  await page.reload();
  await expect(page.getByRole("combobox", { name: "Customer" })).toHaveValue(first.customer);
  await expect(page.getByRole("combobox", { name: "Product" })).toHaveValue(first.productId);
  const all = (await bookOf(request)).filter(
    ({ customer, productId }) => customer === first.customer && productId === first.productId,
  );
  await expect(page.locator("tbody .text-button")).toHaveCount(all.length);
  await page.goBack();
  await expect(page.getByRole("combobox", { name: "Product" })).toHaveValue("");
  await expect(page.getByRole("combobox", { name: "Customer" })).toHaveValue(first.customer);
  await page.getByRole("button", { name: "Show all orders" }).click();
  await expect(page).toHaveURL(/\/orders$/);
});

test("an order is changed in its cell by keyboard alone, and taken back", async ({ page, request }) => {
  const [order] = await bookOf(request);
  if (order === undefined) throw new Error("the demo has orders");
  await page.goto("/orders");
  await page.getByRole("button", { name: order.id, exact: true }).focus();
  // other tests may have left the book other than the plan was made for
  const otherInputs = page.getByText("The plan was made before");
  const saidBefore = await otherInputs.count();
  await page.keyboard.press("F2");
  await expect(page.getByRole("textbox", { name: `Customer of order ${order.id}` })).toBeFocused();
  await page.keyboard.press("Tab");
  const pieces = page.getByRole("textbox", { name: `Pieces of order ${order.id}` });
  await expect(pieces).toBeFocused();
  await page.keyboard.type("many");
  await page.keyboard.press("Enter");
  await expect(page.getByRole("alert")).toContainText("Write whole pieces");
  await expect(pieces).toHaveAttribute("aria-invalid", "true");
  await expectAccessible(page, "WCAG 2.2 AA");
  await pieces.fill("41,000");
  await page.keyboard.press("Enter");
  await expect(said(page, `Done: changed order ${order.id}`)).toBeVisible();
  await expect(page.getByRole("button", { name: order.id, exact: true })).toBeFocused();
  expect(await orderOf(request, order.id)).toMatchObject({ pieces: 41_000, state: "not planned yet" });
  await expect(rowOf(page, order.id)).toContainText("41,000");
  await expect(page.getByText("The plan was made before")).toBeVisible();

  await page.keyboard.press("Control+z");
  await expect(said(page, `Taken back: changed order ${order.id}`)).toBeVisible();
  expect(await orderOf(request, order.id)).toEqual(order);
  await expect(otherInputs).toHaveCount(saidBefore);
  await page.keyboard.press("Control+y");
  await expect(said(page, `Done again: changed order ${order.id}`)).toBeVisible();
  await page.getByRole("button", { name: "Undo" }).click();
  await expect(said(page, "Taken back")).toBeVisible();
  expect(await orderOf(request, order.id)).toEqual(order);
});

test("all fields of an order are changed in its form, which names what it cannot read", async ({
  page,
  request,
}) => {
  const [order] = await bookOf(request);
  if (order === undefined) throw new Error("the demo has orders");
  await page.goto("/orders");
  await page.getByRole("button", { name: order.id, exact: true }).click();
  const panel = page.getByRole("complementary", { name: `Order ${order.id}` });
  await panel.getByRole("button", { name: "Edit" }).click();
  const form = page.getByRole("form", { name: `Edit order ${order.id}` });
  await form.getByLabel("Weight").fill("heavy");
  await form.getByRole("button", { name: "Save" }).click();
  await expect(form.getByText("Write a number from 0 to 1000")).toBeVisible();
  await expect(form.getByLabel("Weight")).toBeFocused();
  await expectAccessible(page, "WCAG 2.2 AA");
  await page.screenshot({ path: "test-results/screens/order-form-light-1280.png" });
  await form.getByLabel("Weight").fill("2.5");
  await form.getByLabel("May be delivered in parts").setChecked(!order.partsAllowed);
  await form.getByRole("button", { name: "Save" }).click();
  await expect(form).toBeHidden();
  expect(await orderOf(request, order.id)).toMatchObject({
    weight: 2.5,
    partsAllowed: !order.partsAllowed,
    pieces: order.pieces,
  });
  await page.keyboard.press("Control+z");
  await expect(said(page, "Taken back")).toBeVisible();
});

test("many orders are changed, and removed, at once, and one undo brings all back", async ({
  page,
  request,
}) => {
  const before = await bookOf(request);
  const [first, second, third] = before;
  if (first === undefined || second === undefined || third === undefined) throw new Error("too few orders");
  await page.goto("/orders");
  await page.getByRole("checkbox", { name: `Select order ${first.id}`, exact: true }).check();
  await page
    .getByRole("checkbox", { name: `Select order ${third.id}`, exact: true })
    .click({ modifiers: ["Shift"] });
  await expect(page.getByText("3 orders selected")).toBeVisible();
  const bulk = page.getByRole("form", { name: "Change the selected orders" });
  await bulk.getByRole("textbox").fill("soon");
  await bulk.getByRole("button", { name: "Change", exact: true }).click();
  await expect(bulk.getByRole("alert")).toContainText("Write whole days");
  await expectAccessible(page, "WCAG 2.2 AA");
  await page.screenshot({ path: "test-results/screens/orders-bulk-light-1280.png" });
  await bulk.getByRole("textbox").fill("2");
  await bulk.getByRole("button", { name: "Change", exact: true }).click();
  await expect(said(page, "Done: changed 3 orders")).toBeVisible();
  const moved = await orderOf(request, second.id);
  expect(Date.parse(moved?.dueAt ?? "") - Date.parse(second.dueAt)).toBe(2 * 86_400_000);
  await bulk.getByRole("button", { name: "Remove" }).click();
  await expect(said(page, "Done: removed 3 orders")).toBeVisible();
  expect(await bookOf(request)).toHaveLength(before.length - 3);
  await page.getByRole("button", { name: "Undo" }).click();
  await expect(said(page, "Taken back: removed 3 orders")).toBeVisible();
  await page.getByRole("button", { name: "Undo" }).click();
  await expect(said(page, "Taken back: changed 3 orders")).toBeVisible();
  expect(await bookOf(request)).toEqual(before);
});

test("a change by someone else in the meantime is told with both versions, and the planner decides", async ({
  page,
  request,
}) => {
  const [order] = await bookOf(request);
  if (order === undefined) throw new Error("the demo has orders");
  const terms = termsOf(order);
  const theirs = { ...terms, pieces: 51_000, weight: 4 };
  const change = (changes: readonly unknown[]) =>
    request.post(`${ordersPath}/changes`, { data: { changes } });
  await page.goto("/orders");
  const openForm = async (): Promise<Locator> => {
    await page.getByRole("button", { name: order.id, exact: true }).click();
    await page.getByRole("button", { name: "Edit", exact: true }).click();
    const form = page.getByRole("form", { name: `Edit order ${order.id}` });
    await form.getByLabel("Pieces").fill("36000");
    return form;
  };
  const form = await openForm();
  expect((await change([{ before: terms, after: theirs }])).status()).toBe(200);
  await form.getByRole("button", { name: "Save" }).click();
  const told = page.getByRole("alert");
  await expect(told).toContainText("Someone else changed this order in the meantime");
  const pieces = told.getByRole("row", { name: new RegExp(`^${order.id}: Pieces`) });
  await expect(pieces).toContainText("51,000");
  await expect(pieces).toContainText("36,000");
  await expectAccessible(page, "WCAG 2.2 AA");
  await page.screenshot({ path: "test-results/screens/orders-conflict-light-1280.png" });
  expect(await orderOf(request, order.id)).toMatchObject({ pieces: 51_000, weight: 4 });
  await told.getByRole("button", { name: "Make my change on top" }).click();
  await expect(told).toBeHidden();
  await expect(form).toBeHidden();
  expect(await orderOf(request, order.id)).toMatchObject({ pieces: 36_000, weight: 4 });

  const mine = { ...theirs, pieces: 36_000 };
  await change([{ before: mine, after: terms }]);
  await page.getByRole("button", { name: "Undo" }).click();
  await expect(told).toContainText("Someone else changed this order");
  await told.getByRole("button", { name: "Keep theirs" }).click();
  await expect(told).toBeHidden();
  await expect(page.getByRole("button", { name: "Undo" })).toBeDisabled();
  expect(await orderOf(request, order.id)).toEqual(order);
});

test("rows pasted into the book without a header show what would change, and one undo takes them back", async ({
  page,
  request,
}) => {
  const before = await bookOf(request);
  const [order] = before;
  if (order === undefined) throw new Error("the demo has orders");
  await page.goto("/orders");
  await page.getByRole("button", { name: "Paste rows…" }).click();
  await page
    .getByRole("textbox", { name: "Rows" })
    .fill(`${order.id}\t${order.productId}\t43000\t2026-12-11 12:00\n99001\tno such thing\t5\t2026-12-11`);
  await page.getByRole("button", { name: "Check these rows" }).click();
  const changes = page.getByRole("region", { name: "What would change" });
  await expect(changes.getByRole("row", { name: new RegExp(`^${order.id} Pieces`) })).toContainText("43,000");
  await expect(page.getByText("is no product of this plant")).toBeVisible();
  await expectAccessible(page, "WCAG 2.2 AA");
  await page.screenshot({ path: "test-results/screens/paste-report-light-1280.png" });
  expect(await bookOf(request)).toEqual(before);
  await page.getByRole("button", { name: /^Accept 1 good/ }).click();
  await expect(page.getByText("Accepted: 0 new, 1 changed.")).toBeVisible();
  expect(await orderOf(request, order.id)).toMatchObject({
    pieces: 43_000,
    customer: order.customer,
    weight: order.weight,
  });
  await page.getByRole("button", { name: "Undo" }).click();
  await expect(said(page, `Taken back: changed order ${order.id}`)).toBeVisible();
  expect(await bookOf(request)).toEqual(before);
});

for (const theme of ["light", "dark"] as const) {
  test.describe(`the order book, ${theme}`, () => {
    test.use({ colorScheme: theme });

    test("is clear and without fault on wide and narrow screens", async ({ page }) => {
      for (const width of [1920, 1280, 390]) {
        await page.setViewportSize({ width, height: width === 390 ? 844 : 900 });
        await page.goto("/orders");
        await page
          .getByRole("checkbox", { name: /^Select order/ })
          .first()
          .check();
        await page.locator("tbody .text-button").nth(1).click();
        await page.getByRole("button", { name: "Edit", exact: true }).click();
        await expect(page.getByRole("form", { name: /^Edit order/ })).toBeVisible();
        await expectAccessible(page, "WCAG 2.2 AA");
        await page.screenshot({ path: `test-results/screens/order-book-${theme}-${width}.png` });
      }
    });
  });
}

test("an order is added by keyboard alone; its form names what is bad, and one undo takes it out", async ({
  page,
  request,
}) => {
  const before = await bookOf(request);
  const [order] = before;
  if (order === undefined) throw new Error("the demo has orders");
  await page.goto("/orders");
  await expect(page.getByRole("button", { name: order.id, exact: true })).toBeVisible();
  await page.keyboard.press("Insert");
  const form = page.getByRole("dialog", { name: "Add an order" });
  await expect(form.getByLabel("Order number")).toBeFocused();
  await page.keyboard.type(order.id);
  await page.keyboard.press("Tab");
  await page.keyboard.type("no such thing");
  await page.keyboard.press("Enter");
  await expect(form.getByText(`Order ${order.id} is in the book already`)).toBeVisible();
  await expect(form.getByText("Write the id or name of one product")).toBeVisible();
  await expect(form.getByText("Write whole pieces")).toBeVisible();
  await expect(form.getByText("Write a day that exists")).toBeVisible();
  await expect(form.getByLabel("Order number")).toBeFocused();
  await expectAccessible(page, "WCAG 2.2 AA");
  await page.screenshot({ path: "test-results/screens/order-add-light-1280.png" });
  expect(await bookOf(request)).toEqual(before);
  await page.keyboard.press("Control+A");
  await page.keyboard.type("N-7");
  await page.keyboard.press("Tab");
  await page.keyboard.press("Control+A");
  await page.keyboard.type(order.productId.toLowerCase());
  await page.keyboard.press("Tab");
  await page.keyboard.type("5000");
  await form.getByLabel("Due day").fill("2026-12-11");
  await page.keyboard.press("Enter");
  await expect(form).toBeHidden();
  await expect(said(page, "Done: added order N-7")).toBeVisible();
  expect(await orderOf(request, "N-7")).toMatchObject({
    productId: order.productId,
    pieces: 5000,
    customer: "—",
    dueAt: "2026-12-11T23:00:00Z",
  });
  await page.keyboard.press("Control+z");
  await expect(said(page, "Taken back: added order N-7")).toBeVisible();
  expect(await bookOf(request)).toEqual(before);
});
