import type { PlanDocument, PublicationListResponse, WorkingPlanResponse } from "@formweek/contracts";
import type { APIRequestContext, Page } from "@playwright/test";
import { expectAccessible } from "./accessible.ts";
import { expect, test } from "./app-test.ts";
import { latestPlan, plantPath } from "../helpers/board-places.ts";

const working = async (request: APIRequestContext): Promise<WorkingPlanResponse> =>
  (await (await request.get(`${plantPath}/working-plan`)).json()) as WorkingPlanResponse;
const publications = async (request: APIRequestContext): Promise<PublicationListResponse> =>
  (await (await request.get(`${plantPath}/publications`)).json()) as PublicationListResponse;

/** Takes a step as another planner would, away from the page. */
async function elsewhere(
  request: APIRequestContext,
  step: string,
  body: Readonly<Record<string, unknown>> = {},
): Promise<void> {
  const { revision } = await working(request);
  const answer = await request.post(`${plantPath}/working-plan/${step}`, { data: { revision, ...body } });
  expect([answer.status(), await answer.text()]).toMatchObject([200, expect.any(String)]);
}

const lotsByStart = ({ lots }: PlanDocument) => lots.toSorted((a, b) => (a.start < b.start ? -1 : 1));

const state = (page: Page) => page.getByRole("region", { name: "Published plan" });

test("a plan is published by keyboard with a note, and the board says by whom and what is frozen", async ({
  page,
  request,
}) => {
  await page.goto("/");
  await expect(state(page)).toContainText("Not published yet");
  const open = page.getByRole("button", { name: "Publish…" });
  await expect(open).toBeEnabled();
  await open.focus();
  await page.keyboard.press("Enter");
  const dialog = page.getByRole("dialog", { name: "Publish this plan" });
  await expect(dialog).toContainText("Nothing was published yet");
  await expectAccessible(page);
  await page.keyboard.press("Escape");
  await expect(dialog).toBeHidden();
  await expect(open).toBeFocused();

  await page.keyboard.press("Enter");
  await dialog.getByLabel("Note to the plant").fill("Week 49");
  await dialog.getByLabel("Keep in place").selectOption({ label: "runs of the first day" });
  await expect(dialog).toContainText(/\d+ runs that start before/);
  await dialog.getByRole("button", { name: "Publish", exact: true }).press("Enter");
  await expect(dialog).toBeHidden();
  await expect(state(page)).toContainText("by This machine");
  await expect(state(page)).toContainText("unchanged since");
  await expect(state(page)).toContainText("frozen until");
  const [published] = await publications(request);
  expect(published).toMatchObject({ note: "Week 49", planId: (await latestPlan(request)).planId });
  expect(published?.frozenUntil).not.toBeNull();
});

test("a change of a frozen run is asked about first, and one of a free run is not", async ({
  page,
  request,
}) => {
  const { planId, document } = await latestPlan(request);
  const lots = lotsByStart(document);
  const [frozen, free] = [lots[0]?.orderId ?? "", lots.at(-1)?.orderId ?? ""];
  await page.goto(`/?order=${frozen}`);
  const takeOut = page.getByRole("button", { name: "Take out of the plan" });
  await takeOut.click();
  const question = page.getByRole("dialog", { name: "This would move what is frozen" });
  await expect(question).toContainText(`Took order ${frozen} out`);
  await expectAccessible(page);
  await page.keyboard.press("Escape");
  await expect(question).toBeHidden();
  expect((await latestPlan(request)).planId).toBe(planId);

  await takeOut.click();
  await question.getByRole("button", { name: "Move it anyway" }).click();
  await expect(question).toBeHidden();
  await expect(state(page)).toContainText(/moved since/);
  const without = (await latestPlan(request)).document;
  expect(without.lots.some(({ orderId }) => orderId === frozen)).toBe(false);
  await page.getByRole("button", { name: "Undo", exact: true }).click();
  await expect(state(page)).toContainText("unchanged since");

  await page.goto(`/?order=${free}`);
  await takeOut.click();
  await expect(page.getByRole("status").filter({ hasText: `Took order ${free} out` })).toBeVisible();
  await expect(state(page)).toContainText("moved since");
});

test("publishing again says what changes for the plant", async ({ page, request }) => {
  await page.goto("/");
  await page.getByRole("button", { name: "Publish…" }).click();
  const dialog = page.getByRole("dialog", { name: "Publish this plan" });
  await expect(dialog).toContainText(/runs? moved/);
  await expect(dialog).toContainText("Not planned any more");
  const figures = dialog.getByRole("table", { name: "In short" });
  await expect(figures.getByRole("row", { name: /^Orders not planned/ })).toContainText("+1");
  // somebody else takes a step while the dialog is open: nothing is published unseen
  await elsewhere(request, "undo");
  await expect(dialog.getByRole("alert")).toContainText("changed while you looked");
  await dialog.getByRole("button", { name: "Look at the plan as it is now" }).click();
  await expect(dialog).toContainText("published already");
  await elsewhere(request, "redo");
  await dialog.getByRole("button", { name: "Look at the plan as it is now" }).click();
  await dialog.getByRole("button", { name: "Publish", exact: true }).click();
  await expect(dialog).toBeHidden();
  await expect(state(page)).toContainText("unchanged since");
  expect(await publications(request)).toHaveLength(2);
});

