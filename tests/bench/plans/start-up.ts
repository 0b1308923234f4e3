import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { performance } from "node:perf_hooks";
import type { FigureSheet } from "./figure.ts";
import { PlannerClient, until } from "./planner-client.ts";
import { startServer } from "./planner-server.ts";

const part = "start of the server";
const servedWithinMs = 180_000;

/** From the start on an empty folder to the first answer and to a served plan; then the start on the filled folder. */
export async function measureStart(sheet: FigureSheet): Promise<void> {
  // `npm start` first makes sure that all is built, then starts the server.
  const checkStart = performance.now();
  spawnSync("npm", ["run", "--silent", "build"], { stdio: "ignore" });
  sheet.add({
    part,
    name: "making sure that all is built",
    value: performance.now() - checkStart,
    unit: "ms",
  });
  const folder = mkdtempSync(join(tmpdir(), "formweek-start-"));
  try {
    const began = performance.now();
    const first = await startServer(folder);
    sheet.add({ part, name: "empty folder: first answer", value: first.startedInMs, unit: "ms" });
    const client = new PlannerClient(first.address);
    await until(async () => {
      const [plant] = await client.plants();
      if (plant === undefined) return null;
      const [plan] = await client.plans(plant.id);
      return plan ?? null;
    }, servedWithinMs);
    sheet.add({
      part,
      name: "empty folder: demo planned and served",
      value: performance.now() - began,
      unit: "ms",
    });
    await first.stop();
    const second = await startServer(folder);
    sheet.add({ part, name: "filled folder: first answer", value: second.startedInMs, unit: "ms" });
    await second.stop();
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
