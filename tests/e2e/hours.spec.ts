import type { PlantResponse } from "@formweek/contracts";
import type { APIRequestContext, Locator, Page } from "@playwright/test";
import { expectAccessible } from "./accessible.ts";
import { expect, test } from "./app-test.ts";
import { boardPlaces, latestPlan, plantPath } from "../helpers/board-places.ts";

const button = (page: Page | Locator, name: string): Locator =>
  page.getByRole("button", { name, exact: true });
const newest = (page: Page, words: string | RegExp): Locator =>
  page.getByRole("status").filter({ hasText: words });

interface HoursOfPlant {
  readonly lineClosures: readonly { readonly lineId: string; readonly reason: string }[];
  readonly addedShifts: readonly { readonly date: string; readonly lineIds: readonly string[] }[];
}
const hoursOf = async (request: APIRequestContext): Promise<HoursOfPlant> => {
  const { plant } = (await (await request.get(plantPath)).json()) as PlantResponse;
  return plant as unknown as HoursOfPlant;
};

test("a line is closed by keyboard alone, its runs move out of the way, and undo and redo go over it with the plan", async ({
  page,
  request,
}) => {
  const before = await latestPlan(request);
  const line = before.document.lines[0];
  if (line === undefined) throw new Error("the plant has a line");
  await page.goto("/");
  await page.getByRole("application").focus();
  await page.keyboard.press("h");
  await expect(page.getByRole("heading", { name: line.name })).toBeFocused();
  await expectAccessible(page);
  await page.keyboard.press("Tab");
  await expect(button(page, "Close for a spell…")).toBeFocused();
  await page.keyboard.press("Enter");
  const dialog = page.getByRole("dialog", { name: "Close a line for a spell" });
  await expect(dialog).toContainText("Runs there then:");
  await dialog.getByLabel("From", { exact: true }).fill("2026-12-01T06:00");
  await dialog.getByLabel("To", { exact: true }).fill("2026-11-30T06:00");
  await dialog.getByLabel("Reason").fill("Oven repair");
  await page.keyboard.press("Enter");
  await expect(dialog.getByRole("alert")).toContainText("not after its start at 2026-12-01 06:00");
  await expectAccessible(page);
  expect((await latestPlan(request)).planId).toBe(before.planId);

  await dialog.getByLabel("To", { exact: true }).fill("2026-12-02T06:00");
  await dialog.getByLabel("Reason").focus();
  await page.keyboard.press("Enter");
  await expect(dialog).toBeHidden();
  await expect(newest(page, `Closed ${line.name} (Oven repair)`)).toBeVisible();
  await expect(page.getByRole("application")).toBeFocused();
  const closed = await latestPlan(request);
  const [from, to] = ["2026-12-01T05:00:00Z", "2026-12-02T05:00:00Z"];
  expect(
    closed.document.segments.filter(
      ({ kind, lineId, start, end }) => kind === "run" && lineId === line.id && start < to && end > from,
    ),
  ).toEqual([]);
  expect((await hoursOf(request)).lineClosures).toMatchObject([{ lineId: line.id, reason: "Oven repair" }]);

  await page.keyboard.press("Control+z");
  await expect(newest(page, `Taken back: Closed ${line.name}`)).toBeVisible();
  expect((await latestPlan(request)).document).toEqual(before.document);
  expect((await hoursOf(request)).lineClosures).toEqual([]);
  await page.reload();
  await expect(button(page, "Redo")).toHaveAttribute("title", new RegExp(`^Redo: Closed ${line.name}`));
  await button(page, "Redo").click();
  await expect(newest(page, `Done again: Closed ${line.name}`)).toBeVisible();
  expect((await latestPlan(request)).document).toEqual(closed.document);
  expect((await hoursOf(request)).lineClosures).toHaveLength(1);
});

test("a closed line is opened again from its header", async ({ page, request }) => {
  await page.goto("/");
  await page.getByRole("application").click({ position: { x: 40, y: 70 } });
  const panel = page.getByRole("complementary");
  await expect(panel).toContainText("Oven repair");
  await button(panel, "Open again").click();
  await expect(newest(page, "again")).toBeVisible();
  await expect(panel).not.toContainText("Oven repair");
  expect((await hoursOf(request)).lineClosures).toEqual([]);
});

test("a shift is added from a gap with people and a caution, drawn and told, and taken back", async ({
  page,
  request,
}) => {
  const before = await latestPlan(request);
  const saturday = ["2026-12-05T05:00:00Z", "2026-12-05T13:00:00Z"] as const;
  const isAway = (start: string, end: string): boolean => end <= saturday[0] || start >= saturday[1];
  const line = before.document.lines.find(
    ({ id, open }) =>
      open.every(([start, end]) => isAway(start, end)) &&
      before.document.segments.every(({ lineId, start, end }) => lineId !== id || isAway(start, end)),
  );
  if (line === undefined) throw new Error("some line rests on Saturday and has nothing begun");
  await page.goto("/");
  await expect(button(page, "Undo")).toBeVisible();
  const pointOf = await boardPlaces(page, before.document);
  await page.mouse.click(...pointOf(line.id, Date.parse("2026-12-05T12:00:00Z")));
  const panel = page.getByRole("complementary");
  await button(panel, "Add a shift…").click();
  const dialog = page.getByRole("dialog", { name: "Add a shift on a day" });
  await expect(dialog.getByLabel(line.name, { exact: true })).toBeChecked();
  await dialog.getByLabel("Day").fill("2026-12-05");
  await dialog.getByLabel("Shift", { exact: true }).selectOption({ label: "early, 06:00 to 14:00" });
  await expect(dialog).toContainText("Directive 2003/88/EC");
  await expect(dialog).toContainText("in that week");
  await expectAccessible(page);
  await button(dialog, "Add the shift").click();
  await expect(dialog).toBeHidden();
  await expect(newest(page, "Added shift early on 2026-12-05")).toBeVisible();
  expect((await hoursOf(request)).addedShifts).toMatchObject([{ date: "2026-12-05", lineIds: [line.id] }]);
  const after = (await latestPlan(request)).document;
  const added = { start: saturday[0], end: saturday[1], name: "early" };
  expect(after.lines.find(({ id }) => id === line.id)?.extraShifts).toEqual([added]);
  await expect(page.getByRole("heading", { name: line.name })).toBeVisible();

  await button(panel, "Add a shift…").click();
  await dialog.getByLabel("Day").fill("2026-12-05");
  await dialog.getByLabel("Shift", { exact: true }).selectOption({ label: "early, 06:00 to 14:00" });
  await button(dialog, "Add the shift").click();
  await expect(dialog.getByRole("alert")).toContainText("already");
  await button(dialog, "Leave as it is").click();
  await expect(page.getByRole("alert")).toBeHidden();

  await button(panel, "Take back").click();
  await expect(newest(page, "Took back shift early of 2026-12-05")).toBeVisible();
  expect((await hoursOf(request)).addedShifts).toEqual([]);
});

test("rows of setter teams know when the teams are off", async ({ page }) => {
  await page.goto("/");
  await page.getByRole("combobox", { name: "One row for each" }).selectOption("setter teams");
  const board = page.getByRole("application");
  const { width } = (await board.boundingBox()) ?? { width: 0 };
  // the far end of the first week, where the first team has nothing to change
  await board.click({ position: { x: width - 40, y: 80 } });
  await expect(page.getByRole("complementary")).toContainText("Closed time in it");
});
