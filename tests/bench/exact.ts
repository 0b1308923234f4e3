import { writeFileSync } from "node:fs";
import { plantSeeds, solveSmallPlant, type SmallPlantResult } from "../fixtures/exact/small-plants.ts";
import { runBench, type BenchOptions } from "./run-bench.ts";

const usage = `npm run bench:exact -- [--plants <how many, 50>] [--steps <of the engine, 100000: a third of a second>] [--seed <of the engine, 1>] [--out <file.json>]
  plants of five to eight orders on two or three lines: the engine against a proof, and the bound against both`;

function wholeNumber(text: string | undefined, fallback: number): number {
  const value = text === undefined ? fallback : Number(text);
  if (!Number.isSafeInteger(value) || value < 1) throw new Error(usage);
  return value;
}

const percent = (share: number): string => `${(100 * share).toFixed(1)} %`;

function printRow(cells: readonly string[]): void {
  console.log(cells.map((cell) => cell.padStart(10)).join(""));
}

const optionNames = ["plants", "steps", "seed", "out"] as const;

function main(values: BenchOptions<(typeof optionNames)[number]>): void {
  const [plants, steps] = [wholeNumber(values.plants, 50), wholeNumber(values.steps, 100_000)];
  const seed = wholeNumber(values.seed, 1);
  printRow(["plant", "lines", "orders", "engine", "exact", "above", "bound", "gap", "nodes"]);
  const rows: SmallPlantResult[] = [];
  for (const plant of plantSeeds(plants)) {
    const row = solveSmallPlant(plant, { steps, seed });
    rows.push(row);
    const { lines, orders, engine, exact, bound, gap, nodes, isBest } = row;
    printRow([
      ...[plant, lines, orders].map(String),
      engine.toFixed(2),
      exact.toFixed(2),
      isBest ? "-" : percent((engine - exact) / exact),
      bound.toFixed(2),
      percent(gap),
      String(nodes),
    ]);
  }
  const best = rows.filter(({ isBest }) => isBest).length;
  const meanGap = rows.reduce((sum, { gap }) => sum + gap, 0) / rows.length;
  console.log(
    `The engine's plan is a best one in ${best} of ${plants} (${steps} steps, seed ${seed}); mean gap of the bound ${percent(meanGap)}`,
  );
  if (values.out !== undefined)
    writeFileSync(values.out, `${JSON.stringify({ steps, seed, rows }, null, 1)}\n`);
}

await runBench(usage, optionNames, main);
