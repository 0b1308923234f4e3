import type { OrderBookResponse, PlantResponse, Scenario, ScenarioChange } from "@formweek/contracts";
import type { APIRequestContext, Locator, Page } from "@playwright/test";
import { latestPlan, plantPath } from "../helpers/board-places.ts";
import { expectAccessible } from "./accessible.ts";
import { expect, test } from "./app-test.ts";

const button = (page: Page | Locator, name: string | RegExp): Locator => page.getByRole("button", { name });
const dialogOf = (page: Page, name: string | RegExp): Locator => page.getByRole("dialog", { name });
const comparison = (page: Page): Locator => page.getByRole("table", { name: "Side by side" });
const scenarios = (page: Page): Locator =>
  page.getByRole("list", { name: "Scenarios" }).getByRole("listitem");

interface PlantRecords {
  readonly moulds: readonly { readonly id: string; readonly name: string; readonly copies: number }[];
  readonly addedShifts: readonly unknown[];
}
const plantOf = async (request: APIRequestContext): Promise<PlantRecords> => {
  const { plant } = (await (await request.get(plantPath)).json()) as PlantResponse;
  return plant as unknown as PlantRecords;
};
const stored = async (request: APIRequestContext): Promise<readonly Scenario[]> =>
  (await (await request.get(`${plantPath}/scenarios`)).json()) as Scenario[];

/** What other specs have written goes. */
async function forgetAll(request: APIRequestContext): Promise<void> {
  for (const { id, revision } of await stored(request)) {
    const gone = await request.delete(`${plantPath}/scenarios/${id}?revision=${revision}`);
    expect(gone.ok(), await gone.text()).toBe(true);
  }
}

/** Clean in both themes, on a phone too, and never wider than the window. */
async function looksRight(page: Page, name: string): Promise<void> {
  for (const [theme, width] of [
    ["light", 390],
    ["dark", 1280],
    ["light", 1920],
  ] as const) {
    await page.evaluate((chosen) => (document.documentElement.dataset["theme"] = chosen), theme);
    await page.setViewportSize({ width, height: 900 });
    if (width < 1920) await expectAccessible(page);
    const overflow = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
    expect(overflow, `${name}, ${width}`).toBeLessThanOrEqual(0);
    await page.screenshot({
      path: `test-results/screens/what-if-${name}-${theme}-${width}.png`,
      fullPage: true,
    });
  }
  await page.setViewportSize({ width: 1280, height: 800 });
}

/** The two scenarios that the tests are about, written where they are not there yet. */
async function writtenBoth(request: APIRequestContext): Promise<readonly Scenario[]> {
  const known = await stored(request);
  const [mould] = (await plantOf(request)).moulds;
  if (mould === undefined) throw new Error("the plant has a mould");
  const both: readonly (readonly [string, ScenarioChange])[] = [
    [
      "Saturday shift",
      {
        kind: "add shift",
        shift: {
          date: "2026-12-05",
          name: "early",
          start: "06:00",
          end: "14:00",
          breaks: [],
          lineIds: ["L2"],
          teamIds: [],
          operators: [],
        },
      },
    ],
    ["Second set", { kind: "more copies", mouldId: mould.id, more: 1 }],
  ];
  for (const [name, change] of both) {
    if (known.some((scenario) => scenario.name === name)) continue;
    const written = await request.post(`${plantPath}/scenarios`, { data: { name, changes: [change] } });
    expect(written.status(), await written.text()).toBe(201);
  }
  const all = await stored(request);
  return both.flatMap(([name]) => all.filter((scenario) => scenario.name === name).slice(0, 1));
}

const compared = (all: readonly Scenario[]): string => `/what-if?with=${all.map(({ id }) => id).join(",")}`;

/** Works out what the page has ticked, and waits for it. */
async function workOut(page: Page, count: number): Promise<void> {
  await button(page, `Work out ${count}`).click();
  await expect(page.getByText(`Working out ${count} scenarios…`).first()).toBeVisible();
  await expect(page.getByText("Worked out.", { exact: true })).toBeVisible({ timeout: 120_000 });
}