test("the history says who did what; two plans are compared, and an earlier one is worked on again", async ({
  page,
  request,
}) => {
  const now = await latestPlan(request);
  const [, first] = await publications(request);
  await page.goto("/");
  await page.getByRole("navigation").getByRole("link", { name: "Plans" }).click();
  await expect(page.getByRole("heading", { name: "Plans", level: 1 })).toBeVisible();
  const history = page.getByRole("region", { name: "History" });
  await expect(history).toContainText("Published the plan");
  await expect(history).toContainText("Week 49");
  await expect(history).toContainText("published now");
  await expect(history).toContainText("worked on now");

  const compare = page.getByRole("region", { name: "Two plans side by side" });
  await expect(compare.getByRole("img")).toBeVisible();
  await expect(compare.getByRole("region", { name: "Runs that moved" })).toBeVisible();
  await expect(compare.getByRole("table", { name: "What it costs" })).toContainText("Total");
  await expectAccessible(page);
  await compare.getByRole("button", { name: "Swap the two" }).click();
  await expect(page).toHaveURL(new RegExp(`from=${now.planId}`));
  await page.goto(`/plans?from=${now.planId}&to=${now.planId}`);
  await expect(compare).toContainText("the same plan twice");
  await page.goto(`/plans?from=nowhere&to=${now.planId}`);
  await expect(compare.getByRole("alert")).toContainText("no such plan");

  await page.goto("/plans");
  await history
    .getByRole("listitem")
    .filter({ hasText: "Week 49" })
    .getByRole("button", { name: /^Work on it again/ })
    .click();
  const dialog = page.getByRole("dialog", { name: "Work on this plan again" });
  await expect(dialog).toContainText("Undo on the board brings it back");
  await expect(dialog.getByRole("table", { name: "In short" })).toBeVisible();
  await expectAccessible(page);
  await dialog.getByRole("button", { name: "Work on it again" }).click();
  await expect(page.getByRole("status").filter({ hasText: "Fetched back" })).toBeVisible();
  expect((await latestPlan(request)).planId).toBe(first?.planId);
  await history.getByRole("link", { name: "To the board" }).click();
  await page.getByRole("button", { name: "Undo", exact: true }).click();
  await expect(state(page)).toContainText("unchanged since");
  expect((await latestPlan(request)).planId).toBe(now.planId);
});

test("two planners at once: the second is told what the first did, sees both plans, and nothing is lost", async ({
  page,
  context,
  request,
}) => {
  const lots = lotsByStart((await latestPlan(request)).document);
  const [mine, theirs] = [lots.at(-1)?.orderId ?? "", lots.at(-2)?.orderId ?? ""];
  await page.goto(`/?order=${mine}`);
  await expect(page.getByRole("button", { name: "Take out of the plan" })).toBeEnabled();
  const second = await context.newPage();
  await second.goto(`/?order=${theirs}`);
  // the first page does not hear of the other's step before it asks for its own
  let isDeaf = true;
  await page.route("**/working-plan", (route) => (isDeaf ? route.abort() : route.continue()));
  await second.getByRole("button", { name: "Take out of the plan" }).click();
  await expect(second.getByRole("status").filter({ hasText: `Took order ${theirs} out` })).toBeVisible();
  await page.route("**/working-plan/edits", (route) => {
    isDeaf = false;
    return route.continue();
  });
  await page.getByRole("button", { name: "Take out of the plan" }).click();
  const alert = page.getByRole("alert").filter({ hasText: "Somebody else changed the plan first" });
  await expect(alert).toContainText(`Not done: Took order ${mine} out`);
  expect((await latestPlan(request)).document.lots.some(({ orderId }) => orderId === mine)).toBe(true);
  await expectAccessible(page);
  await alert.getByRole("button", { name: "Do mine on the plan as it is now" }).click();
  await expect(alert).toBeHidden();
  await expect(
    page
      .getByRole("status")
      .filter({ hasText: `Took order ${mine} out` })
      .first(),
  ).toBeVisible();
  const { document } = await latestPlan(request);
  for (const orderId of [mine, theirs])
    expect(document.orders.find((order) => order.orderId === orderId)?.state).toBe("unplanned");
  // and the other page, that only looked on, is told
  const notice = second.getByRole("status").filter({ hasText: "changed the plan" });
  await expect(notice).toContainText(`Took order ${mine} out`);
  await expect(notice.getByRole("link", { name: "What changed" })).toBeVisible();
  await expectAccessible(second);
  await notice.getByRole("button", { name: "Dismiss" }).click();
  await expect(notice).toBeHidden();
});
