import { readFileSync, writeFileSync } from "node:fs";
import { demoOrders, demoPlant, generatePlant } from "@formweek/demo-plant";
import { measureCancels } from "./plans/cancel-latency.ts";
import { FigureSheet, type Figure } from "./plans/figure.ts";
import { measureImport } from "./plans/import-speed.ts";
import { isBuilt } from "./plans/planner-server.ts";
import { measurePlanning } from "./plans/planning-curve.ts";
import { measureStart } from "./plans/start-up.ts";
import { measureSuddenEnds } from "./plans/sudden-ends.ts";
import { runBench, type BenchOptions } from "./run-bench.ts";

interface Part {
  readonly name: string;
  /** Runs the built server, as `npm start` does. */
  readonly needsBuild: boolean;
  readonly measure: (sheet: FigureSheet, seconds: number) => Promise<void> | void;
}

const parts: readonly Part[] = [
  {
    name: "demo",
    needsBuild: false,
    measure: (sheet, seconds) =>
      measurePlanning(
        { name: "demo, full week", plant: demoPlant("full"), orders: demoOrders("full") },
        seconds,
        sheet,
      ),
  },
  { name: "medium", needsBuild: false, measure: generated(10, 200) },
  { name: "large", needsBuild: false, measure: generated(40, 2000) },
  { name: "cancel", needsBuild: false, measure: measureCancels },
  { name: "start", needsBuild: true, measure: measureStart },
  { name: "import", needsBuild: true, measure: measureImport },
  { name: "ends", needsBuild: true, measure: measureSuddenEnds },
];

/** Planning of a generated plant, always the same one. */
function generated(lines: number, orders: number): Part["measure"] {
  return (sheet, seconds) => {
    const name = `generated, ${orders} orders × ${lines} lines`;
    return measurePlanning({ name, ...generatePlant({ lines, orders, seed: 1 }) }, seconds, sheet);
  };
}

const usage = `npm run bench:plans -- [--out <file.json>] [--only <part,part>] [--seconds <of search, 60>] [--reference <earlier file.json>]
  part: ${parts.map((part) => part.name).join(", ")}; start, import and ends run the built server: npm run build first`;

const optionNames = ["out", "only", "seconds", "reference"] as const;

async function main(values: BenchOptions<(typeof optionNames)[number]>): Promise<void> {
  const wanted = values.only?.split(",") ?? parts.map((part) => part.name);
  const unknown = wanted.filter((name) => !parts.some((part) => part.name === name));
  const seconds = Number(values.seconds ?? 60);
  if (unknown.length > 0) throw new Error(`--only: there is no part "${unknown.join('", "')}".\n${usage}`);
  if (!(seconds > 0)) throw new Error(`--seconds: "${values.seconds}" is not a number above 0.\n${usage}`);
  const chosen = parts.filter((part) => wanted.includes(part.name));
  if (!isBuilt() && chosen.some((part) => part.needsBuild))
    throw new Error(`The server is not built.\n${usage}`);
  const reference =
    values.reference === undefined
      ? []
      : (JSON.parse(readFileSync(values.reference, "utf8")) as { readonly figures: readonly Figure[] })
          .figures;
  const sheet = new FigureSheet(reference);
  for (const part of chosen) await part.measure(sheet, seconds);
  if (values.out === undefined) return;
  writeFileSync(values.out, `${JSON.stringify({ seconds, figures: sheet.figures }, null, 1)}\n`);
}

await runBench(usage, optionNames, main);
