import type { APIRequestContext } from "@playwright/test";
import { expectAccessible } from "./accessible.ts";
import { expect, howToPlan, openPanel, test } from "./app-test.ts";

const plantPath = "/api/plants/ellerwade";

const latestId = async (request: APIRequestContext): Promise<string> =>
  ((await (await request.get(`${plantPath}/plans/latest`)).json()) as { readonly planId: string }).planId;

test("a planning run is taken back by key and done again by button, also after a reload", async ({
  page,
  request,
}) => {
  await page.goto("/");
  const [undo, redo] = ["Undo", "Redo"].map((name) => page.getByRole("button", { name, exact: true }));
  if (undo === undefined || redo === undefined) throw new Error("two buttons");
  await expect(undo).toBeDisabled();
  await expect(redo).toBeDisabled();
  const first = await latestId(request);
  await openPanel(page, howToPlan);
  await page.getByRole("combobox", { name: "Think for" }).selectOption({ index: 0 });
  await page.getByRole("button", { name: "Plan again" }).click();
  await expect(page.getByText("The new plan is on the board.")).toBeVisible({ timeout: 60_000 });
  const second = await latestId(request);
  expect(second).not.toBe(first);
  await expect(undo).toBeEnabled();
  await expect(undo).toHaveAttribute("title", /^Undo: Planning run/);

  await page.getByRole("application").focus();
  await page.keyboard.press("Control+z");
  await expect(page.getByRole("status").filter({ hasText: "Taken back: " })).toBeVisible();
  expect(await latestId(request)).toBe(first);
  await page.reload();
  await expect(redo).toBeEnabled();
  await redo.click();
  await expect(page.getByRole("status").filter({ hasText: "Done again: " })).toBeVisible();
  expect(await latestId(request)).toBe(second);
  await expect(redo).toBeDisabled();
  await expectAccessible(page);
});

test("a step that was decided on an older plan says who changed what, and the board shows the newer one", async ({
  page,
  request,
}) => {
  await page.goto("/");
  await expect(page.getByRole("button", { name: "Undo", exact: true })).toBeEnabled();
  const { revision } = (await (await request.get(`${plantPath}/working-plan`)).json()) as {
    readonly revision: number;
  };
  // what the page sends is what it knew before somebody else went one step back
  await page.route("**/working-plan/undo", async (route) => {
    await request.post(`${plantPath}/working-plan/undo`, { data: { revision } });
    await route.continue();
  });
  await page.keyboard.press("Control+z");
  const alert = page.getByRole("alert");
  await expect(alert).toContainText("changed");
  await expect(page.getByRole("button", { name: "Redo", exact: true })).toBeEnabled();
  await alert.getByRole("button", { name: "Dismiss" }).click();
  await expect(alert).toBeHidden();
});
