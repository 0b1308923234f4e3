import type { APIRequestContext, Page } from "@playwright/test";
import { de } from "../../apps/web/src/text/de/de.ts";
import { en } from "../../apps/web/src/text/en/en.ts";
import { expectAccessible } from "./accessible.ts";
import { expect, openPanel, test } from "./app-test.ts";

test.use({ locale: "de-DE" });

interface Screen {
  readonly name: string;
  readonly path: string;
  readonly open?: (page: Page) => Promise<unknown>;
}

const badRows = [
  "order;product;pieces;due;remark",
  "1;no such cup;5;2026-12-04;x",
  "2;no such cup;x;never;x",
].join("\n");

const walk = async (page: Page, ...keys: readonly string[]): Promise<void> => {
  await page.getByRole("application").focus();
  for (const key of keys) await page.keyboard.press(key);
};

const screens: readonly Screen[] = [
  { name: "board", path: "/" },
  { name: "board-late", path: "/?late=1", open: (page) => walk(page, "l", "l") },
  {
    name: "board-change",
    path: "/",
    open: async (page) => {
      const change = page
        .getByRole("complementary")
        .getByRole("heading", { name: new RegExp(`^${de.details.change}`) });
      await walk(page, "ArrowRight");
      for (let step = 0; step < 8 && !(await change.isVisible()); step += 1)
        await page.keyboard.press("ArrowRight");
      await expect(change).toBeVisible();
    },
  },
  { name: "board-carry", path: "/", open: (page) => walk(page, "ArrowRight", "m", "ArrowDown", "ArrowDown") },
  {
    name: "board-table",
    path: "/",
    open: (page) => page.getByRole("button", { name: de.board.asTable }).click(),
  },
  { name: "board-cost", path: "/", open: (page) => page.getByText(de.summary.cost).click() },
  ...(["moulds", "setter teams"] as const).map((rows) => ({
    name: `board-by-${rows}`,
    path: "/",
    open: (page: Page) =>
      page.getByRole("combobox", { name: de.board.rows }).selectOption({ label: de.board.rowChoices[rows] }),
  })),
  { name: "sheets", path: "/sheets" },
  {
    name: "promise",
    path: "/promise?product=C75-60-090+white&pieces=185000&wanted=2026-12-11",
    open: (page) =>
      // whether there is another way hangs on the plan that stands
      expect(page.getByRole("region", { name: de.promise.others })).toHaveAttribute("aria-busy", "false"),
  },
  { name: "promise-many", path: "/promise/many" },
  { name: "load", path: "/load" },
  { name: "what-if", path: "/what-if" },
  {
    name: "what-if-editor",
    path: "/what-if",
    open: (page) => page.getByRole("button", { name: de.whatIf.add }).click(),
  },
  { name: "orders", path: "/orders" },
  {
    name: "order-panel",
    path: "/orders",
    open: (page) => page.locator("tbody .text-button").first().click(),
  },
  {
    name: "import-report",
    path: "/orders",
    open: async (page) => {
      const file = { name: "auftraege.csv", mimeType: "text/csv", buffer: Buffer.from(badRows) };
      await page.getByTestId("import-file").setInputFiles(file);
      await expect(
        page.getByRole("heading", { name: de.imports.reportTitle(["auftraege.csv"]) }),
      ).toBeVisible();
    },
  },
  {
    name: "paste",
    path: "/orders",
    open: (page) => page.getByRole("button", { name: de.imports.paste }).click(),
  },
  {
    name: "rates",
    path: "/plant/rates",
    open: (page) => page.locator(".cell:not(.cell-refused)").nth(5).click(),
  },
  {
    name: "rates-refused",
    path: "/plant/rates",
    open: (page) => page.locator(".cell-refused").first().click(),
  },
  ...["lines", "moulds", "sheets", "products", "calendars", "crews", "changes"].map((section) => ({
    name: `plant-${section}`,
    path: `/plant/${section}`,
  })),
  { name: "not-found", path: "/nowhere" },
];

const sizes = [
  { name: "390", width: 390, height: 844 },
  { name: "1920", width: 1920, height: 1080 },
  { name: "1280", width: 1280, height: 800 },
] as const;

/** Words of at least three letters, in lower case. */
function wordsOf(texts: readonly string[]): ReadonlySet<string> {
  return new Set(texts.flatMap((text) => text.toLowerCase().match(/\p{L}{3,}/gu) ?? []));
}

/** Every text of a catalogue; functions speak with nothing in the gaps, those that need records are passed over. */
function textsOf(value: unknown): readonly string[] {
  if (typeof value === "string") return [value];
  if (typeof value === "function") {
    try {
      return textsOf(
        (value as (...gaps: readonly string[]) => unknown)(...Array<string>(value.length).fill("")),
      );
    } catch {
      return [];
    }
  }
  return typeof value === "object" && value !== null ? Object.values(value).flatMap(textsOf) : [];
}

