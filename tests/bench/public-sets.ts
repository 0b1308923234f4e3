import { readFileSync, readdirSync, writeFileSync } from "node:fs";
import { availableParallelism } from "node:os";
import { join } from "node:path";
import { performance } from "node:perf_hooks";
import type { Sequence } from "../fixtures/public-sets/bench-instance.ts";
import { solveInstanceInThreads, solveInstance } from "./bench-solve.ts";
import { setReaders } from "../fixtures/public-sets/instance-formats.ts";
import { runBench, type BenchOptions } from "./run-bench.ts";

const usage = `npm run bench -- --set <name> --data <folder> --seconds <per instance> --threads <n> --seed <n> --out <file.json>
  [--instances <name,name>] [--clock wall|cpu]
  name: ${Object.keys(setReaders).join(", ")}
  folder: holds instances/ and best-known.csv
  threads: a portfolio of that many searches, each in its thread, which exchange their best plans
  clock: cpu measures the budget in processor time, for a machine with other work; one thread only`;

interface Row {
  readonly instance: string;
  readonly objective: number;
  /** Null where the table has no value. */
  readonly bestKnown: number | null;
  /** (objective - best known) / best known; where the best known is 0, the objective itself. */
  readonly gap: number | null;
  readonly seconds: number;
  readonly sequence: Sequence;
}

function bestKnownValues(folder: string): Map<string, number> {
  const [, ...lines] = readFileSync(join(folder, "best-known.csv"), "utf8").trim().split(/\r?\n/);
  return new Map(lines.map((line) => [line.split(",")[0] ?? "", Number(line.split(",")[1])]));
}

function gapOf(objective: number, bestKnown: number | null): number | null {
  return bestKnown === null ? null : (objective - bestKnown) / Math.max(1, bestKnown);
}

function percent(share: number | null): string {
  return share === null ? "-" : `${(100 * share).toFixed(3)} %`;
}

function printRow(cells: readonly string[]): void {
  const widths = [28, 12, 12, 12, 9, 14];
  console.log(
    cells.map((cell, index) => (index === 0 ? cell.padEnd(28) : cell.padStart(widths[index] ?? 12))).join(""),
  );
}

function wholeNumber(text: string | undefined, fallback: number): number {
  const value = text === undefined ? fallback : Number(text);
  if (!Number.isSafeInteger(value) || value < 0)
    throw new Error(`"${text}" is not a whole number.\n${usage}`);
  return value;
}

/** The instances asked for, in the order of those that there are; all of them unless some are named. */
function wantedOf(text: string | undefined, present: readonly string[]): readonly string[] {
  if (text === undefined) return present;
  const names = text.split(",");
  const unknown = names.filter((name) => !present.includes(name));
  if (unknown.length === 0) return present.filter((name) => names.includes(name));
  const named = unknown.map((name) => `"${name}"`).join(", ");
  throw new Error(`--instances: there is no ${named}. There are: ${present.join(", ")}.`);
}

const optionNames = ["set", "data", "seconds", "threads", "seed", "out", "instances", "clock"] as const;

async function main(values: BenchOptions<(typeof optionNames)[number]>): Promise<void> {
  const read = setReaders[values.set ?? ""];
  if (values.set === undefined || values.data === undefined || read === undefined) throw new Error(usage);
  const seconds = Number(values.seconds ?? 10);
  if (!(seconds > 0)) throw new Error(`"${values.seconds}" is not a number of seconds.\n${usage}`);
  const threads = Math.max(1, wholeNumber(values.threads, availableParallelism()));
  const seed = wholeNumber(values.seed, 1);
  const clock = values.clock ?? "wall";
  if (clock !== "wall" && (clock !== "cpu" || threads > 1)) throw new Error(usage);
  const bestKnown = bestKnownValues(values.data);
  const present = readdirSync(join(values.data, "instances"));
  const listed = [...bestKnown.keys()].filter((name) => present.includes(name));
  const others = present.filter((name) => !bestKnown.has(name));
  const wanted = wantedOf(values.instances, [...listed, ...others]);
  const rows: Row[] = [];
  printRow(["instance", "objective", "best known", "gap", "seconds", "moves/s"]);
  for (const instanceName of wanted) {
    const instance = read(readFileSync(join(values.data, "instances", instanceName), "utf8"));
    const startedMs = performance.now();
    const params = { seed, maxSteps: null, maxMs: seconds * 1000 };
    const best =
      threads === 1
        ? solveInstance(instance, params, clock)
        : await solveInstanceInThreads(instance, params, threads);
    const took = (performance.now() - startedMs) / 1000;
    const moves = (1000 * best.statistics.evaluations) / best.statistics.elapsedMs;
    const known = bestKnown.get(instanceName) ?? null;
    const gap = gapOf(best.objective, known);
    rows.push({
      instance: instanceName,
      objective: best.objective,
      bestKnown: known,
      gap,
      seconds: took,
      sequence: best.sequence,
    });
    printRow([
      instanceName,
      `${best.objective}`,
      `${known ?? "-"}`,
      percent(gap),
      took.toFixed(1),
      Math.round(moves).toString(),
    ]);
  }
  const gaps = rows.flatMap((row) => (row.gap === null ? [] : [row.gap]));
  const mean = gaps.length === 0 ? null : gaps.reduce((sum, gap) => sum + gap, 0) / gaps.length;
  const reached = rows.filter((row) => row.bestKnown !== null && row.objective <= row.bestKnown).length;
  console.log(
    `mean gap ${percent(mean)}; best known value reached on ${reached} of ${gaps.length} instances`,
  );
  if (values.out === undefined) return;
  const report = { set: values.set, seconds, threads, seed, rows };
  writeFileSync(values.out, `${JSON.stringify(report, null, 1)}\n`);
}

await runBench(usage, optionNames, main);
