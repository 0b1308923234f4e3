import { writeFileSync } from "node:fs";
import { measureDrag } from "./board/drag.ts";
import { measureFrames } from "./board/frames.ts";
import { openBrowser, type BenchBrowser } from "../services/open-browser.ts";
import { measureScripts } from "./board/script-size.ts";
import { measureStart } from "./board/start.ts";
import { measureSteps } from "./board/steps.ts";
import { FigureSheet } from "./plans/figure.ts";
import { isBuilt } from "./plans/planner-server.ts";
import { runBench, type BenchOptions } from "./run-bench.ts";

type Part = (sheet: FigureSheet, browser: BenchBrowser, runs: readonly number[]) => Promise<void> | void;

const parts: Readonly<Record<string, Part>> = {
  scripts: measureScripts,
  start: measureStart,
  frames: async (sheet, browser, runs) => {
    for (const count of runs) await measureFrames(sheet, browser, count);
  },
  drag: measureDrag,
  steps: measureSteps,
};
const partNames = Object.keys(parts);

const usage = `npm run bench:board -- [--runs <runs on the board, 500,2000,10000>] [--only <part,part>] [--out <file.json>]
  part: ${partNames.join(", ")}
  scripts: gzipped size. start: first paint and ready time on the demo. frames: panning and zooming boards of so many runs.
  drag: from the pointer to what a move comes to, 2,000 orders on 40 lines. steps: 30 mixed edits, taken back and done again.
  Opens the built app in Chromium: npm run build first.`;

const optionNames = ["runs", "only", "out"] as const;

async function main(values: BenchOptions<(typeof optionNames)[number]>): Promise<void> {
  const runs = (values.runs ?? "500,2000,10000").split(",").map(Number);
  if (!runs.every((count) => Number.isSafeInteger(count) && count >= 1 && count <= 100_000))
    throw new Error(`--runs: "${values.runs}" is not a list of whole numbers from 1 to 100000.\n${usage}`);
  const wanted = values.only?.split(",") ?? partNames;
  const unknown = wanted.filter((name) => parts[name] === undefined);
  if (unknown.length > 0) throw new Error(`--only: there is no part "${unknown.join('", "')}".\n${usage}`);
  if (!isBuilt()) throw new Error(`The app is not built.\n${usage}`);
  const sheet = new FigureSheet([]);
  const browser = await openBrowser();
  try {
    for (const name of wanted) await parts[name]?.(sheet, browser, runs);
  } finally {
    await browser.close();
  }
  if (values.out !== undefined)
    writeFileSync(values.out, `${JSON.stringify({ runs, figures: sheet.figures }, null, 1)}\n`);
}

await runBench(usage, optionNames, main);
