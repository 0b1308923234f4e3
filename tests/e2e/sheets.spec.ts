import type { Page } from "@playwright/test";
import type { PlanDocument } from "@formweek/contracts";
import { expectAccessible } from "./accessible.ts";
import { expect, openPanel, test } from "./app-test.ts";

const sheets = (page: Page) => page.getByRole("article");
const paperWidthPx = { A4: 210 / 25.4, Letter: 8.5 } as const;
const marginsInches = 20 / 25.4;

async function answerWithPlan(page: Page, change: (document: PlanDocument) => PlanDocument): Promise<void> {
  await page.route("**/plans/latest", async (route) => {
    const answer = await route.fetch();
    const plan = (await answer.json()) as { document: PlanDocument };
    await route.fulfill({ response: answer, json: { ...plan, document: change(plan.document) } });
  });
}

test("the board leads to sheets that say what each line does, and they print", async ({ page, request }) => {
  const answer = await request.get("/api/plants/ellerwade/plans/latest");
  const { document } = (await answer.json()) as { document: PlanDocument };
  await page.goto("/");
  await openPanel(page, "Take away");
  await page.getByRole("link", { name: "Print sheets" }).click();
  await expect(page).toHaveTitle("Print sheets · Formweek");
  await expect(sheets(page).first()).toBeVisible();
  const shown = await sheets(page).count();
  expect(shown).toBeGreaterThan(1);
  await expectAccessible(page);

  for (const format of ["A4", "Letter"] as const) {
    const pdf = await page.pdf({ format });
    expect(pdf.subarray(0, 5).toString()).toBe("%PDF-");
    const pages = pdf.toString("latin1").match(/\/Type \/Page\b/g)?.length ?? 0;
    expect(pages, "each sheet begins a page").toBeGreaterThanOrEqual(shown);
  }

  const first = document.segments.find((segment) => segment.kind === "run");
  const line = document.lines.find(({ id }) => id === first?.lineId);
  await page.getByRole("combobox", { name: "Line" }).selectOption(line?.name ?? "");
  await expect(sheets(page)).toHaveCount(1);
  const sheet = sheets(page).first();
  await expect(sheet.getByRole("heading", { name: `${line?.name} · Ellerwade Packaging` })).toBeVisible();
  await expect(sheet.getByText(/^Plan made /).first()).toBeVisible();
  const row = sheet
    .getByRole("row")
    .filter({ hasText: first?.orderId ?? "" })
    .first();
  await expect(row).toContainText(first?.productName ?? "");
  await expect(row).toContainText(first?.sheetName ?? "");
  await expect(row).toContainText(first?.mouldName ?? "");
  await expect(row).toContainText(/\d\d:\d\d/);
  await expect(sheet.getByRole("row", { name: /Change, .*setters: / }).first()).toBeVisible();
  const change = document.segments.find(
    (segment) => segment.kind === "change" && segment.lineId === line?.id,
  );
  const tasks = change?.kind === "change" ? change.tasks : [];
  expect(tasks.length).toBeGreaterThan(0);
  for (const { name } of tasks) await expect(sheet).toContainText(name);
  await expect(sheet.getByText("Common practice, no source", { exact: false })).toBeVisible();
  await page.reload();
  await expect(sheets(page)).toHaveCount(1);
});

test("paper shows the whole sheet black on white, in the dark too, and nothing of the app", async ({
  page,
}) => {
  await page.emulateMedia({ media: "print", colorScheme: "dark" });
  for (const [format, inches] of Object.entries(paperWidthPx)) {
    await page.setViewportSize({ width: Math.floor((inches - marginsInches) * 96), height: 1000 });
    await page.goto("/sheets");
    await expect(sheets(page).first()).toBeVisible();
    await expect(page.getByRole("navigation")).toBeHidden();
    await expect(page.getByRole("button", { name: "Print" })).toBeHidden();
    const look = await page.evaluate(() => {
      const tables = [...document.querySelectorAll(".sheet-table")];
      const heads = [...document.querySelectorAll(".sheet-table thead")];
      const { color, backgroundColor } = getComputedStyle(document.documentElement);
      return {
        color,
        backgroundColor,
        cut: tables.filter((table) => table.getBoundingClientRect().right > window.innerWidth).length,
        heads: heads.filter((head) => getComputedStyle(head).display === "table-header-group").length,
        tables: tables.length,
      };
    });
    expect(look, format).toEqual({
      color: "rgb(0, 0, 0)",
      backgroundColor: "rgb(255, 255, 255)",
      cut: 0,
      heads: look.tables,
      tables: look.tables,
    });
  }
});

test("a late order is late in words, and a run over Sunday night is on both weeks' sheets", async ({
  page,
}) => {
  await answerWithPlan(page, (document) => ({
    ...document,
    segments: document.segments
      .filter((segment) => segment.kind === "run")
      .slice(0, 1)
      .map((run) => ({
        ...run,
        start: "2026-12-06T20:00:00Z",
        end: "2026-12-07T08:00:00Z",
        lateSeconds: 19_200,
      })),
  }));
  await page.goto("/sheets?week=2026-W49");
  await expect(page.getByText("5 h 20 late")).toBeVisible();
  await expect(page.getByText(/goes on in a later week/)).toBeVisible();
  await page.getByRole("combobox", { name: "Week" }).selectOption("2026-W50");
  await expect(page.getByText(/began in an earlier week/)).toBeVisible();
  await expect(page.getByText("of the whole run")).toBeVisible();
});

test("sheets without content say why and lead on", async ({ page }) => {
  await page.goto("/sheets?line=L99");
  await expect(page.getByRole("heading", { name: "This plan has no line “L99”" })).toBeVisible();
  await page.goto("/sheets?week=soon");
  await expect(page.getByRole("heading", { name: "This plan has no week “soon”" })).toBeVisible();
  await expectAccessible(page);

  let lineId = "";
  await answerWithPlan(page, (document) => {
    lineId = document.lines[0]?.id ?? "";
    return { ...document, segments: document.segments.filter((segment) => segment.lineId !== lineId) };
  });
  await page.goto("/sheets");
  await expect(page.getByText(/^No sheet, because nothing is planned: /)).toBeVisible();
  await page.goto(`/sheets?line=${lineId}`);
  await expect(page.getByRole("heading", { name: /^Nothing is planned for / })).toBeVisible();
  await expectAccessible(page);

  await page.unroute("**/plans/latest");
  await answerWithPlan(page, (document) => ({ ...document, segments: [] }));
  await page.goto("/sheets");
  await expect(page.getByRole("heading", { name: "Nothing runs in this plan" })).toBeVisible();

  await page.unroute("**/plans/latest");
  await page.route("**/plans/latest", (route) => route.fulfill({ status: 404, json: {} }));
  await page.goto("/sheets");
  await expect(page.getByRole("heading", { name: "There is no plan yet" })).toBeVisible();
  await page.getByRole("link", { name: "Go to the board" }).click();
  await expect(page).toHaveURL(/\/$/);
});
