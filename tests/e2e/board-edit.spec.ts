import type { RatesResponse } from "@formweek/contracts";
import type { Locator, Page } from "@playwright/test";
import { expectAccessible } from "./accessible.ts";
import { expect, test } from "./app-test.ts";
import { boardPlaces, latestPlan, middleOf, ordersOfLine, plantPath } from "../helpers/board-places.ts";

const strip = (page: Page): Locator => page.getByRole("status").filter({ hasText: "→" });
const newest = (page: Page, words: string | RegExp): Locator =>
  page.getByRole("status").filter({ hasText: words });
const button = (page: Page, name: string): Locator => page.getByRole("button", { name, exact: true });

/** Opens the board and waits until it can say what an edit would come to. */
async function openBoard(page: Page, path = "/"): Promise<void> {
  const problem = page.waitForResponse(/\/problem$/);
  await page.goto(path);
  await problem;
}

test("a run is moved by keyboard alone with its effect told before, taken back, and done again after a reload", async ({
  page,
  request,
}) => {
  const before = await latestPlan(request);
  const lineId = before.document.lines[0]?.id ?? "";
  const lineName = before.document.lines[0]?.name ?? "";
  const orders = ordersOfLine(before.document, lineId);
  const [first] = orders;
  if (first === undefined) throw new Error("the line has lots");
  await openBoard(page, `/?order=${encodeURIComponent(first)}`);
  await button(page, "Move…").press("Enter");
  await expect(page.getByRole("application")).toBeFocused();
  await expect(strip(page)).toContainText("where it is now");
  for (let step = 0; step < 3; step += 1) await page.keyboard.press("ArrowRight");
  await expect(strip(page)).toContainText(`Order ${first} → ${lineName}, `);
  await expect(strip(page)).toContainText("Changes");
  await expectAccessible(page);
  await page.keyboard.press("Enter");
  await expect(newest(page, `Moved order ${first} to ${lineName}`)).toBeVisible();
  const moved = await latestPlan(request);
  const after = ordersOfLine(moved.document, lineId);
  expect(after.indexOf(first)).toBeGreaterThan(0);
  expect(after.filter((id) => id !== first)).toEqual(orders.filter((id) => id !== first));

  await page.keyboard.press("Control+z");
  await expect(newest(page, `Taken back: Moved order ${first}`)).toBeVisible();
  expect((await latestPlan(request)).document).toEqual(before.document);
  await page.reload();
  await expect(button(page, "Redo")).toHaveAttribute("title", new RegExp(`^Redo: Moved order ${first}`));
  await page.keyboard.press("Control+y");
  await expect(newest(page, `Done again: Moved order ${first}`)).toBeVisible();
  expect((await latestPlan(request)).document).toEqual(moved.document);
});

test("a run is dragged by mouse to another place; Escape on the way changes nothing", async ({
  page,
  request,
}) => {
  const before = await latestPlan(request);
  const lineId = before.document.lines[0]?.id ?? "";
  const orders = ordersOfLine(before.document, lineId);
  const widest = [...orders.slice(0, 6)].sort(
    (a, b) => middleOf(before.document, b)[1] - middleOf(before.document, a)[1],
  )[0];
  if (widest === undefined) throw new Error("the line has lots");
  await openBoard(page);
  const pointOf = await boardPlaces(page, before.document);
  const [x, y] = pointOf(lineId, middleOf(before.document, widest)[0]);
  const [farX] = pointOf(lineId, Date.parse(before.document.summary.makespanEnd ?? "") + 3_600_000);
  const drag = async (): Promise<void> => {
    await page.mouse.move(x, y);
    await page.mouse.down();
    await page.mouse.move((x + farX) / 2, y + 3, { steps: 4 });
    await page.mouse.move(farX - 60, y, { steps: 4 });
    await expect(strip(page)).toContainText(`Order ${widest}`);
  };
  await drag();
  await page.keyboard.press("Escape");
  await expect(strip(page)).toBeHidden();
  await page.mouse.up();
  expect((await latestPlan(request)).planId).toBe(before.planId);

  await drag();
  await expect(strip(page)).toContainText("Cost");
  await page.mouse.up();
  await expect(newest(page, `Moved order ${widest} to`)).toBeVisible();
  const after = ordersOfLine((await latestPlan(request)).document, lineId);
  expect(after.indexOf(widest)).toBeGreaterThan(orders.indexOf(widest));
  expect(after.filter((id) => id !== widest)).toEqual(orders.filter((id) => id !== widest));
});

