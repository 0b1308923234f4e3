import { localPlanner, planOfDocument, type PlantMessage } from "@formweek/application";
import { Order, Plant } from "@formweek/capacity-model";
import {
  OrderBookResponse,
  PlanProblemResponse,
  PlantResponse,
  Scenario,
  type ScenarioChange,
  ScenarioListResponse,
  SolveAccepted,
  SolveRunResponse,
} from "@formweek/contracts";
import { type ProblemData, auditPlan } from "@formweek/scheduler";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { type ApiServer, fill, openApiServer, orders, plantId } from "../fixtures/api-server.ts";
import { eventually } from "../fixtures/eventually.ts";
import { problemOf } from "../fixtures/http-asks.ts";
import { askForPlan, ended, runOf } from "../fixtures/planning-asks.ts";
import { stepAsks } from "../fixtures/step-asks.ts";

let api: ApiServer;
beforeAll(async () => {
  api = await openApiServer();
  await fill(api.app);
  await ended(api.app, plantId, await askForPlan(api.app, plantId, { seconds: null, steps: 30 }));
});
afterAll(() => api.close());

const { get, here, take, planText, plan } = stepAsks(() => api.server);
const ask = (method: "POST" | "PUT" | "DELETE", path: string, payload?: Readonly<Record<string, unknown>>) =>
  api.server.inject({
    method,
    url: `/api/plants/${plantId}/scenarios${path}`,
    ...(payload === undefined ? {} : { payload }),
  });

const list = async () => ScenarioListResponse.parse((await get("/scenarios")).json());
const scenarioOf = async (id: string): Promise<Scenario> => {
  const found = (await list()).find((each) => each.id === id);
  if (found === undefined) throw new Error("the scenario is gone");
  return found;
};
async function write(name: string, ...changes: readonly ScenarioChange[]): Promise<Scenario> {
  const answer = await ask("POST", "", { name, changes });
  expect([answer.statusCode, answer.body]).toMatchObject([201, expect.any(String)]);
  return Scenario.parse(answer.json());
}
async function run(path: string, payload: Readonly<Record<string, unknown>>): Promise<SolveRunResponse> {
  const answer = await ask("POST", path, payload);
  expect([answer.statusCode, answer.body]).toMatchObject([202, expect.any(String)]);
  const { runId } = SolveAccepted.parse(answer.json());
  await ended(api.app, plantId, runId);
  return SolveRunResponse.parse((await get(`/solves/${runId}`)).json());
}
const workOut = (...scenarios: readonly Scenario[]) =>
  run("/solves", { scenarioIds: scenarios.map(({ id }) => id), steps: 20 });
const adopt = async (id: string, part: Readonly<Record<string, unknown>> = {}) =>
  ask("POST", `/${id}/adoption`, {
    revision: (await here()).revision,
    scenarioRevision: (await scenarioOf(id)).revision,
    ...part,
  });
const records = async () => {
  const { revision, plant } = PlantResponse.parse((await get("")).json());
  return { revision, plant: Plant.parse(plant) };
};
const book = async () => OrderBookResponse.parse((await get("/orders")).json());
const ownOrders = async () => (await book()).orders.map(({ id, pieces, dueAt }) => ({ id, pieces, dueAt }));
const putOrder = async (id: string, part: Partial<Order>): Promise<void> => {
  const known = await api.app.queries.getOrderBook({ plantId }, localPlanner);
  if (!known.ok) throw new Error("the plant has a book");
  const order = known.value.orders.find((each) => each.id === id);
  const input = {
    plantId,
    orders: [Order.parse({ ...order, ...part })],
    expectedRevision: known.value.revision,
  };
  expect((await api.app.commands.putOrders(input, localPlanner)).ok).toBe(true);
};