test("two scenarios are written from the examples, a bad one is refused at its field and changes nothing", async ({
  page,
  request,
}) => {
  test.slow();
  const said: string[] = [];
  page.on("console", (message) => {
    // a refusal of the server is told by the browser too
    if (message.type() === "error" && !message.text().includes("status of 4")) said.push(message.text());
  });
  page.on("pageerror", ({ message }) => said.push(message));
  await forgetAll(request);
  const plant = await plantOf(request);
  await page.goto("/");
  await page.getByRole("navigation", { name: "Main" }).getByRole("link", { name: "What-if" }).click();
  await expect(page).toHaveTitle(/^What-if · /);
  await expect(page.getByText("Nothing of the real plant changes until you adopt it.")).toBeVisible();
  await looksRight(page, "empty");

  await button(page, /^A shift on /).click();
  const editor = dialogOf(page, "New scenario");
  await expect(editor.getByRole("heading", { name: "Long hours tire people" })).toBeVisible();
  await editor.getByLabel("Name").fill("Saturday shift");
  await looksRight(page, "editor");
  await button(editor, "Save").click();
  await expect(editor).toBeHidden();
  await expect(scenarios(page).first()).toContainText("Extra shift on ");
  await expect(scenarios(page).first()).toContainText("not worked out yet");

  await button(page, "New scenario…").click();
  await editor.getByLabel("Name").fill("Second set");
  await button(editor, "Save").click();
  await expect(editor.getByRole("alert")).toContainText("Add at least one change.");
  await editor.getByLabel("Add a change").selectOption({ label: "More sets of a mould" });
  await button(editor, /^Add$/).click();
  const mould = editor.getByLabel("Mould, by name or id");
  await mould.fill("no such mould");
  await button(editor, "Save").click();
  await expect(mould).toBeFocused();
  await expect(mould).toHaveAttribute("aria-invalid", "true");
  const [known] = plant.moulds;
  if (known === undefined) throw new Error("the plant has a mould");
  await mould.fill(known.id);
  await expect(editor).toContainText(`That is ${known.name}.`);

  // what only the server knows to be wrong stands at its field too
  await editor.getByLabel("Add a change").selectOption({ label: "A line stands" });
  await button(editor, /^Add$/).click();
  await editor.getByLabel("From", { exact: true }).fill("2026-12-02T06:00");
  await editor.getByLabel("To", { exact: true }).fill("2026-12-01T06:00");
  await editor.getByLabel("Reason").fill("bearing");
  await button(editor, "Save").click();
  await expect(editor).toContainText("not after its start at 2026-12-02 06:00");
  await expect(editor.getByLabel("To", { exact: true })).toBeFocused();
  await expectAccessible(page);
  expect(await stored(request)).toHaveLength(1);
  await button(editor, /^Remove: .* stands /).click();
  await button(editor, "Save").click();
  await expect(editor).toBeHidden();
  expect((await stored(request)).map(({ name }) => name)).toEqual(["Saturday shift", "Second set"]);
  expect(await plantOf(request)).toEqual(plant);
  expect(said).toEqual([]);
});

test("they are worked out and stand side by side after a reload too, with the orders that change sides", async ({
  page,
  request,
}) => {
  test.slow();
  await writtenBoth(request);
  await page.goto("/what-if");
  await page.getByRole("checkbox", { name: "Saturday shift" }).check();
  await page.getByRole("checkbox", { name: "Second set" }).check();
  await button(page, "Work out 2").click();
  await expect(button(page, "Stop and keep what is worked out already")).toBeFocused();
  await expectAccessible(page);
  await expect(comparison(page)).toBeVisible({ timeout: 120_000 });
  await expect(page).toHaveURL(/with=/);
  await page.reload();
  await expect(comparison(page).getByRole("columnheader")).toHaveText([
    "Figure",
    "Plan as it stands",
    /^Without changes/,
    /^Saturday shift/,
    /^Second set/,
  ]);
  await expect(comparison(page).getByRole("row").filter({ hasText: "Late orders" })).toContainText(
    /\d+.*(\(less\)|\(more\)|the same)/,
  );
  for (const name of ["Saturday shift", "Second set"])
    await expect(page.getByRole("region", { name: `Orders that change sides with ${name}` })).toBeVisible();
  await looksRight(page, "compared");
});

test("a scenario is copied, renamed and deleted by hand", async ({ page, request }) => {
  await writtenBoth(request);
  await page.goto("/what-if");
  await button(page, "Copy Saturday shift").click();
  await expect(page.getByRole("checkbox", { name: "Saturday shift (copy)" })).toBeVisible();
  await button(page, "Edit Saturday shift (copy)").click();
  const editor = dialogOf(page, "Edit scenario");
  await editor.getByLabel("Name").fill("Third thought");
  await editor.getByLabel("Add a change").selectOption({ label: "Another setter team" });
  await button(editor, /^Add$/).click();
  await button(editor, "Save").click();
  await expect(editor).toBeHidden();
  const third = scenarios(page).filter({ hasText: "Third thought" });
  await expect(third).toContainText("Extra team sets up beside ");
  await button(page, "Delete Third thought").click();
  await button(page, "Really delete?").click();
  await expect(third).toBeHidden();
  await expect(page.getByRole("heading", { name: "Scenarios" })).toBeFocused();
  expect((await stored(request)).map(({ name }) => name)).not.toContain("Third thought");
});

