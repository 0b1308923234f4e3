import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { FigureSheet } from "./figure.ts";
import { orderFile, type OrderFile } from "./order-file.ts";
import { PlannerClient, until } from "./planner-client.ts";
import { startServer } from "./planner-server.ts";

const part = "20 sudden ends";
const rounds = 20;
const ordersPerFile = 200;

/** What the server has said to be done, and what it was asked when it ended. */
interface Ledger {
  readonly accepted: OrderFile[];
  readonly asked: OrderFile[];
  readonly runIds: string[];
  readonly planIds: string[];
  revision: number;
}

/** Loads order files one after another until the server is gone. */
async function keepImporting(client: PlannerClient, plantId: string, ledger: Ledger): Promise<void> {
  for (;;) {
    const file = await orderFile(`END${ledger.asked.length}`, ordersPerFile, "csv");
    ledger.asked.push(file);
    const { revision } = await client.accept(plantId, await client.preview(plantId, file));
    ledger.accepted.push(file);
    ledger.revision = revision;
  }
}

/** Plans again and again until the server is gone. */
async function keepPlanning(client: PlannerClient, plantId: string, ledger: Ledger): Promise<void> {
  for (;;) {
    const runId = await client.solve(plantId, 0.3).then((accepted) => accepted.runId, refusedOrGone);
    if (runId === null) continue;
    ledger.runIds.push(runId);
    for (let state = "queued"; state === "queued" || state === "running";) {
      const run = await client.run(plantId, runId);
      state = run.state;
      if (run.planId !== null) ledger.planIds.push(run.planId);
    }
  }
}

/** A refusal (a run is still going on) is waited out; a server that is gone ends the loop. */
async function refusedOrGone(error: unknown): Promise<null> {
  if (!(error instanceof Error) || !/: 4\d\d /.test(error.message)) throw error;
  await new Promise((resolve) => setTimeout(resolve, 50));
  return null;
}

/** What was acknowledged and is not there, and files of which only a part is there. */
async function losses(client: PlannerClient, plantId: string, ledger: Ledger) {
  const book = await client.orders(plantId);
  const orders = new Set(book.orders.map((order) => order.id));
  const plans = new Set((await client.plans(plantId)).map((plan) => plan.planId));
  const runs = await Promise.all(ledger.runIds.map((runId) => client.run(plantId, runId).catch(() => null)));
  return {
    orders: ledger.accepted.flatMap((file) => file.ids).filter((id) => !orders.has(id)).length,
    halves: ledger.asked.filter((file) => new Set(file.ids.map((id) => orders.has(id))).size > 1).length,
    plans: ledger.planIds.filter((id) => !plans.has(id)).length,
    runs: runs.filter((run) => run === null).length,
    revisions: book.revision < ledger.revision ? 1 : 0,
  };
}

/** Ends a server without warning while it imports and plans, and looks after each new start whether anything is lost. */
export async function measureSuddenEnds(sheet: FigureSheet): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), "formweek-ends-"));
  const ledger: Ledger = { accepted: [], asked: [], runIds: [], planIds: [], revision: 0 };
  const lost = { orders: 0, halves: 0, plans: 0, runs: 0, revisions: 0 };
  const starts: number[] = [];
  try {
    for (let round = 0; round <= rounds; round += 1) {
      const server = await startServer(folder);
      starts.push(server.startedInMs);
      const client = new PlannerClient(server.address);
      const plantId = await until(async () => (await client.plants())[0]?.id ?? null, 60_000);
      if (round === 0) await until(async () => (await client.plans(plantId))[0] ?? null, 180_000);
      const found = await losses(client, plantId, ledger);
      for (const kind of Object.keys(lost) as (keyof typeof lost)[]) lost[kind] += found[kind];
      if (round === rounds) {
        await server.stop();
        break;
      }
      const work = Promise.allSettled([
        keepImporting(client, plantId, ledger),
        keepPlanning(client, plantId, ledger),
      ]);
      // Spread over what goes on in a round: 0.2 s to 3 s after the work has begun.
      await new Promise((resolve) => setTimeout(resolve, 200 + ((round * 7) % rounds) * 140));
      await server.kill();
      await work;
    }
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
  const add = (name: string, value: number, unit: string) => sheet.add({ part, name, value, unit });
  add("starts on the folder", starts.length, "starts");
  add("slowest start", Math.max(...starts), "ms");
  add("acknowledged imports", ledger.accepted.length, "files");
  add("acknowledged plans", new Set(ledger.planIds).size, "plans");
  add("acknowledged orders lost", lost.orders, "orders");
  add("acknowledged plans lost", lost.plans, "plans");
  add("acknowledged runs lost", lost.runs, "runs");
  add("revisions gone back", lost.revisions, "times");
  add("files taken over in part", lost.halves, "files");
}
