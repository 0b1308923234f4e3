import { localPlanner, type Application, type PlantMessage } from "@formweek/application";
import { afterAll, beforeAll, expect, test } from "vitest";
import { eventually } from "../../fixtures/eventually.ts";
import { askForPlan, ended, fillPlant, runOf } from "../../fixtures/planning-asks.ts";
import { newId } from "../../fixtures/stored-records.ts";

/** A planner in one of its modes. Where several processes work together, `asked` and `watched` are two of them, and the jobs run in a third. */
export interface PlannerUnderTest {
  readonly asked: Application;
  readonly watched: Application;
  readonly close: () => Promise<void>;
}

/** The plan of a few hundred steps of the calm orders, as each mode makes it; equal in all. */
const plansMade = new Map<string, string>();

/** What the main job does in every mode. */
export function planningSuite(mode: string, open: () => Promise<PlannerUnderTest>): void {
  let under: PlannerUnderTest;
  beforeAll(async () => {
    under = await open();
  });
  afterAll(() => under.close());

  test("a plan is made, saved and told of, with progress on the way", async () => {
    const { asked, watched } = under;
    const plantId = await fillPlant(asked);
    const heard: PlantMessage[] = [];
    const watching = await watched.queries.watchPlant(
      { plantId, afterSequence: 0, onMessage: (message) => void heard.push(message) },
      localPlanner,
    );
    const runId = await askForPlan(asked, plantId, { seconds: null, steps: 400 });
    await ended(watched, plantId, runId);
    const run = await runOf(watched, plantId, runId);
    expect([run.state, run.problem, run.recoveries]).toEqual(["done", null, 0]);
    const types = () => heard.flatMap(({ sequence, body }) => (sequence === null ? [] : [body.type]));
    await eventually("the end is told of", () => types().includes("solve-ended"));
    expect(types()).toEqual([
      "plant-changed",
      "orders-changed",
      "working-plan-changed",
      "plan-saved",
      "solve-ended",
    ]);
    expect(heard.some(({ body }) => body.type === "solve-progress")).toBe(true);
    const plan = await watched.queries.getPlan({ plantId, planId: run.planId ?? "" }, localPlanner);
    if (!plan.ok) throw new Error(plan.error.cause);
    expect(plan.value.runId).toBe(runId);
    expect(plan.value.document.segments.length).toBeGreaterThan(0);
    // The plant's id differs from suite to suite, and the hash of the input with it.
    const document = { ...plan.value.document, inputHash: "" };
    plansMade.set(mode, JSON.stringify(document).replaceAll(plantId, "the plant"));
    if (watching.ok) await watching.value.close();
  });

  test("a stop asked for while it runs ends it with the best plan so far", async () => {
    const { asked, watched } = under;
    const plantId = await fillPlant(asked);
    const runId = await askForPlan(asked, plantId, { seconds: 600, steps: null });
    await eventually(
      "progress is seen",
      async () => (await runOf(watched, plantId, runId)).progress !== null,
    );
    const second = await watched.commands.requestSolve(
      { plantId, seconds: 1, steps: null, seed: 1, threads: 1, favour: null },
      localPlanner,
    );
    expect(second).toMatchObject({ ok: false, error: { code: "solve-in-progress" } });
    await watched.commands.stopSolve({ plantId, runId, keep: null }, localPlanner);
    await ended(asked, plantId, runId);
    const run = await runOf(asked, plantId, runId);
    expect(run.state).toBe("stopped");
    const plans = await asked.queries.listPlans({ plantId }, localPlanner);
    expect(plans.ok && plans.value.map(({ id }) => id)).toEqual([run.planId]);
  });

  test("the best plan so far is there while a run goes on, a stop keeps just the one that it names, and it goes with the run", async () => {
    const { asked, watched } = under;
    const plantId = await fillPlant(asked);
    const heard: PlantMessage[] = [];
    const watching = await watched.queries.watchPlant(
      { plantId, afterSequence: null, onMessage: (message) => void heard.push(message) },
      localPlanner,
    );
    const runId = await askForPlan(asked, plantId, { seconds: 600, steps: null });
    const look = async () => {
      const answer = await watched.queries.getProvisional({ plantId, runId }, localPlanner);
      if (!answer.ok) throw new Error(answer.error.cause);
      return answer.value;
    };
    await eventually("a plan is there to look at", async () => (await look()) !== null);
    const told = () => heard.flatMap(({ body }) => (body.type === "better-plan" ? [body] : []));
    await eventually("it is told of", () => told().length > 0);
    expect(told()[0]).toMatchObject({ runId, number: 1 });
    const other = await watched.queries.getProvisional({ plantId: newId(), runId }, localPlanner);
    expect(other).toMatchObject({ ok: false, error: { code: "not-found" } });

    const wrong = { plantId, runId, keep: 1_000_000 };
    const refused = await watched.commands.stopSolve(wrong, localPlanner);
    expect(refused).toMatchObject({ ok: false, error: { code: "plan-outrun" } });
    expect(await runOf(watched, plantId, runId)).toMatchObject({ state: "running", stopRequested: false });

    const seen = await look();
    if (seen === null) throw new Error("the plan is gone while the run goes on");
    const { number, document } = seen;
    expect((await runOf(watched, plantId, runId)).provisional?.number).toBeGreaterThanOrEqual(number);
    const stopped = await watched.commands.stopSolve({ plantId, runId, keep: number }, localPlanner);
    expect(stopped.ok).toBe(true);
    await ended(asked, plantId, runId);
    const run = await runOf(asked, plantId, runId);
    expect(run).toMatchObject({ state: "stopped", provisional: null });
    const kept = await asked.queries.getPlan({ plantId, planId: run.planId ?? "" }, localPlanner);
    if (!kept.ok) throw new Error(kept.error.cause);
    const { segments, lots, orders, objective } = kept.value.document;
    expect({ segments, lots, orders, objective }).toEqual({
      segments: document.segments,
      lots: document.lots,
      orders: document.orders,
      objective: document.objective,
    });
    expect(await look()).toBeNull();
    if (watching.ok) await watching.value.close();
  });

  test("several threads plan, too", async () => {
    const { asked } = under;
    const plantId = await fillPlant(asked);
    const wish = { plantId, seconds: null, steps: 50, seed: 1, threads: 2, favour: null };
    const run = await asked.commands.requestSolve(wish, localPlanner);
    if (!run.ok) throw new Error(run.error.cause);
    await ended(asked, plantId, run.value.runId);
    expect((await runOf(asked, plantId, run.value.runId)).state).toBe("done");
  });

  test("a scenario is worked out beside the plan, told of, and adopted with the plan that was found", async () => {
    const { asked, watched } = under;
    const plantId = await fillPlant(asked);
    await ended(watched, plantId, await askForPlan(asked, plantId, { seconds: null, steps: 40 }));
    const heard: PlantMessage[] = [];
    const watching = await watched.queries.watchPlant(
      { plantId, afterSequence: null, onMessage: (message) => void heard.push(message) },
      localPlanner,
    );
    const closure = { lineId: "L1", from: "2026-12-01T06:00", to: "2026-12-02T06:00", reason: "Bearing" };
    const draft = { plantId, name: "Line 1 stands", changes: [{ kind: "close line", closure }] } as const;
    const written = await asked.commands.writeScenario(draft, localPlanner);
    if (!written.ok) throw new Error(written.error.cause);
    const { id: scenarioId, revision: scenarioRevision } = written.value;
    const budget = { seconds: null, steps: 40, seed: 1, threads: 1 };
    const wish = { plantId, scenarioIds: [scenarioId], ...budget };
    const begun = await asked.commands.requestScenarios(wish, localPlanner);
    if (!begun.ok) throw new Error(begun.error.cause);
    await ended(watched, plantId, begun.value.runId);
    const listed = async () => {
      const found = await watched.queries.listScenarios({ plantId }, localPlanner);
      return found.ok ? found.value : [];
    };
    const [found] = await listed();
    expect(found?.outcome).toMatchObject({ isCurrent: true, runId: begun.value.runId });
    const told = () => heard.filter(({ body }) => body.type === "scenarios-changed").length;
    await eventually("writing and working out are told of", () => told() === 2);
    const adoption = { plantId, scenarioId, scenarioRevision, expectedRevision: 1 };
    const adopted = await watched.commands.adoptScenario(adoption, localPlanner);
    if (!adopted.ok) throw new Error(adopted.error.cause);
    const { planId } = adopted.value;
    const plan = await asked.queries.getPlan({ plantId, planId }, localPlanner);
    expect(plan.ok && plan.value.document.objective.total).toBeCloseTo(found?.outcome?.with.cost ?? 0, 6);
    const closures = async () => {
      const stored = await asked.queries.getPlant({ plantId }, localPlanner);
      return stored.ok ? stored.value.plant.lineClosures : null;
    };
    expect(await closures()).toEqual([closure]);
    expect((await watched.commands.undoStep({ plantId, expectedRevision: 2 }, localPlanner)).ok).toBe(true);
    expect(await closures()).toEqual([]);
    expect((await listed())[0]?.adopted).toBeNull();
    if (watching.ok) await watching.value.close();
  });
}

/** Compares the plans that the suites above made; at least two modes must have run. */
export function sameInEveryMode(): void {
  const [first, ...others] = [...plansMade.values()];
  expect(others.length).toBeGreaterThan(0);
  for (const other of others) expect(other).toBe(first);
}