const [one, other, third] = orders.map(({ id }): string => id) as [string, string, string];
const closeLine: ScenarioChange = {
  kind: "close line",
  closure: { lineId: "L1", from: "2026-12-01T06:00", to: "2026-12-03T06:00", reason: "Bearing" },
};
const saturday: ScenarioChange = {
  kind: "add shift",
  shift: {
    date: "2026-12-05",
    name: "early",
    start: "06:00",
    end: "14:00",
    breaks: [],
    lineIds: ["L1"],
    teamIds: ["setters-B"],
    operators: [{ poolId: "operators", heads: 1.5 }],
  },
};
const rush: ScenarioChange = {
  kind: "rush order",
  order: {
    id: "RUSH-1",
    customer: "Dairy of the north",
    productId: orders[0]?.productId ?? "",
    pieces: 30_000,
    dueAt: "2026-12-02T12:00:00Z",
    earliestStartAt: null,
    weight: 2,
    kind: "firm",
    underTolerance: 0,
    overTolerance: 0.05,
    partsAllowed: false,
  },
};
const everyKind = async (): Promise<readonly ScenarioChange[]> => {
  const { plant } = await records();
  const mouldId = plant.provenRates[0]?.mouldId ?? "";
  return [
    closeLine,
    saturday,
    { kind: "more copies", mouldId, more: 1 },
    {
      kind: "another team",
      likeTeamId: "setters-A",
      name: "Third team",
      from: "2026-12-01T05:00:00Z",
      to: "2026-12-02T13:00:00Z",
    },
    { kind: "cycle rate", lineId: "L1", mouldId, cyclesPerMin: 9.5 },
    { kind: "cancel order", orderId: one },
    { kind: "change order", orderId: other, pieces: 20_000, dueAt: "2026-12-04T12:00:00Z" },
    rush,
  ];
};

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

