import type { OrderBookResponse } from "@formweek/contracts";
import type { APIRequestContext, Locator, Page } from "@playwright/test";
import { expect, test } from "./app-test.ts";

const ordersPath = "/api/plants/ellerwade/orders";
type Booked = OrderBookResponse["orders"][number];

const bookOf = async (request: APIRequestContext): Promise<readonly Booked[]> =>
  ((await (await request.get(ordersPath)).json()) as OrderBookResponse).orders;
const said = (page: Page, words: string | RegExp): Locator =>
  page.getByRole("status").filter({ hasText: words });
const step = (page: Page, name: "Undo" | "Redo"): Locator => page.getByRole("button", { name });
const tickThree = async (page: Page, first: Booked, third: Booked): Promise<void> => {
  await page.getByRole("checkbox", { name: `Select order ${first.id}`, exact: true }).check();
  await page
    .getByRole("checkbox", { name: `Select order ${third.id}`, exact: true })
    .click({ modifiers: ["Shift"] });
};

test("a bulk change is taken back and done again after reloads", async ({ page, request }) => {
  const before = await bookOf(request);
  const [first, , third] = before;
  if (first === undefined || third === undefined) throw new Error("too few orders");
  await page.goto("/orders");
  await expect(step(page, "Undo")).toBeDisabled();
  await tickThree(page, first, third);
  const bulk = page.getByRole("form", { name: "Change the selected orders" });
  await bulk.getByRole("button", { name: "Change", exact: true }).click();
  await expect(said(page, "Done: changed 3 orders")).toBeVisible();
  await page.reload();
  await step(page, "Undo").click();
  await expect(said(page, "Taken back: changed 3 orders")).toBeVisible();
  expect(await bookOf(request)).toEqual(before);
  await page.reload();
  await expect(step(page, "Undo")).toBeDisabled();
  await step(page, "Redo").click();
  await expect(said(page, "Done again: changed 3 orders")).toBeVisible();
  await page.goto("/");
  await page.goto("/orders");
  await step(page, "Undo").click();
  await expect(said(page, "Taken back: changed 3 orders")).toBeVisible();
  expect(await bookOf(request)).toEqual(before);
});

test("a pasted set is taken back after a reload", async ({ page, request }) => {
  const before = await bookOf(request);
  const [order, other] = before;
  if (order === undefined || other === undefined) throw new Error("too few orders");
  await page.goto("/orders");
  await page.getByRole("button", { name: "Paste rows…" }).click();
  const rows = [
    `${order.id}\t${order.productId}\t43000\t2026-12-11 12:00`,
    `N-1\t${order.productId}\t5000\t2026-12-11`,
  ];
  await page.getByRole("textbox", { name: "Rows" }).fill(rows.join("\n"));
  await page.getByRole("button", { name: "Check these rows" }).click();
  await page.getByRole("button", { name: /^Accept/ }).click();
  await expect(page.getByText("Accepted: 1 new, 1 changed.")).toBeVisible();
  await page.reload();
  await step(page, "Undo").click();
  await expect(said(page, "Taken back: changed 2 orders")).toBeVisible();
  expect(await bookOf(request)).toEqual(before);
});

test("what a second planner changed meanwhile is never written over by an undo after a reload", async ({
  page,
  request,
  browser,
  baseURL,
}) => {
  const before = await bookOf(request);
  const [first, second, third] = before;
  if (first === undefined || second === undefined || third === undefined) throw new Error("too few orders");
  await page.goto("/orders");
  await tickThree(page, first, third);
  const bulk = page.getByRole("form", { name: "Change the selected orders" });
  await bulk.getByRole("button", { name: "Change", exact: true }).click();
  await expect(said(page, "Done: changed 3 orders")).toBeVisible();

  const elsewhere = await browser.newContext({ baseURL: baseURL ?? "" });
  const others = await elsewhere.newPage();
  await others.goto("/orders");
  await expect(others.getByRole("button", { name: second.id, exact: true })).toBeVisible();
  await expect(step(others, "Undo")).toBeDisabled();
  await others.getByRole("button", { name: second.id, exact: true }).focus();
  await others.keyboard.press("F2");
  await others.keyboard.press("Tab");
  await others.keyboard.type("61000");
  await others.keyboard.press("Enter");
  await expect(said(others, `Done: changed order ${second.id}`)).toBeVisible();

  await page.reload();
  await step(page, "Undo").click();
  const told = page.getByRole("alert");
  await expect(told).toContainText("Someone else changed this order in the meantime");
  await expect(told.getByRole("row", { name: new RegExp(`^${second.id}: Pieces`) })).toContainText("61,000");
  const kept = await bookOf(request);
  expect(kept.find(({ id }) => id === second.id)?.pieces).toBe(61_000);
  await told.getByRole("button", { name: /^Keep theirs/ }).click();
  await expect(told).toBeHidden();
  const after = new Map((await bookOf(request)).map((order) => [order.id, order]));
  expect(after.get(first.id)).toEqual(first);
  expect(after.get(third.id)).toEqual(third);
  expect(after.get(second.id)?.pieces).toBe(61_000);
  await page.reload();
  await expect(step(page, "Undo")).toBeDisabled();

  await others.reload();
  await step(others, "Undo").click();
  await expect(said(others, `Taken back: changed order ${second.id}`)).toBeVisible();
  await elsewhere.close();
});