test("a line that the product does not fit says why, and letting go there changes nothing", async ({
  page,
  request,
}) => {
  const before = await latestPlan(request);
  const rates = (await (await request.get(`${plantPath}/rates`)).json()) as RatesResponse;
  const { lines, orders, lots } = before.document;
  const refuses = (productId: string, lineId: string): boolean =>
    rates.some((entry) => entry.productId === productId && entry.lineId === lineId) &&
    rates.every((entry) => entry.productId !== productId || entry.lineId !== lineId || entry.rate === null);
  const found = orders.flatMap(({ orderId, productId }) => {
    const lot = lots.find((each) => each.orderId === orderId);
    const from = lines.findIndex(({ id }) => id === lot?.lineId);
    return [1, -1].flatMap((by) =>
      lot !== undefined && lines[from + by] !== undefined && refuses(productId, lines[from + by]?.id ?? "")
        ? [{ orderId, key: by === 1 ? "ArrowDown" : "ArrowUp", line: lines[from + by]?.name ?? "" }]
        : [],
    );
  })[0];
  if (found === undefined) throw new Error("some order does not fit the line beside its own");
  await openBoard(page, `/?order=${encodeURIComponent(found.orderId)}`);
  await button(page, "Move…").click();
  await page.keyboard.press(found.key);
  await expect(strip(page)).toContainText(`→ ${found.line}`);
  await expect(strip(page)).toContainText("Does not fit.");
  await expect(strip(page)).toContainText("Not here. Esc gives up.");
  await page.keyboard.press("Enter");
  await expect(strip(page)).toBeHidden();
  expect((await latestPlan(request)).planId).toBe(before.planId);
});

test("an order is taken out and put back by its details; too many pieces to split off are refused with what to do", async ({
  page,
  request,
}) => {
  const { document } = await latestPlan(request);
  const orderId = ordersOfLine(document, document.lines[1]?.id ?? "")[0] ?? "";
  await openBoard(page, `/?order=${encodeURIComponent(orderId)}`);
  await button(page, "Split…").press("Enter");
  const pieces = page.getByLabel("Pieces that leave this lot");
  await expect(pieces).toBeFocused();
  await pieces.fill("1");
  await pieces.press("Enter");
  await expect(page.getByRole("alert")).toContainText(orderId);
  await page.getByRole("alert").getByRole("button", { name: "Dismiss" }).click();

  await button(page, "Take out of the plan").click();
  await expect(newest(page, `Took order ${orderId} out of the plan`)).toBeVisible();
  expect((await latestPlan(request)).document.lots.some((lot) => lot.orderId === orderId)).toBe(false);
  await button(page, "Put back where it costs least").click();
  await expect(newest(page, `Put order ${orderId} back into the plan`)).toBeVisible();
  expect((await latestPlan(request)).document.lots.some((lot) => lot.orderId === orderId)).toBe(true);
});

test("a finger that rests on a run takes it up", async ({ browser, app, request }) => {
  const context = await browser.newContext({
    baseURL: app.url,
    hasTouch: true,
    viewport: { width: 820, height: 1100 },
  });
  const page = await context.newPage();
  const { document, planId } = await latestPlan(request);
  const lineId = document.lines[0]?.id ?? "";
  const orderId = ordersOfLine(document, lineId).reduce((best, id) =>
    middleOf(document, id)[1] > middleOf(document, best)[1] ? id : best,
  );
  await openBoard(page);
  const pointOf = await boardPlaces(page, document);
  const [x, y] = pointOf(lineId, middleOf(document, orderId)[0]);
  const touch = await context.newCDPSession(page);
  await touch.send("Input.dispatchTouchEvent", { type: "touchStart", touchPoints: [{ x, y, id: 0 }] });
  await expect(strip(page)).toContainText(`Order ${orderId}`);
  await touch.send("Input.dispatchTouchEvent", { type: "touchMove", touchPoints: [{ x: x + 6, y, id: 0 }] });
  await touch.send("Input.dispatchTouchEvent", { type: "touchEnd", touchPoints: [] });
  await expect(strip(page)).toBeHidden();
  expect((await latestPlan(request)).planId).toBe(planId);
  await context.close();
});
