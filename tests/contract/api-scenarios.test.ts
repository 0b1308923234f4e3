import { localPlanner } from "@formweek/application";
import { Order } from "@formweek/capacity-model";
import { Scenario, SolveAccepted, SolveRunResponse } from "@formweek/contracts";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { type ApiServer, fill, openApiServer, plantId } from "../fixtures/api-server.ts";
import { eventually } from "../fixtures/eventually.ts";
import { problemOf } from "../fixtures/http-asks.ts";
import { askForPlan, ended, runOf } from "../fixtures/planning-asks.ts";
import { closeLine, one, other, rush, saturday, scenarioAsks, third } from "../fixtures/scenario-asks.ts";

let api: ApiServer;
beforeAll(async () => {
  api = await openApiServer();
  await fill(api.app);
  await ended(api.app, plantId, await askForPlan(api.app, plantId, { seconds: null, steps: 30 }));
});
afterAll(() => api.close());

const { get, here, take, planText, plan, ask, list, scenarioOf, write, run, workOut, putOrder, everyKind } =
  scenarioAsks(() => api);

describe("a scenario", () => {
  test("is written, read, written anew over what was seen, and deleted; nothing of plant, orders or plan changes", async () => {
    const before = [await planText(), (await get("")).body, (await get("/orders")).body];
    const changes = await everyKind();
    const written = await write("All of it", ...changes);
    expect(written).toMatchObject({ revision: 1, name: "All of it", adopted: null, outcome: null });
    expect(written.changes).toEqual(changes);
    expect(await list()).toEqual([written]);
    const anew = await ask("PUT", `/${written.id}`, {
      name: "Less of it",
      changes: [closeLine],
      revision: 1,
    });
    expect([anew.statusCode, Scenario.parse(anew.json())]).toMatchObject([
      200,
      { id: written.id, revision: 2, name: "Less of it", changes: [closeLine] },
    ]);
    const late = problemOf(
      await ask("PUT", `/${written.id}`, { name: "Late", changes: [closeLine], revision: 1 }),
    );
    expect(late).toMatchObject({ code: "scenario-changed", status: 409 });
    expect(problemOf(await ask("DELETE", `/${written.id}?revision=1`))).toMatchObject({
      code: "scenario-changed",
    });
    const gone = Scenario.parse((await ask("DELETE", `/${written.id}?revision=2`)).json());
    expect(gone.name).toBe("Less of it");
    expect(await list()).toEqual([]);
    expect(problemOf(await ask("DELETE", `/${written.id}?revision=2`))).toMatchObject({ status: 404 });
    expect([await planText(), (await get("")).body, (await get("/orders")).body]).toEqual(before);
  });

  test.each<readonly [string, Readonly<Record<string, unknown>>, number, string]>([
    ["a name", { name: " ", changes: [rush] }, 400, "name"],
    ["a change", { name: "None", changes: [] }, 400, "changes"],
    ["a kind", { name: "None", changes: [{ kind: "wish" }] }, 400, "changes.0.kind"],
    [
      "no more than 20 changes",
      { name: "Many", changes: Array.from({ length: 21 }, () => rush) },
      400,
      "changes",
    ],
    [
      "a day",
      { name: "No", changes: [{ ...rush, order: { ...rush.order, dueAt: "2026-02-30T00:00:00Z" } }] },
      400,
      "changes.0.order.dueAt",
    ],
    [
      "a known order",
      { name: "No", changes: [rush, { kind: "cancel order", orderId: "X" }] },
      422,
      "changes.1.orderId",
    ],
    [
      "a line",
      { name: "No", changes: [{ ...closeLine, closure: { ...closeLine.closure, lineId: "L99" } }] },
      422,
      "changes.0.closure.lineId",
    ],
  ])("without %s is refused by field, and nothing is written", async (_name, payload, status, path) => {
    const refusal = problemOf(await ask("POST", "", payload));
    expect(refusal).toMatchObject({ status, code: status === 400 ? "invalid-request" : "scenario-refused" });
    expect(refusal.faults[0]?.path).toBe(path);
    if (status === 422) expect(refusal.faults[0]?.cause).toBeDefined();
    expect(await list()).toEqual([]);
  });

  test("that would move a run which is given out names the run", async () => {
    const { planId, document } = await plan();
    const frozenUntil = new Date(Date.parse(document.horizon.start) + 16 * 3_600_000)
      .toISOString()
      .replace(".000Z", "Z");
    const lot = document.lots.find(({ start }) => start < frozenUntil);
    await take("publish", { planId, note: "", frozenUntil });
    const refusal = problemOf(
      await ask("POST", "", { name: "No", changes: [{ kind: "cancel order", orderId: lot?.orderId }] }),
    );
    expect(refusal).toMatchObject({
      code: "scenario-refused",
      faults: [{ cause: { kind: "run frozen", lineId: lot?.lineId } }],
    });
    await take("publish", { planId, note: "" });
  });
});

