import { localPlanner, planOfDocument, type PlantMessage } from "@formweek/application";
import type { Plant } from "@formweek/capacity-model";
import { PlanProblemResponse } from "@formweek/contracts";
import { type ProblemData, auditPlan } from "@formweek/scheduler";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { type ApiServer, fill, openApiServer, plantId } from "../fixtures/api-server.ts";
import { problemOf } from "../fixtures/http-asks.ts";
import { askForPlan, ended } from "../fixtures/planning-asks.ts";
import { closeLine, one, other, saturday, scenarioAsks, third } from "../fixtures/scenario-asks.ts";

let api: ApiServer;
beforeAll(async () => {
  api = await openApiServer();
  await fill(api.app);
  await ended(api.app, plantId, await askForPlan(api.app, plantId, { seconds: null, steps: 30 }));
});
afterAll(() => api.close());

const asks = scenarioAsks(() => api);
const { get, here, take, planText, plan, ask, scenarioOf, write, workOut, adopt } = asks;
const { records, book, ownOrders, putOrder, everyKind } = asks;

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