/** Every text in an answer of the API that a person or a file put there; sentences of the server are left out. */
function dataOf(value: unknown, key = ""): readonly string[] {
  if (["text", "sinceText", "problem", "remedy", "cause"].includes(key)) return [];
  if (typeof value === "string") return [value];
  if (typeof value !== "object" || value === null) return [];
  return Object.entries(value).flatMap(([name, inner]) => dataOf(inner, Array.isArray(value) ? key : name));
}

async function namesInData(request: APIRequestContext): Promise<readonly string[]> {
  const answers = await Promise.all(
    ["", "/orders"].map(async (part): Promise<unknown> => {
      const answer = await request.get(`/api/plants/ellerwade${part}`);
      expect(answer.ok()).toBe(true);
      return answer.json();
    }),
  );
  return [...dataOf(answers), ...badRows.split(/[;\n]/)];
}

/** What a reader sees and what a screen reader says, except of what is marked as another language. */
async function shownTexts(page: Page): Promise<readonly string[]> {
  return page.evaluate(() => {
    const foreign = (element: Element | null): boolean => {
      if (element === null || element.closest("[translate=no]") !== null) return true;
      const marked = element.closest("[lang]")?.getAttribute("lang") ?? "";
      return !marked.startsWith("de");
    };
    const texts: string[] = [];
    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    for (let node = walker.nextNode(); node !== null; node = walker.nextNode()) {
      const parent = node.parentElement;
      if (parent === null || ["SCRIPT", "STYLE"].includes(parent.tagName) || foreign(parent)) continue;
      texts.push(node.textContent ?? "");
    }
    for (const element of document.body.querySelectorAll("[aria-label], [title], [placeholder]"))
      if (!foreign(element))
        for (const name of ["aria-label", "title", "placeholder"])
          texts.push(element.getAttribute(name) ?? "");
    return texts;
  });
}

let english: ReadonlySet<string>;

test.beforeAll(async ({ app, playwright }) => {
  const request = await playwright.request.newContext({ baseURL: app.url });
  const known = wordsOf([...textsOf(de), ...(await namesInData(request))]);
  english = new Set([...wordsOf(textsOf(en))].filter((word) => !known.has(word)));
  await request.dispose();
});

test("the words that only English has are enough to find English by", () => {
  expect(english.size).toBeGreaterThan(400);
  for (const word of ["the", "orders", "board"]) expect(english).toContain(word);
});

for (const screen of screens) {
  test(`${screen.name} speaks German alone, whole at every width`, async ({ page }) => {
    await page.goto(screen.path);
    await page.locator("main h1, main h2").first().waitFor({ state: "attached" });
    await page.evaluate(() => document.fonts.ready);
    await screen.open?.(page);
    await expect(page.locator("html")).toHaveAttribute("lang", "de-DE");
    const texts = await shownTexts(page);
    const left = texts.filter((text) => [...wordsOf([text])].some((word) => english.has(word)));
    expect(left).toEqual([]);
    await expectAccessible(page, "WCAG 2.2 AA");
    for (const { name, width, height } of sizes) {
      await page.setViewportSize({ width, height });
      await page.screenshot({ path: `test-results/screens/german-${screen.name}-${name}.png` });
      const isScrolledSideways = await page.evaluate(
        () => document.documentElement.scrollWidth > window.innerWidth,
      );
      expect(isScrolledSideways, `${name} scrolls sideways`).toBe(false);
    }
  });
}

test("the choice of language outlasts a reload and goes before the browser's wish", async ({ page }) => {
  await page.goto("/orders");
  await expect(page.getByRole("heading", { level: 1, name: de.orders.title })).toBeVisible();
  await expect(page).toHaveTitle(`${de.app.orders} · Formweek`);
  await openPanel(page, de.app.settings);
  await page.getByRole("combobox", { name: de.app.language }).selectOption({ label: "English" });
  await expect(page.getByRole("heading", { level: 1, name: en.orders.title })).toBeVisible();
  await expect(page.locator("html")).toHaveAttribute("lang", "en-GB");
  await page.reload();
  await expect(page.getByRole("heading", { level: 1, name: en.orders.title })).toBeVisible();
  await openPanel(page, en.app.settings);
  await page.getByRole("combobox", { name: en.app.language }).selectOption({ label: "Deutsch" });
  await expect(page.getByRole("heading", { level: 1, name: de.orders.title })).toBeVisible();
});

test("a refusal of the server is worded in German", async ({ page }) => {
  await page.route("**/api/plants/*/orders", (route) =>
    route.fulfill({
      status: 403,
      contentType: "application/problem+json",
      json: {
        type: "urn:formweek:problem:forbidden",
        title: "Your role does not allow this.",
        status: 403,
        detail: "It takes another role.",
        instance: "/api",
        code: "forbidden",
        cause: "It takes another role.",
        remedy: "Ask.",
        faults: [],
      },
    }),
  );
  await page.goto("/orders");
  const alert = page.getByRole("alert");
  await expect(alert).toContainText("Die eigene Rolle erlaubt das nicht.");
  await expect(alert).not.toContainText("role");
});
