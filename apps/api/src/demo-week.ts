import { type Application, type PlanDocument, localPlanner } from "@formweek/application";
import { demoOrders, demoPlant } from "@formweek/demo-plant";
import { valueOf } from "./refusal.ts";

const week = "full";
const plant = demoPlant(week);
const plantId = plant.id;
const PLAN_SECONDS = 5;
const LOOK_EVERY_MS = 200;

/** Fills an empty store with the demo plant and its full week; false, and nothing done, when there is a plant already. */
export async function loadDemo(app: Application, say: (line: string) => void): Promise<boolean> {
  if (valueOf(await app.queries.listPlants(localPlanner)).length > 0) return false;
  const orders = demoOrders(week);
  valueOf(await app.commands.putPlant({ plantId, plant, expectedRevision: null }, localPlanner));
  valueOf(await app.commands.putOrders({ plantId, orders, expectedRevision: 0 }, localPlanner));
  say(
    `Loaded the demo plant ${plant.name}: ${plant.lines.length} lines, ${plant.moulds.length} moulds, ` +
      `${plant.products.length} products, ${orders.length} orders`,
  );
  return true;
}

/** Plans the demo's order book and says what came of it. */
export async function planDemo(app: Application, say: (line: string) => void): Promise<void> {
  const began = performance.now();
  const wish = { plantId, seconds: PLAN_SECONDS, steps: null, seed: null, threads: null, favour: null };
  const asked = await app.commands.requestSolve(wish, localPlanner);
  if (!asked.ok) return say(`The demo was not planned: ${asked.error.title}`);
  const run = await endOf(app, asked.value.runId);
  if (run.planId === null)
    return say(`The demo was not planned: ${run.problem?.title ?? "the run was stopped"}`);
  const { document } = valueOf(await app.queries.getPlan({ plantId, planId: run.planId }, localPlanner));
  const seconds = (performance.now() - began) / 1000;
  for (const line of summaryLines(document, seconds)) say(line);
}

async function endOf(app: Application, runId: string) {
  for (;;) {
    const run = valueOf(await app.queries.getRun({ plantId, runId }, localPlanner));
    if (run.state !== "queued" && run.state !== "running") return run;
    await new Promise((resolve) => setTimeout(resolve, LOOK_EVERY_MS));
  }
}

/** The plan in a few lines: orders, on-time share, changes, utilisation, time taken. */
export function summaryLines({ summary }: Pick<PlanDocument, "summary">, seconds: number): readonly string[] {
  const { orders, onTime, coveredByStock, late, unplanned, changes, changeHours, utilisation } = summary;
  const share = orders === 0 ? 1 : (onTime + coveredByStock) / orders;
  return [
    `Planned ${orders} orders in ${seconds.toFixed(1)} s: ${percent(share)} on time ` +
      `(${coveredByStock} of them from stock), ${late} late, ${unplanned} not planned`,
    `${changes} changes take ${changeHours.toFixed(1)} h; lines run ${percent(utilisation)} of their open time`,
  ];
}

const percent = (share: number): string => `${(share * 100).toFixed(1)} %`;
