import { readFile } from "node:fs/promises";
import type { PlanDocument } from "@formweek/contracts";
import type { Page } from "@playwright/test";
import { expect, openPanel, test } from "./app-test.ts";
import { latestPlan } from "../helpers/board-places.ts";

/** What is saved when a button of the opened dialog is pressed. */
async function saved(page: Page, button: string): Promise<{ readonly name: string; readonly bytes: Buffer }> {
  const download = page.waitForEvent("download");
  await page.getByRole("dialog").getByRole("button", { name: button }).press("Enter");
  const file = await download;
  const bytes = await readFile(await file.path());
  await expect(page.getByRole("dialog")).toBeHidden();
  return { name: file.suggestedFilename(), bytes };
}

interface ReadSvg {
  readonly faults: number;
  readonly title: string;
  readonly description: string;
  readonly language: string | null;
  readonly words: readonly string[];
  readonly parts: readonly string[];
}

/** An SVG as the browser's own XML reader finds it. */
function readSvg(page: Page, source: string): Promise<ReadSvg> {
  return page.evaluate((xml) => {
    const svg = new DOMParser().parseFromString(xml, "image/svg+xml");
    const texts = (selector: string): string[] =>
      [...svg.querySelectorAll(selector)].map((element) => element.textContent);
    return {
      faults: svg.querySelectorAll("parsererror").length,
      title: texts("svg > title")[0] ?? "",
      description: texts("svg > desc")[0] ?? "",
      language: svg.documentElement.getAttribute("xml:lang"),
      words: texts("text"),
      parts: texts("g > title"),
    };
  }, source);
}

const runsOf = ({ segments }: PlanDocument) => segments.filter(({ kind }) => kind === "run");

test("the whole plan is saved as SVG by keyboard: titled, with real words, each run once", async ({
  page,
  request,
}) => {
  const { document } = await latestPlan(request);
  await page.emulateMedia({ colorScheme: "dark" });
  await page.goto("/");
  await openPanel(page, "Take away");
  await page.getByRole("button", { name: "Board as picture…" }).press("Enter");
  await page.getByRole("radio", { name: "All rows of the whole plan" }).press("Space");
  const { name, bytes } = await saved(page, "Save as SVG");
  expect(name).toBe(`ellerwade-board-${document.horizon.start.slice(0, 10)}.svg`);
  const svg = await readSvg(page, bytes.toString("utf8"));
  expect(svg.faults).toBe(0);
  expect(svg.title).toBe("Ellerwade Packaging: line board");
  expect(svg.description).toContain("Plan of ");
  expect(svg.description).toContain(`of ${document.summary.orders} orders late`);
  expect(svg.description).toContain(document.plant.timeZone);
  expect(svg.language).toMatch(/^en\b/);
  expect(svg.words).toEqual(expect.arrayContaining([svg.title, ...document.lines.map((line) => line.name)]));
  const runs = svg.parts.filter((part) => /: Order /.test(part));
  expect(runs.length).toBe(runsOf(document).length);
  expect(new Set(runs).size).toBe(runs.length);
  // light paper, though the screen is dark
  expect(bytes.toString("utf8")).toContain('fill="#fffefb"');
});

test("what is in sight is saved as PNG with two dots a pixel; Escape saves nothing", async ({ page }) => {
  await page.goto("/");
  await openPanel(page, "Take away");
  const open = page.getByRole("button", { name: "Board as picture…" });
  await open.click();
  await expect(page.getByRole("dialog")).toBeVisible();
  await page.keyboard.press("Escape");
  await expect(page.getByRole("dialog")).toBeHidden();
  await expect(open).toBeFocused();
  await open.click();
  const { name, bytes } = await saved(page, "Save as PNG");
  expect(name).toMatch(/^ellerwade-board-\d{4}-\d{2}-\d{2}\.png$/);
  // PNG (second edition), section 11.2.2: width and height begin the first chunk's data
  const board = await page.getByRole("application").boundingBox();
  expect(bytes.subarray(1, 4).toString("latin1")).toBe("PNG");
  expect(bytes.readUInt32BE(16)).toBe(2 * Math.round(board?.width ?? 0));
  expect(bytes.readUInt32BE(20)).toBeGreaterThan(2 * ((board?.height ?? 0) - 80));
});
