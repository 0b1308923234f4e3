import { type Application, type SolveRun, localPlanner } from "@formweek/application";
import { compose } from "@formweek/composition";
import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { fill, orders, plantId } from "../fixtures/api-server.ts";
import { eventually } from "../fixtures/eventually.ts";

let dataFolder: string;
beforeAll(async () => {
  dataFolder = await mkdtemp(join(tmpdir(), "formweek-recovery-"));
});
afterAll(() => rm(dataFolder, { recursive: true, force: true }));

const open = () =>
  compose(
    { mode: "embedded", dataFolder, host: "127.0.0.1", port: 0, logLevel: "silent", concurrentRuns: 1 },
    "server",
  );

async function runOf(app: Application, runId: string): Promise<SolveRun> {
  const found = await app.queries.getRun({ plantId, runId }, localPlanner);
  if (!found.ok) throw new Error(found.error.cause);
  return found.value;
}

describe("a run outlives its process", () => {
  test("closed while it runs, it is put back at the next start, goes on, and can be stopped", async () => {
    const first = await open();
    await fill(first.app);
    await first.start();
    const wish = { plantId, seconds: 600, steps: null, seed: 1, threads: 1, favour: null };
    const asked = await first.app.commands.requestSolve(wish, localPlanner);
    if (!asked.ok) throw new Error(asked.error.cause);
    const { runId } = asked.value;
    await eventually("the run runs", async () => (await runOf(first.app, runId)).progress !== null);
    await first.close();

    const second = await open();
    expect(await runOf(second.app, runId)).toMatchObject({ state: "running", planId: null, recoveries: 0 });
    await second.start();
    await eventually("the run goes on", async () => {
      const run = await runOf(second.app, runId);
      return run.recoveries === 1 && run.state === "running" && run.progress !== null;
    });
    await second.app.commands.stopSolve({ plantId, runId, keep: null }, localPlanner);
    await eventually("the run stops", async () => (await runOf(second.app, runId)).state === "stopped");
    const plans = await second.app.queries.listPlans({ plantId }, localPlanner);
    expect(plans.ok && plans.value.map((plan) => plan.runId)).toEqual([runId]);
    await second.close();
  });

  test("asked for while nobody runs jobs, it waits; stopped before it began, it has no plan", async () => {
    const idle = await open();
    const wish = { plantId, seconds: 600, steps: null, seed: 1, threads: 1, favour: null };
    const asked = await idle.app.commands.requestSolve(wish, localPlanner);
    if (!asked.ok) throw new Error(asked.error.cause);
    const { runId } = asked.value;
    await idle.app.commands.stopSolve({ plantId, runId, keep: null }, localPlanner);
    expect(await runOf(idle.app, runId)).toMatchObject({ state: "queued", stopRequested: true });
    await idle.close();

    const next = await open();
    await next.start();
    await eventually("the run has ended", async () => (await runOf(next.app, runId)).endedAt !== null);
    expect(await runOf(next.app, runId)).toMatchObject({ state: "stopped", planId: null, problem: null });
    await next.close();
  });

  test("a search closed while it runs begins anew at the next start, and can be stopped", async () => {
    const first = await open();
    await first.start();
    const begun = await first.app.commands.requestTradeOff(
      { plantId, seconds: 600, steps: null, seed: 1, threads: 1 },
      localPlanner,
    );
    if (!begun.ok) throw new Error(begun.error.cause);
    const { runId } = begun.value;
    await eventually("the search runs", async () => (await runOf(first.app, runId)).progress !== null);
    await first.close();

    const second = await open();
    expect(await runOf(second.app, runId)).toMatchObject({ state: "running", findings: null });
    await second.start();
    await eventually("the search goes on", async () => {
      const run = await runOf(second.app, runId);
      return run.recoveries === 1 && run.progress !== null;
    });
    await second.app.commands.stopSolve({ plantId, runId, keep: null }, localPlanner);
    await eventually("the search stops", async () => (await runOf(second.app, runId)).state === "stopped");
    expect(await runOf(second.app, runId)).toMatchObject({ planId: null, findings: { kind: "trade-off" } });
    await second.close();
  });

  test("scenarios that are worked out when it closes are begun anew at the next start, and come out", async () => {
    const first = await open();
    await first.start();
    const changes = [{ kind: "cancel order", orderId: orders[0]?.id ?? "" }] as const;
    const written = await first.app.commands.writeScenario({ plantId, name: "Fewer", changes }, localPlanner);
    if (!written.ok) throw new Error(written.error.cause);
    const scenarioIds = [written.value.id];
    const begun = await first.app.commands.requestScenarios(
      { plantId, scenarioIds, seconds: 8, steps: null, seed: 1, threads: 1 },
      localPlanner,
    );
    if (!begun.ok) throw new Error(begun.error.cause);
    const { runId } = begun.value;
    await eventually("the run runs", async () => (await runOf(first.app, runId)).progress !== null);
    await first.close();

    const second = await open();
    const listed = async () => {
      const found = await second.app.queries.listScenarios({ plantId }, localPlanner);
      return found.ok ? found.value : [];
    };
    expect(await runOf(second.app, runId)).toMatchObject({ state: "running", findings: null });
    expect(await listed()).toMatchObject([{ outcome: null }]);
    await second.start();
    await eventually("the run ends", async () => (await runOf(second.app, runId)).endedAt !== null);
    expect(await runOf(second.app, runId)).toMatchObject({
      state: "done",
      recoveries: 1,
      findings: { kind: "scenarios", scenarioIds },
    });
    expect(await listed()).toMatchObject([{ outcome: { runId, isCurrent: true } }]);
    await second.close();
  });
});
