import type { APIRequestContext, Locator, Page } from "@playwright/test";
import { boardPlaces, latestPlan, plantPath } from "../helpers/board-places.ts";
import { expectAccessible } from "./accessible.ts";
import { expect, selectRun, test } from "./app-test.ts";

const button = (page: Page, name: string | RegExp): Locator => page.getByRole("button", { name });
const note = (page: Page): Locator => page.getByText("This is the run's best plan so far, not yet yours.");
const viewOf = (page: Page): readonly (string | null)[] =>
  ["from", "span", "order"].map((name) => new URL(page.url()).searchParams.get(name));

/** Starts a run that goes on for longer than the test. */
async function startRun(request: APIRequestContext): Promise<string> {
  const answer = await request.post(`${plantPath}/solves`, { data: { seconds: 300, seed: 5 } });
  return ((await answer.json()) as { readonly runId: string }).runId;
}

test("a run's best plan so far is looked at, not changed, and just that one is kept by a stop", async ({
  page,
  request,
  browser,
  baseURL,
}) => {
  const complaints: string[] = [];
  page.on("console", (message) => {
    // what the content rules say once, where schemas load, is not about this
    if (message.type() === "error" && !message.text().includes("script-src")) complaints.push(message.text());
  });
  const before = await latestPlan(request);
  await page.goto("/");
  await expect(button(page, "Plan again")).toBeEnabled();
  const runId = await startRun(request);

  // the board keeps its time and selection when it shows the other plan
  const board = page.getByRole("application");
  await expect(button(page, "Look at it")).toBeVisible();
  await selectRun(page);
  await page.keyboard.press("+");
  await expect.poll(() => viewOf(page)[2]).not.toBeNull();
  const seen = viewOf(page);
  await page.keyboard.press("b");
  await expect(note(page)).toBeVisible();
  await expect(page.getByText(/Found just now\.|s old\./)).toBeVisible();
  expect(viewOf(page)).toEqual(seen);

  // nothing is changed by hand on it: by keyboard, by pointer, by buttons, by undo
  await board.focus();
  await page.keyboard.press("m");
  await expect(page.getByRole("alert").filter({ hasText: "Nothing was changed." })).toBeVisible();
  await expect(button(page, "Split lot")).toHaveCount(0);
  await expect(button(page, /^Publish/)).toHaveCount(0);
  await expect(page.getByText("come once it is kept.")).toBeVisible();
  await page.keyboard.press("Control+z");
  expect((await latestPlan(request)).planId).toBe(before.planId);

  // a reload in mid-run shows it again, and so does a second planner's page
  await page.reload();
  await expect(note(page)).toBeVisible();
  const second = await browser.newPage({ ...(baseURL === undefined ? {} : { baseURL }) });
  await second.goto("/");
  await button(second, "Look at it").click();
  await expect(note(second)).toBeVisible();
  await button(second, "Back to my plan").click();
  await expect(note(second)).toHaveCount(0);
  await expect(button(second, /^Publish/)).toBeVisible();

  const stopping = page.waitForRequest((asked) => asked.url().endsWith(`/solves/${runId}/stop`));
  const shown = page.waitForResponse((answer) => answer.url().endsWith(`/solves/${runId}/stop`));
  await button(page, "Stop and keep this plan").click();
  const { keep } = (await stopping).postDataJSON() as { readonly keep: number };
  expect(keep).toBeGreaterThanOrEqual(1);
  expect((await shown).status()).toBe(202);
  await expect(page.getByText("Stopped. The best plan so far is on the board.")).toBeVisible();
  await expect(note(page)).toHaveCount(0);
  await expect(button(page, /^Publish/)).toBeVisible();
  const after = await latestPlan(request);
  expect(after.planId).not.toBe(before.planId);
  const left = await request.get(`${plantPath}/solves/${runId}/plan`);
  expect(await left.json()).toEqual({ plan: null });
  expect(complaints).toEqual([]);
  await second.close();
});

test("a run that is dragged on a plan that is not yet the planner's stays where it is, and the board says so", async ({
  page,
  request,
}) => {
  const runId = await startRun(request);
  await page.goto("/");
  await button(page, "Look at it").click();
  await expect(note(page)).toBeVisible();
  await expectAccessible(page);
  const answer = await request.get(`${plantPath}/solves/${runId}/plan`);
  const { plan } = (await answer.json()) as {
    readonly plan: { readonly document: Awaited<ReturnType<typeof latestPlan>>["document"] };
  };
  const at = await boardPlaces(page, plan.document);
  const [lot] = plan.document.lots;
  if (lot === undefined) throw new Error("the plan is empty");
  const [x, y] = at(lot.lineId, (Date.parse(lot.start) + Date.parse(lot.end)) / 2);
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x + 60, y, { steps: 5 });
  await page.mouse.up();
  await expect(page.getByRole("alert").filter({ hasText: "Nothing was changed." })).toBeVisible();
  await request.post(`${plantPath}/solves/${runId}/stop`);
  await expect(note(page)).toHaveCount(0);
});