describe("scenarios that are worked out", () => {
  test("stand beside the plan as it is and without their changes; all rules hold, and nothing real changes", async () => {
    const before = [await planText(), (await get("")).body, (await get("/orders")).body];
    const [down, more] = [await write("Down", closeLine, rush), await write("More", saturday)];
    const { state, task, findings, planId } = await workOut(down, more);
    const scenarioIds = [down.id, more.id];
    expect([state, task, findings, planId]).toEqual([
      "done",
      { kind: "scenarios", scenarioIds },
      { kind: "scenarios", scenarioIds },
      null,
    ]);
    const outcomes = (await list()).map(({ outcome }) => outcome);
    for (const outcome of outcomes) {
      expect(outcome?.isCurrent).toBe(true);
      expect(outcome?.standing?.cost).toBeCloseTo((await plan()).document.objective.total, 6);
      expect(outcome?.without.cost).toBeLessThanOrEqual((outcome?.standing?.cost ?? 0) + 1e-6);
    }
    expect(outcomes[0]?.without).toEqual(outcomes[1]?.without);
    expect(outcomes[0]?.turned).toContainEqual(expect.objectContaining({ orderId: "RUSH-1", from: null }));
    expect([await planText(), (await get("")).body, (await get("/orders")).body]).toEqual(before);
  });

  test("come to the same with the same steps and seed", async () => {
    const scenario = await write("Again", closeLine);
    const figures = async () => (await scenarioOf(scenario.id)).outcome?.with;
    await workOut(scenario);
    const first = await figures();
    await workOut(scenario);
    expect(await figures()).toEqual(first);
    await ask("DELETE", `/${scenario.id}?revision=1`);
  });

  test("are out of date once plant, orders, plan or they themselves have changed", async () => {
    const scenario = await write("Fleeting", closeLine);
    const isCurrent = async () => (await scenarioOf(scenario.id)).outcome?.isCurrent;
    await workOut(scenario);
    expect(await isCurrent()).toBe(true);
    await ask("PUT", `/${scenario.id}`, { name: "Fleeting", changes: [saturday], revision: 1 });
    expect(await isCurrent()).toBe(false);
    await workOut(scenario);
    expect(await isCurrent()).toBe(true);
    await putOrder(third, { weight: 3 });
    expect(await isCurrent()).toBe(false);
    await workOut(scenario);
    expect(await isCurrent()).toBe(true);
    await take("publish", { planId: (await here()).planId, note: "" });
    expect(await isCurrent()).toBe(false);
    await ask("DELETE", `/${scenario.id}?revision=2`);
  });

  test("bad asks are refused by name: one that is not there, one twice, none, one whose order is gone since", async () => {
    const [scenario] = await list();
    const id = scenario?.id ?? "";
    expect(problemOf(await ask("POST", "/solves", { scenarioIds: ["X"] }))).toMatchObject({ status: 404 });
    expect(problemOf(await ask("POST", "/solves", { scenarioIds: [id, id] }))).toMatchObject({
      status: 422,
      faults: [{ path: "scenarioIds.1" }],
    });
    expect(problemOf(await ask("POST", "/solves", { scenarioIds: [] }))).toMatchObject({ status: 400 });
    const cancel = await write("Cancel", { kind: "cancel order", orderId: third });
    const known = await api.app.queries.getOrderBook({ plantId }, localPlanner);
    const before = known.ok ? known.value.orders.find((each) => each.id === third) : undefined;
    if (before === undefined) throw new Error("the order is in the book");
    const terms = Order.parse(before);
    const change = (changes: readonly { before: Order | null; after: Order | null }[]) =>
      api.app.commands.changeOrders({ plantId, changes, step: null }, localPlanner);
    expect((await change([{ before: terms, after: null }])).ok).toBe(true);
    const refusal = problemOf(await ask("POST", "/solves", { scenarioIds: [id, cancel.id] }));
    expect(refusal).toMatchObject({
      code: "scenario-refused",
      faults: [{ path: "scenarioIds.1.changes.0.orderId" }],
    });
    expect((await change([{ before: null, after: terms }])).ok).toBe(true);
    await ask("DELETE", `/${cancel.id}?revision=1`);
  });

  test("a run that is stopped keeps what was worked out, and nothing that was cut short; a scenario that is rewritten or deleted meanwhile has nothing current of it", async () => {
    const [scenario, doomed] = [await write("Stopped", closeLine), await write("Doomed", rush)];
    const answer = await ask("POST", "/solves", { scenarioIds: [scenario.id], seconds: 600 });
    const { runId } = SolveAccepted.parse(answer.json());
    expect(problemOf(await ask("POST", "/help", {}))).toMatchObject({ code: "solve-in-progress" });
    await api.app.commands.stopSolve({ plantId, runId, keep: null }, localPlanner);
    await ended(api.app, plantId, runId);
    const stopped = SolveRunResponse.parse((await get(`/solves/${runId}`)).json());
    expect(stopped.state).toBe("stopped");
    expect(stopped.findings ?? { kind: "scenarios", scenarioIds: [] }).toEqual({
      kind: "scenarios",
      scenarioIds: [],
    });
    expect((await scenarioOf(scenario.id)).outcome).toBeNull();

    const kept = await write("Kept", closeLine, rush);
    const cut = await ask("POST", "/solves", { scenarioIds: [kept.id, scenario.id], seconds: 12 });
    const { runId: cutId } = SolveAccepted.parse(cut.json());
    const isAtLast = async () => ((await runOf(api.app, plantId, cutId)).progress?.share ?? 0) > 2 / 3;
    await eventually("the last one is worked out", isAtLast);
    await api.app.commands.stopSolve({ plantId, runId: cutId, keep: null }, localPlanner);
    await ended(api.app, plantId, cutId);
    expect(SolveRunResponse.parse((await get(`/solves/${cutId}`)).json())).toMatchObject({
      state: "stopped",
      findings: { kind: "scenarios", scenarioIds: [kept.id] },
    });
    expect([(await scenarioOf(kept.id)).outcome?.isCurrent, (await scenarioOf(scenario.id)).outcome]).toEqual(
      [true, null],
    );
    await ask("DELETE", `/${kept.id}?revision=1`);

    const both = await ask("POST", "/solves", { scenarioIds: [scenario.id, doomed.id], seconds: 3 });
    const { runId: second } = SolveAccepted.parse(both.json());
    const runs = async () => (await runOf(api.app, plantId, second)).progress !== null;
    await eventually("the run has begun with what stands now", runs);
    await ask("PUT", `/${scenario.id}`, { name: "Rewritten", changes: [saturday], revision: 1 });
    await ask("DELETE", `/${doomed.id}?revision=1`);
    await ended(api.app, plantId, second);
    expect(SolveRunResponse.parse((await get(`/solves/${second}`)).json()).state).toBe("done");
    expect(await scenarioOf(scenario.id)).toMatchObject({ revision: 2, outcome: { isCurrent: false } });
    expect((await list()).some(({ id }) => id === doomed.id)).toBe(false);
    await ask("DELETE", `/${scenario.id}?revision=2`);
  });
});

