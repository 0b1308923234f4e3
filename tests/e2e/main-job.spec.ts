import { readFile } from "node:fs/promises";
import { expect, howToPlan, openPanel, test } from "./app-test.ts";

const header = "order;customer;product;pieces;due date";

/** A CSV file as the page's file picker takes it. */
function csv(name: string, rows: readonly string[]) {
  return { name, mimeType: "text/csv", buffer: Buffer.from([header, ...rows].join("\r\n"), "utf8") };
}

test.describe.serial("the week's orders in, a checked schedule out", () => {
  let product = "";

  test("the demo's week is on the board", async ({ page, request }) => {
    await page.goto("/");
    await expect(page.getByRole("application")).toBeVisible();
    const summary = page.getByRole("region", { name: "Plan in short" });
    await expect(summary.getByText("orders on time")).toBeVisible();
    await expect(summary.getByText("of working time runs")).toBeVisible();
    const { plant } = (await (await request.get("/api/plants/ellerwade")).json()) as {
      plant: { products: { id: string }[] };
    };
    product = plant.products[0]?.id ?? "";
    expect(product).not.toBe("");
  });

  test("a file with bad rows is reported row by row and changes nothing", async ({ page, request }) => {
    const before: unknown = await (await request.get("/api/plants/ellerwade/orders")).json();
    await page.goto("/orders");
    await page
      .getByTestId("import-file")
      .setInputFiles(
        csv("bad week.csv", [
          `90001;Alder Foods;${product};120000;2026-12-04`,
          `90002;Alder Foods;no such cup;120000;2026-12-04`,
          `90003;Birch Dairy;${product};a lot;2026-12-04`,
          `90004;Birch Dairy;${product};50000;31.02.2026`,
        ]),
      );
    await expect(page.getByRole("heading", { name: "Checked: bad week.csv" })).toBeFocused();
    await expect(page.getByText("Nothing has changed yet.")).toBeVisible();
    const faults = page.getByRole("region", { name: "Rows with something wrong" });
    for (const value of ["no such cup", "a lot", "31.02.2026"]) {
      await expect(faults.getByText(value, { exact: true })).toBeVisible();
    }
    await page.getByRole("button", { name: "Leave everything as it is" }).click();
    await expect(page.getByRole("heading", { name: "Order book" })).toBeVisible();
    expect(await (await request.get("/api/plants/ellerwade/orders")).json()).toEqual(before);
  });

  test("a good file is accepted and the book shows its orders", async ({ page }) => {
    await page.goto("/orders");
    await page
      .getByTestId("import-file")
      .setInputFiles(
        csv("good week.csv", [
          `90001;Alder Foods;${product};120000;2026-12-04`,
          `90002;Birch Dairy;${product};90000;2026-12-05`,
        ]),
      );
    await expect(page.getByText("Every row can be read.")).toBeVisible();
    await page.getByRole("button", { name: /^Accept 2/ }).click();
    await expect(page.getByText("Accepted: 2 new, 0 changed.")).toBeVisible();
    await page.getByRole("searchbox", { name: "Find orders" }).fill("90001");
    await expect(page.getByRole("row", { name: /90001.*Alder Foods.*not planned yet/ })).toBeVisible();
  });

  test("the same file again has nothing new", async ({ page }) => {
    await page.goto("/orders");
    await page
      .getByTestId("import-file")
      .setInputFiles(
        csv("good week.csv", [
          `90001;Alder Foods;${product};120000;2026-12-04`,
          `90002;Birch Dairy;${product};90000;2026-12-05`,
        ]),
      );
    const unchanged = page.locator(".report-counts .figure", { hasText: "as before" });
    await expect(unchanged.getByText("2", { exact: true })).toBeVisible();
    await page.getByRole("button", { name: "Leave everything as it is" }).click();
  });

  test("rows pasted from a spreadsheet are checked too", async ({ page }) => {
    await page.goto("/orders");
    await page.getByRole("button", { name: "Paste rows…" }).click();
    await page
      .getByRole("textbox", { name: "Rows with header" })
      .fill(`order\tcustomer\tproduct\tpieces\tdue date\n90009\tCedar Ices\t${product}\t40000\t2026-12-05`);
    await page.getByRole("button", { name: "Check these rows" }).click();
    await expect(page.getByRole("heading", { name: "Checked: pasted.csv" })).toBeVisible();
    await page.getByRole("button", { name: "Leave everything as it is" }).click();
  });

  test("planning shows its progress, survives a reload, stops and keeps the best", async ({
    page,
    request,
  }) => {
    const latest = async (): Promise<string> =>
      ((await (await request.get("/api/plants/ellerwade/plans/latest")).json()) as { planId: string }).planId;
    const before = await latest();
    await page.goto("/");
    await expect(page.getByText("new or changed since this plan")).toBeVisible();
    await openPanel(page, howToPlan);
    await page.getByRole("combobox", { name: "Think for" }).selectOption("60");
    await page.getByRole("button", { name: "Plan again" }).click();
    await expect(page.getByRole("progressbar", { name: "Planning…" })).toBeVisible();
    await expect(page.getByText(/Best so far/)).toBeVisible();
    await page.reload();
    await expect(page.getByText(/Best so far/)).toBeVisible();
    await page.getByRole("button", { name: "Stop and keep the best plan so far" }).click();
    await expect(page.getByText("Stopped. The best plan so far is on the board.")).toBeVisible({
      timeout: 30_000,
    });
    await expect(page.getByText("new or changed since this plan")).toBeHidden();
    expect(await latest()).not.toBe(before);
    await page.getByRole("button", { name: "Table" }).click();
    await page.getByRole("searchbox", { name: "Find on the board" }).fill("90002");
    await expect(page.getByText("1 order found")).toBeVisible();
  });

  test("an order is followed from the book to the board and told about", async ({ page }) => {
    await page.goto("/orders?state=on+time");
    const first = page.locator("tbody .text-button").first();
    const orderId = await first.innerText();
    await first.click();
    const panel = page.getByRole("complementary", { name: `Order ${orderId}` });
    await panel.getByRole("link", { name: "Show on the board" }).click();
    const details = page.getByRole("complementary", { name: "Details" });
    await expect(details.getByRole("heading", { name: `Order ${orderId}` })).toBeVisible();
  });

  test("exports come as files", async ({ page }) => {
    await page.goto("/orders");
    await openPanel(page, "Take away");
    const [download] = await Promise.all([
      page.waitForEvent("download"),
      page.getByRole("link", { name: "Export CSV" }).click(),
    ]);
    expect(download.suggestedFilename()).toMatch(/\.csv$/);
  });

  for (const [path, link, name] of [
    ["/", "Plan as CSV", /^ellerwade-plan-\d{4}-\d\d-\d\d-\d{4}\.csv$/],
    ["/", "Plan as XLSX", /^ellerwade-plan-\d{4}-\d\d-\d\d-\d{4}\.xlsx$/],
    ["/orders", "With states, CSV", /^ellerwade-order-book-\d{4}-\d\d-\d\d\.csv$/],
    ["/orders", "With states, XLSX", /^ellerwade-order-book-\d{4}-\d\d-\d\d\.xlsx$/],
  ] as const) {
    test(`"${link}" saves a table of the planned orders`, async ({ page, request }) => {
      await page.goto(path);
      await openPanel(page, "Take away");
      const saved = page.waitForEvent("download");
      await page.getByRole("link", { name: link }).click();
      const download = await saved;
      expect(download.suggestedFilename()).toMatch(name);
      const bytes = await readFile(await download.path());
      const format = link.endsWith("CSV") ? "csv" : "xlsx";
      const table = path === "/" ? "plans/latest/table" : "orders/table";
      const served = await request.get(`/api/plants/ellerwade/${table}?format=${format}`);
      expect(bytes.length).toBeGreaterThan(1000);
      if (format === "csv") expect(bytes.toString("utf8")).toBe(await served.text());
      else expect(bytes.subarray(0, 4).toString("latin1")).toBe("PK\u0003\u0004");
    });
  }
});