describe("a scenario that is adopted", () => {
  test("makes all its changes with the plan that was shown, in one step that goes back and forth byte for byte", async () => {
    await ended(api.app, plantId, await askForPlan(api.app, plantId, { seconds: null, steps: 30 }));
    const scenario = await write("Everything", ...(await everyKind()));
    await workOut(scenario);
    const { outcome } = await scenarioOf(scenario.id);
    const before = {
      plan: await planText(),
      plant: JSON.stringify((await records()).plant),
      orders: await ownOrders(),
    };
    const heard: PlantMessage[] = [];
    const watching = await api.app.queries.watchPlant(
      { plantId, afterSequence: null, onMessage: (message) => void heard.push(message) },
      localPlanner,
    );
    const answer = await adopt(scenario.id);
    expect([answer.statusCode, answer.body]).toMatchObject([200, expect.any(String)]);
    const { document, planId } = await plan();
    expect(document.objective.total).toBeCloseTo(outcome?.with.cost ?? 0, 6);
    expect(document.summary.late).toBe(outcome?.with.lateOrders);
    const after = {
      plan: await planText(),
      plant: JSON.stringify((await records()).plant),
      orders: await ownOrders(),
    };
    const { plant } = await records();
    expect(plant.lineClosures).toContainEqual(closeLine.closure);
    expect(plant.addedShifts).toEqual([saturday.shift]);
    expect(plant.setterTeams).toHaveLength(3);
    expect(after.orders.map(({ id }) => id)).toContain("RUSH-1");
    expect(after.orders.map(({ id }) => id)).not.toContain(one);
    expect(after.orders).toContainEqual({ id: other, pieces: 20_000, dueAt: "2026-12-04T12:00:00Z" });
    expect((await book()).planInputs).toBe("same");
    const served = PlanProblemResponse.parse((await get(`/plans/${planId}/problem`)).json());
    const data = served.problem as unknown as ProblemData;
    expect(auditPlan(data, planOfDocument(document, data))).toEqual([]);
    expect((await here()).steps[0]).toMatchObject({
      kind: "edit",
      edit: { kind: "adopt", scenarioId: scenario.id, name: "Everything" },
    });
    expect(await scenarioOf(scenario.id)).toMatchObject({
      adopted: { by: localPlanner.id },
      outcome: { isCurrent: false },
    });
    const told = heard.map(({ body }) => body.type);
    expect(told).toEqual(
      expect.arrayContaining([
        "plant-changed",
        "orders-changed",
        "scenarios-changed",
        "working-plan-changed",
      ]),
    );
    if (watching.ok) await watching.value.close();

    for (let round = 0; round < 2; round++) {
      await take("undo");
      expect({
        plan: await planText(),
        plant: JSON.stringify((await records()).plant),
        orders: await ownOrders(),
      }).toEqual(before);
      expect((await scenarioOf(scenario.id)).adopted).toBeNull();
      await take("redo");
      expect({
        plan: await planText(),
        plant: JSON.stringify((await records()).plant),
        orders: await ownOrders(),
      }).toEqual(after);
      expect((await scenarioOf(scenario.id)).adopted).not.toBeNull();
    }
    // what was given out and changed by hand on top of it goes first
    const lot = document.lots[0];
    await take("edits", { edit: { kind: "take out", orderId: lot?.orderId } });
    await take("publish", { planId: (await here()).planId, note: "" });
    await take("undo");
    await take("undo");
    expect(JSON.stringify((await records()).plant)).toBe(before.plant);
    await ask("DELETE", `/${scenario.id}?revision=1`);
  });

  test("is refused, and nothing changes, where it was not worked out or anything has moved on since", async () => {
    const scenario = await write("Refused", closeLine, {
      kind: "change order",
      orderId: other,
      pieces: 10_000,
      dueAt: null,
    });
    const state = async () => [
      await planText(),
      (await get("")).body,
      JSON.stringify(await ownOrders()),
      JSON.stringify(await here()),
    ];
    const isRefused = async (code: string, named: string, part = {}): Promise<void> => {
      const before = await state();
      const refusal = problemOf(await adopt(scenario.id, part));
      expect(refusal).toMatchObject({ code, status: 409 });
      expect(refusal.cause).toContain(named);
      expect(await state()).toEqual(before);
    };
    await isRefused("scenario-outdated", "not been worked out");
    await workOut(scenario);
    await isRefused("scenario-changed", "Refused", { scenarioRevision: 7 });
    const { revision } = await here();
    await take("publish", { planId: (await here()).planId, note: "" });
    await isRefused("working-plan-changed", "gave it out", { revision });
    await isRefused("scenario-outdated", "working plan");
    await workOut(scenario);
    await putOrder(third, { weight: 5 });
    await isRefused("scenario-outdated", "orders");
    await workOut(scenario);
    await ask("PUT", `/${scenario.id}`, { name: "Rewritten", changes: [closeLine], revision: 1 });
    await isRefused("scenario-outdated", "rewritten");
    expect(
      problemOf(await ask("POST", "/X/adoption", { revision: (await here()).revision, scenarioRevision: 1 })),
    ).toMatchObject({ status: 404 });
    await workOut(scenario);
    const { revision: standing } = await here();
    const twice = await Promise.all([
      adopt(scenario.id, { revision: standing }),
      adopt(scenario.id, { revision: standing }),
    ]);
    expect(twice.map(({ statusCode }) => statusCode).toSorted((a, b) => a - b)).toEqual([200, 409]);
    expect((await records()).plant.lineClosures).toHaveLength(1);
    await take("undo");
    await ask("DELETE", `/${scenario.id}?revision=2`);
  });

  test("is not taken back over what others changed in the same records or orders since, which is named", async () => {
    const scenario = await write("Taken back", closeLine, {
      kind: "change order",
      orderId: other,
      pieces: 10_000,
      dueAt: null,
    });
    await workOut(scenario);
    const before = (await ownOrders()).find(({ id }) => id === other);
    expect((await adopt(scenario.id)).statusCode).toBe(200);
    await putOrder(other, { pieces: 11_000 });
    const { revision } = await here();
    const undo = () =>
      api.server.inject({
        method: "POST",
        url: `/api/plants/${plantId}/working-plan/undo`,
        payload: { revision },
      });
    const ofOrder = problemOf(await undo());
    expect(ofOrder).toMatchObject({ code: "order-book-changed", status: 409 });
    expect(ofOrder.faults).toMatchObject([
      { path: `order ${other}, pieces`, cause: { now: "11000", seen: "10000" } },
    ]);
    expect((await records()).plant.lineClosures).toHaveLength(1);
    await putOrder(other, { pieces: 10_000 });
    const { plant, revision: expectedRevision } = await records();
    const put = async (lineClosures: Plant["lineClosures"], expected: number) =>
      api.app.commands.putPlant(
        { plantId, plant: { ...plant, lineClosures }, expectedRevision: expected },
        localPlanner,
      );
    const longer = plant.lineClosures.map((closure) => ({ ...closure, to: "2026-12-04T06:00" }));
    expect((await put(longer, expectedRevision)).ok).toBe(true);
    const ofPlant = problemOf(await undo());
    expect(ofPlant).toMatchObject({ code: "plant-changed", status: 409 });
    expect(ofPlant.cause).toContain("closures of its lines");
    expect((await put(plant.lineClosures, expectedRevision + 1)).ok).toBe(true);
    expect((await undo()).statusCode).toBe(200);
    expect((await records()).plant.lineClosures).toEqual([]);
    expect((await ownOrders()).find(({ id }) => id === other)).toEqual(before);
    await ask("DELETE", `/${scenario.id}?revision=1`);
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

  test("is nothing where no order is late", async () => {
    for (const id of [one, other, third]) await putOrder(id, { dueAt: Date.UTC(2026, 11, 20) / 1000 });
    const { findings } = await run("/help", { steps: 40 });
    expect(findings).toMatchObject({ kind: "help", without: { lateOrders: 0 }, tried: 0, changes: [] });
  });
});