describe("what would help most", () => {
  test("is tried change by change against the late orders, ranked by cost, and each can become a scenario", async () => {
    for (const id of [one, other, third]) await putOrder(id, { dueAt: Date.UTC(2026, 10, 30, 9) / 1000 });
    await ended(api.app, plantId, await askForPlan(api.app, plantId, { seconds: null, steps: 60 }));
    const { state, task, findings, planId } = await run("/help", { steps: 40 });
    expect([state, task, planId]).toEqual(["done", { kind: "help" }, null]);
    if (findings?.kind !== "help") throw new Error("help was looked for");
    expect(findings.tried).toBeGreaterThan(2);
    expect(findings.tried).toBeLessThanOrEqual(12);
    expect(findings.without.lateOrders).toBeGreaterThan(0);
    const costs = findings.changes.map((each) => each.with.cost);
    expect(costs.length).toBeGreaterThan(0);
    expect(costs).toEqual(costs.toSorted((a, b) => a - b));
    expect(Math.max(...costs)).toBeLessThan(findings.without.cost);
    const [best] = findings.changes;
    if (best === undefined) throw new Error("something helps");
    const scenario = await write("Best", best.change);
    await run("/solves", { scenarioIds: [scenario.id], steps: 40 });
    const { outcome } = await scenarioOf(scenario.id);
    expect([outcome?.without, outcome?.with]).toEqual([findings.without, best.with]);
    expect(outcome?.turned).toEqual(best.turned);
  });

  test("is nothing but what makes the plan cheaper where no order is late", async () => {
    for (const id of [one, other, third]) await putOrder(id, { dueAt: Date.UTC(2026, 11, 20) / 1000 });
    const { findings } = await run("/help", { steps: 40 });
    if (findings?.kind !== "help") throw new Error("help was looked for");
    expect(findings.without.lateOrders).toBe(0);
    for (const { change, with: figures } of findings.changes) {
      expect(["add shift", "more copies"]).toContain(change.kind);
      expect(figures.cost).toBeLessThan(findings.without.cost);
    }
  });
});
