import { localPlanner } from "@formweek/application";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, describe, expect, test } from "vitest";
import { distributedConfig, embeddedConfig, haveServers, started } from "../fixtures/composed-planners.ts";
import { eventually } from "../fixtures/eventually.ts";
import { askForPlan, ended, fillPlant, runOf } from "../fixtures/planning-asks.ts";
import { startSource, type SourceProcess } from "../fixtures/source-process.ts";

const processes: SourceProcess[] = [];
afterEach(async () => {
  for (const running of processes.splice(0)) await running.kill();
});

function startProgram(file: string, args: readonly string[], environment: Readonly<Record<string, string>>) {
  const running = startSource(new URL(file, import.meta.url), args, environment);
  processes.push(running);
  return running;
}

describe("a process that is killed while it plans", () => {
  test("on one machine: the run is put back at the next start, and a stop then keeps a plan", async () => {
    const folder = mkdtempSync(join(tmpdir(), "formweek-killed-"));
    const planning = startProgram("./processes/plan-without-end.ts", [folder], {});
    await eventually("it is at work", () => planning.lines.includes("at work") || planning.hasEnded());
    const [plantId = "", runId = ""] = planning.lines;
    await planning.kill();

    const next = await started(embeddedConfig(folder));
    await eventually(
      "the run goes on",
      async () => (await runOf(next.app, plantId, runId)).progress !== null,
    );
    expect(await runOf(next.app, plantId, runId)).toMatchObject({ state: "running", recoveries: 1 });
    await next.app.commands.stopSolve({ plantId, runId, keep: null }, localPlanner);
    await ended(next.app, plantId, runId);
    const plans = await next.app.queries.listPlans({ plantId }, localPlanner);
    expect(plans.ok && plans.value.map((plan) => plan.runId)).toEqual([runId]);
    await next.close();
    rmSync(folder, { recursive: true, force: true });
  });

  test("while a plan is changed by hand: every step that was acknowledged is there, and can be taken back", async () => {
    const folder = mkdtempSync(join(tmpdir(), "formweek-killed-"));
    const editing = startProgram("./processes/edit-without-end.ts", [folder], {});
    await eventually("it has made steps", () => editing.lines.length >= 8 || editing.hasEnded());
    await editing.kill();
    const [plantId = "", ...said] = editing.lines;

    const next = await started(embeddedConfig(folder));
    const found = await next.app.queries.getWorkingPlan({ plantId }, localPlanner);
    if (!found.ok) throw new Error(found.error.cause);
    const kept = found.value.steps.map(({ revision, planId }) => `${revision} ${planId}`);
    expect(said.length).toBeGreaterThanOrEqual(7);
    expect(kept).toEqual(expect.arrayContaining(said));
    // one more may have been committed without its acknowledgement being heard, beside the planning run's own
    expect(kept.length - said.length).toBeLessThanOrEqual(2);
    const { revision: expectedRevision, steps } = found.value;
    const undone = await next.app.commands.undoStep({ plantId, expectedRevision }, localPlanner);
    expect(undone).toMatchObject({ ok: true, value: { planId: steps[0]?.fromPlanId } });
    await next.close();
    rmSync(folder, { recursive: true, force: true });
  });

  test.skipIf(!haveServers)(
    "on servers: another worker takes the run over, and one plan is saved",
    async () => {
      const config = distributedConfig();
      const server = await started(config);
      const plantId = await fillPlant(server.app);
      const worker = startProgram("../../apps/worker/src/main.ts", [], {
        DATABASE_URL: config.databaseUrl,
        REDIS_URL: config.redisUrl,
        FORMWEEK_REDIS_PREFIX: config.redisPrefix,
      });
      const runId = await askForPlan(server.app, plantId, { seconds: 600, steps: null });
      await eventually(
        "the worker is at work",
        async () => (await runOf(server.app, plantId, runId)).progress !== null || worker.hasEnded(),
      );
      await worker.kill();
      const before = await runOf(server.app, plantId, runId);
      expect(before.state).toBe("running");

      const other = await started(config, "worker");
      await eventually("the other worker has begun", async () => {
        const run = await runOf(server.app, plantId, runId);
        return run.revision > before.revision && run.progress !== null;
      });
      await server.app.commands.stopSolve({ plantId, runId, keep: null }, localPlanner);
      await ended(server.app, plantId, runId);
      expect((await runOf(server.app, plantId, runId)).state).toBe("stopped");
      const plans = await server.app.queries.listPlans({ plantId }, localPlanner);
      expect(plans.ok && plans.value.map((plan) => plan.runId)).toEqual([runId]);
      for (const runtime of [other, server]) await runtime.close();
    },
  );

  test.skipIf(!haveServers)("a worker without settings says what is missing and ends", async () => {
    const worker = startProgram("../../apps/worker/src/main.ts", [], { DATABASE_URL: "", REDIS_URL: "" });
    await eventually("it has ended", () => worker.hasEnded());
    expect(worker.exitCode()).toBe(2);
  });
});