test("one that is old is worked out again before it is adopted; adopting cautions, leads to the board, and undo takes all back", async ({
  page,
  request,
}) => {
  test.slow();
  const both = await writtenBoth(request);
  const before = await latestPlan(request);
  const plant = await plantOf(request);
  await page.goto(compared(both));
  await workOut(page, 2);

  await button(page, "Edit Second set").click();
  const editor = dialogOf(page, "Edit scenario");
  await button(editor, /^Change: /).click();
  await editor.getByLabel("How many more").fill("2");
  await button(editor, "Save").click();
  await expect(editor).toBeHidden();
  await expect(scenarios(page).filter({ hasText: "Second set" })).toContainText(
    "changed since it was worked out",
  );
  await button(page, "Adopt Second set").click();
  const second = dialogOf(page, "Adopt Second set");
  await expect(second.getByRole("alert")).toContainText("Work it out again before it is adopted.");
  await button(second, "Work it out again").click();
  await expect(second).toBeHidden();
  await expect(
    scenarios(page)
      .filter({ hasText: "Second set" })
      .getByText(/^worked out, /),
  ).toBeVisible({
    timeout: 120_000,
  });

  await button(page, "Adopt Saturday shift").click();
  const dialog = dialogOf(page, "Adopt Saturday shift");
  await expect(dialog).toContainText("Extra shift on ");
  await expect(dialog.getByRole("heading", { name: "Long hours tire people" })).toBeVisible();
  await expect(dialog).toContainText(
    "Undo on the board takes the plan, the plant and the orders back together",
  );
  await looksRight(page, "adopt");
  await button(dialog, /^Adopt$/).click();
  await expect(page.getByRole("application")).toBeVisible();
  await expect(
    page.getByRole("status").filter({ hasText: "Adopted the scenario “Saturday shift”" }),
  ).toBeVisible();
  expect((await plantOf(request)).addedShifts).toHaveLength(plant.addedShifts.length + 1);
  expect((await latestPlan(request)).planId).not.toBe(before.planId);
  await expect(button(page, "Undo")).toHaveAccessibleDescription(/Adopted the scenario “Saturday shift”/);

  await page.keyboard.press("Control+z");
  await expect(page.getByRole("status").filter({ hasText: "Taken back: " })).toBeVisible();
  expect((await latestPlan(request)).document).toEqual(before.document);
  expect(await plantOf(request)).toEqual(plant);
});

/** Brings orders so far forward that some must be late. */
async function tighten(request: APIRequestContext): Promise<void> {
  const { orders } = (await (await request.get(`${plantPath}/orders`)).json()) as OrderBookResponse;
  const { document } = await latestPlan(request);
  const dueAt = new Date(Date.parse(document.horizon.start) + 30 * 3_600_000)
    .toISOString()
    .replace(".000Z", "Z");
  const changes = orders
    .filter(({ earliestStartAt }) => earliestStartAt === null)
    .slice(20, 40)
    .map((order) => {
      const { id, customer, productId, pieces, earliestStartAt, weight, kind } = order;
      const { underTolerance, overTolerance, partsAllowed } = order;
      const terms = {
        ...{ id, customer, productId, pieces, earliestStartAt, weight, kind },
        ...{ underTolerance, overTolerance, partsAllowed },
      };
      return { before: { ...terms, dueAt: order.dueAt }, after: { ...terms, dueAt } };
    });
  const changed = await request.post(`${plantPath}/orders/changes`, { data: { changes } });
  expect(changed.ok(), await changed.text()).toBe(true);
}

test("what would help most is searched for, ranked, and one click makes a scenario of it", async ({
  page,
  request,
}) => {
  test.setTimeout(300_000);
  await tighten(request);
  await page.goto("/what-if");
  await button(page, "Find what would help").click();
  await expect(button(page, "Stop and keep what is worked out already")).toBeFocused();
  await expectAccessible(page);
  const found = page.getByText("these help, the cheapest plan first");
  await expect(found).toBeVisible({ timeout: 200_000 });
  await expect(page).toHaveURL(/help=/);
  await page.reload();
  await expect(found).toBeVisible();
  await looksRight(page, "help");
  const make = button(page, /^Make a scenario of it: /).first();
  const words = ((await make.getAttribute("aria-label")) ?? "").replace(/^Make a scenario of it: /, "");
  await make.click();
  await expect(page.getByText("It stands among the scenarios: ")).toBeVisible();
  await expect(scenarios(page).filter({ hasText: words }).first()).toBeVisible();
});

test("a failed answer says so and can be asked for again", async ({ page }) => {
  await page.route("**/scenarios", (route) => route.abort());
  await page.goto("/what-if");
  const alert = page.getByRole("alert");
  await expect(alert).toContainText("The server did not answer", { timeout: 40_000 });
  await page.unroute("**/scenarios");
  await button(alert, "Try again").click();
  await expect(page.getByRole("heading", { name: "What would help most?" })).toBeVisible();
});
