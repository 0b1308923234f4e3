import { tableOfOrders, tablesOfPlant } from "@formweek/application";
import { generatePlant } from "@formweek/demo-plant";
import { existsSync, mkdirSync, readdirSync, statSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import type { Command } from "./command.ts";
import { neededFlag, wholeFlag } from "./flags.ts";
import { UsageError } from "./outcome.ts";

export const generateCommand: Command = {
  title:
    "npm run generate -- --lines L --orders N --seed S --out <folder>\nWrites an invented plant and its orders in the import formats.",
  flags: {
    lines: { value: "L", meaning: "forming lines, 1 to 200" },
    orders: { value: "N", meaning: "orders, 1 to 20000" },
    seed: { value: "S", meaning: "another seed, another plant; 1 by default" },
    out: { value: "<folder>", meaning: "where to write; must be new or empty" },
    force: { value: null, meaning: "write into a folder that holds files" },
  },
  run: ({ flags, ports, output }) => {
    const lines = wholeFlag(flags, "lines", [1, 200]) ?? missing("lines", "with the number of lines");
    const orders = wholeFlag(flags, "orders", [1, 20_000]) ?? missing("orders", "with the number of orders");
    const seed = wholeFlag(flags, "seed", [0, 4_294_967_295]) ?? 1;
    const folder = neededFlag(flags, "out", "with a folder");
    if (existsSync(folder) && !statSync(folder).isDirectory())
      throw new UsageError(`${folder} is a file.`, "Name a new folder.");
    if (existsSync(folder) && readdirSync(folder).length > 0 && !flags.has("force")) {
      throw new UsageError(`${folder} is not empty.`, "Name a new folder, or add --force to write into it.");
    }
    const generated = generatePlant({ lines, orders, seed });
    mkdirSync(folder, { recursive: true });
    const tables = [
      ...tablesOfPlant(generated.plant),
      tableOfOrders(generated.orders, generated.plant.timeZone),
    ];
    for (const table of tables)
      writeFileSync(join(folder, `${table.name}.csv`), ports.tableWriter.csv(table));
    output.say(
      `Wrote ${tables.length} tables to ${folder}: ${lines} lines, ${generated.plant.moulds.length} moulds, ${generated.orders.length} orders, seed ${seed}`,
    );
    return Promise.resolve(0);
  },
};

function missing(flag: string, what: string): never {
  throw new UsageError(`--${flag} is missing.`, `Add --${flag} ${what}.`);
}
