import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { performance } from "node:perf_hooks";
import type { FigureSheet } from "./figure.ts";
import { orderFile } from "./order-file.ts";
import { PlannerClient, until } from "./planner-client.ts";
import { startServer } from "./planner-server.ts";

const rows = 50_000;
const part = `import of ${rows} rows`;

/** Dry run and acceptance of a large order file over HTTP, as CSV and as a workbook, then the same file again. */
export async function measureImport(sheet: FigureSheet): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), "formweek-import-"));
  const server = await startServer(folder);
  try {
    const client = new PlannerClient(server.address);
    const plantId = await until(async () => (await client.plants())[0]?.id ?? null, 60_000);
    await until(async () => (await client.plans(plantId))[0] ?? null, 180_000);
    for (const format of ["csv", "xlsx"] as const) {
      const file = await orderFile(format.toUpperCase(), rows, format);
      const add = (name: string, value: number, unit: string) =>
        sheet.add({ part, name: `${format}: ${name}`, value, unit });
      add("file", file.bytes.length / 1024 / 1024, "MB");
      const previewStart = performance.now();
      const report = await client.preview(plantId, file);
      add("dry run", performance.now() - previewStart, "ms");
      add("rows added", report.summary.added, "rows");
      const acceptStart = performance.now();
      await client.accept(plantId, report);
      add("acceptance", performance.now() - acceptStart, "ms");
      const again = await client.preview(plantId, file);
      add("rows changed by the same file again", again.summary.added + again.summary.changed, "rows");
    }
  } finally {
    await server.kill();
    rmSync(folder, { recursive: true, force: true });
  }
}
