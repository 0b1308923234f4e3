import { previewOrders, previewPlant } from "@formweek/application";
import type { ImportFault, ImportOutcome, Table } from "@formweek/application";
import type { Order, Plant } from "@formweek/capacity-model";
import type { OfflinePorts } from "@formweek/composition";
import { DEMO_WEEKS, demoOrders, demoPlant } from "@formweek/demo-plant";
import type { DemoWeek } from "@formweek/demo-plant";
import { existsSync, readdirSync, readFileSync, statSync } from "node:fs";
import { basename, join } from "node:path";
import type { Flags, FlagSpecs } from "./flags.ts";
import { UsageError } from "./outcome.ts";
import type { Output } from "./outcome.ts";

/** Flags that say which plant and orders a command works on. */
export const PLANT_FLAGS: FlagSpecs = {
  demo: { value: "calm|full|breakdown", meaning: "the demo plant with one of its order weeks" },
  plant: {
    value: "<folder or file>",
    meaning: "plant data: a workbook, or a folder of CSV files named after their tables",
  },
};
export const ORDER_FLAGS: FlagSpecs = {
  orders: { value: "<file>", meaning: "orders, .csv or .xlsx" },
  "skip-bad-rows": { value: null, meaning: "go on without the order rows that are bad" },
};

const LIMITS = {
  maxFileBytes: 64 * 1024 * 1024,
  maxUnpackedBytes: 512 * 1024 * 1024,
  maxRowsPerTable: 200_000,
  maxColumns: 300,
  maxTables: 60,
  maxCellCharacters: 10_000,
};

/** The demo's plant, or the one in the files; null after its faults were listed. */
export async function loadPlant(flags: Flags, ports: OfflinePorts, output: Output): Promise<Plant | null> {
  const demo = flags.get("demo");
  const path = flags.get("plant");
  if (demo !== undefined && path !== undefined)
    throw new UsageError("--demo and --plant were both given.", "Give one of them.");
  if (demo !== undefined) return demoPlant(demoWeek(demo));
  if (path === undefined)
    throw new UsageError("No plant was named.", "Add --demo full, or --plant with a folder or file.");
  const tables = await readTables(plantFiles(path), ports, output);
  if (tables === null) return null;
  const outcome = previewPlant({ tables, stored: null, plantId: null });
  listFaults(outcome, output);
  return outcome.change?.kind === "plant" ? outcome.change.plant : null;
}

/** The demo's orders, or those in the file; null after its faults were listed. */
export async function loadOrders(
  flags: Flags,
  plant: Plant,
  { ports, output }: { readonly ports: OfflinePorts; readonly output: Output },
): Promise<readonly Order[] | null> {
  const demo = flags.get("demo");
  const path = flags.get("orders");
  if (path === undefined) {
    if (demo !== undefined) return demoOrders(demoWeek(demo));
    throw new UsageError("No orders were named.", "Add --orders with a .csv or .xlsx file.");
  }
  const tables = await readTables([path], ports, output);
  if (tables === null) return null;
  const outcome = previewOrders({ tables, plant, stored: [], now: ports.clock.now() });
  listFaults(outcome, output);
  for (const { orderId, row, reasons } of outcome.cannotBePlanned) {
    output.warn(
      `order ${orderId}${row === null ? "" : ` (row ${row})`} cannot be planned: ${reasons.map(({ text }) => text).join(" ")}`,
    );
  }
  const refused = outcome.faults.some(({ severity }) => severity === "error");
  if (refused && !flags.has("skip-bad-rows")) {
    output.warn(
      outcome.bad === 0
        ? "Nothing was planned. Correct the file."
        : `${outcome.bad} bad rows; nothing was planned. Correct them, or add --skip-bad-rows to go on without them.`,
    );
    return null;
  }
  if (outcome.change?.kind === "orders") return outcome.change.change.put;
  output.warn(`${path} holds no order that can be read. Check that it is the right file.`);
  return null;
}

function demoWeek(text: string): DemoWeek {
  const week = DEMO_WEEKS.find((name) => name === text);
  if (week === undefined)
    throw new UsageError(`There is no demo "${text}".`, `Choose ${DEMO_WEEKS.join(", ")}.`);
  return week;
}

function plantFiles(path: string): readonly string[] {
  if (!existsSync(path))
    throw new UsageError(`${path} is not there.`, "Name a folder of CSV files or a workbook.");
  if (!statSync(path).isDirectory()) return [path];
  const files = readdirSync(path)
    .filter((name) => /\.(csv|xlsx)$/i.test(name) && !/^orders?\./i.test(name))
    .sort((a, b) => (a < b ? -1 : 1));
  if (files.length === 0)
    throw new UsageError(
      `${path} holds no .csv or .xlsx file.`,
      "Name the folder that holds the plant's tables.",
    );
  return files.map((name) => join(path, name));
}

async function readTables(
  paths: readonly string[],
  ports: OfflinePorts,
  output: Output,
): Promise<readonly Table[] | null> {
  const tables: Table[] = [];
  let readable = true;
  for (const path of paths) {
    if (!existsSync(path) || statSync(path).isDirectory())
      throw new UsageError(`${path} is no file.`, "Name a .csv or .xlsx file.");
    const result = await ports.tableReader.read({ name: basename(path), bytes: readFileSync(path) }, LIMITS);
    if (result.ok) {
      tables.push(...result.tables);
      for (const { sheet, row, text } of result.notices)
        output.warn(`${sheet}${row === null ? "" : `, row ${row}`}: ${text}`);
      continue;
    }
    readable = false;
    for (const { fileName, row, problem, remedy } of result.faults)
      output.warn(`${fileName}${row === null ? "" : `, row ${row}`}: ${problem}. ${remedy}`);
  }
  return readable ? tables : null;
}

function listFaults(outcome: ImportOutcome, output: Output): void {
  for (const fault of outcome.faults) output.warn(faultLine(fault));
  if (outcome.truncated) output.warn("… and more; the list was cut.");
}

function faultLine({ sheet, row, column, value, problem, remedy, severity }: ImportFault): string {
  const place = [sheet, row === null ? null : `row ${row}`, column === null ? null : `column "${column}"`]
    .filter((part) => part !== null)
    .join(", ");
  return `${severity}: ${place}${value === "" ? "" : `, "${value}"`}: ${problem}. ${remedy}`;
}
