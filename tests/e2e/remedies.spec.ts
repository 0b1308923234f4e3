import type { APIRequestContext, Locator, Page } from "@playwright/test";
import { expectAccessible } from "./accessible.ts";
import { expect, howToPlan, openPanel, test } from "./app-test.ts";
import { latestPlan, plantPath } from "../helpers/board-places.ts";

const button = (page: Page, name: string | RegExp): Locator => page.getByRole("button", { name });
const newest = (page: Page, words: string | RegExp): Locator =>
  page.getByRole("status").filter({ hasText: words });

/** An order that is late: one is put behind all others of its line where there is none. */
async function lateOrder(request: APIRequestContext): Promise<string> {
  const { document } = await latestPlan(request);
  const late = (plan: typeof document): string | undefined =>
    plan.orders.find(({ lateSeconds }) => lateSeconds > 0)?.orderId;
  const known = late(document);
  if (known !== undefined) return known;
  for (const { orderId, lot, lineId } of document.lots) {
    const working = (await (await request.get(`${plantPath}/working-plan`)).json()) as { revision: number };
    const edit = { kind: "move", orderId, lot, lineId, before: null };
    await request.post(`${plantPath}/working-plan/edits`, { data: { revision: working.revision, edit } });
    const made = late((await latestPlan(request)).document);
    if (made !== undefined) return made;
  }
  throw new Error("no order can be brought late");
}

test("a late order's details find what would help, one click applies it, and an undo takes it back", async ({
  page,
  request,
}) => {
  const orderId = await lateOrder(request);
  const before = await latestPlan(request);
  await page.goto(`/?order=${encodeURIComponent(orderId)}`);
  await expect(button(page, "Find what would help")).toBeEnabled();
  await button(page, "Find what would help").press("Enter");
  await expect(button(page, "Stop and keep what was found")).toBeVisible();
  await expect(page.getByText(/things were tried; these help/)).toBeVisible({ timeout: 60_000 });
  await expectAccessible(page);
  const apply = button(page, /^Apply: /).first();
  const words = (await apply.getAttribute("aria-label")) ?? "";
  await apply.press("Enter");
  await expect(
    newest(page, words.includes("search on") ? "Chose a plan to help" : "Moved order"),
  ).toBeVisible();
  const after = await latestPlan(request);
  expect(after.planId).not.toBe(before.planId);
  const lateness = (of: typeof before): number =>
    of.document.orders.find((order) => order.orderId === orderId)?.lateSeconds ?? 0;
  expect(
    lateness(after) < lateness(before) || after.document.objective.total < before.document.objective.total,
  ).toBe(true);
  await page.keyboard.press("Control+z");
  await expect(newest(page, "Taken back: ")).toBeVisible();
  expect((await latestPlan(request)).document).toEqual(before.document);
});

test("a search is seen by the others too, and can be stopped", async ({ page, request }) => {
  const orderId = await lateOrder(request);
  const { revision } = (await (await request.get(`${plantPath}/working-plan`)).json()) as {
    revision: number;
  };
  await page.goto("/");
  await request.post(`${plantPath}/remedies`, { data: { revision, orderId, seconds: 600 } });
  await expect(page.getByText(`Looking for what helps order ${orderId}`)).toBeVisible();
  await button(page, "Stop and keep").click();
  await expect(page.getByText(`What would help order ${orderId} stands in its details.`)).toBeVisible();
});

test("free time on a line says what it waits for, reached by keyboard from the run beside it", async ({
  page,
}) => {
  await page.goto("/");
  await page.getByRole("application").focus();
  await page.keyboard.press("ArrowRight");
  const free = button(page, /free (before|after) it: why\?/).first();
  for (let step = 0; step < 60 && !(await free.isVisible()); step += 1)
    await page.keyboard.press("ArrowRight");
  await free.press("Enter");
  await expect(page.getByRole("heading", { name: "What it waits for" })).toBeVisible();
  await expect(page.getByText("Being worked out…")).toBeHidden();
  await expect(page.getByText(/Comes next:|Nothing more is planned/)).toBeVisible();
  await expectAccessible(page);
});

test("what matters more is said before planning, and plans are compared and chosen", async ({
  page,
  request,
}) => {
  await page.goto("/");
  await openPanel(page, howToPlan);
  await page.getByRole("combobox", { name: "What matters more" }).selectOption({ label: "Fewer changes" });
  await page.getByRole("combobox", { name: "Think for" }).selectOption({ index: 0 });
  await button(page, "Plan again").click();
  await expect(page.getByText("Fewer changes counted for more.")).toBeVisible({ timeout: 60_000 });

  await button(page, "Compare plans…").click();
  await expect(page.getByText("Making several plans…")).toBeVisible();
  await expect(button(page, "Compare them")).toBeVisible({ timeout: 90_000 });
  await button(page, "Compare them").press("Enter");
  const dialog = page.getByRole("dialog", { name: "Plans to choose from" });
  await expect(dialog).toBeVisible();
  await expectAccessible(page);
  const before = await latestPlan(request);
  await dialog
    .getByRole("button", { name: /^Work on plan/ })
    .last()
    .press("Enter");
  await expect(newest(page, "Chose one of several plans")).toBeVisible();
  expect((await latestPlan(request)).planId).not.toBe(before.planId);
  await page.keyboard.press("Control+z");
  await expect(newest(page, "Taken back: Chose one of several plans")).toBeVisible();
  expect((await latestPlan(request)).document).toEqual(before.document);
});
