import { localPlanner, planOfDocument } from "@formweek/application";
import { Order } from "@formweek/capacity-model";
import { PlanProblemResponse, SolveAccepted, SolveRunResponse } from "@formweek/contracts";
import { type ProblemData, auditPlan } from "@formweek/scheduler";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { type ApiServer, ROLE_HEADER, fill, openApiServer, plantId } from "../fixtures/api-server.ts";
import { problemOf } from "../fixtures/http-asks.ts";
import { askForPlan, ended } from "../fixtures/planning-asks.ts";
import { stepAsks } from "../fixtures/step-asks.ts";

let api: ApiServer;
beforeAll(async () => {
  api = await openApiServer();
  await fill(api.app);
  await ended(api.app, plantId, await askForPlan(api.app, plantId, { seconds: null, steps: 20 }));
});
afterAll(() => api.close());

const { get, here, ask, take, planText, plan } = stepAsks(() => api.server);

const post = (path: string, payload: Readonly<Record<string, unknown>>, role?: string) =>
  api.server.inject({
    method: "POST",
    url: `/api/plants/${plantId}${path}`,
    payload,
    headers: role === undefined ? {} : { [ROLE_HEADER]: role },
  });

const runAt = async (runId: string): Promise<SolveRunResponse> =>
  SolveRunResponse.parse((await get(`/solves/${runId}`)).json());

/** Starts a run and waits for its end. */
async function run(path: string, payload: Readonly<Record<string, unknown>>): Promise<SolveRunResponse> {
  const answer = await post(path, payload);
  expect([answer.statusCode, answer.body]).toMatchObject([202, expect.any(String)]);
  const { runId } = SolveAccepted.parse(answer.json());
  await ended(api.app, plantId, runId);
  return runAt(runId);
}

/** Brings an order late: it goes to the end of its line, behind everything. */
async function lateOrder(): Promise<string> {
  const { document } = await plan();
  const late = document.orders.find((order) => order.lateSeconds > 0);
  if (late !== undefined) return late.orderId;
  for (const lot of document.lots) {
    const answer = await ask("edits", {
      edit: { kind: "move", orderId: lot.orderId, lot: lot.lot, lineId: lot.lineId, before: null },
    });
    if (answer.statusCode !== 200) continue;
    const made = (await plan()).document.orders.find((order) => order.lateSeconds > 0);
    if (made !== undefined) return made.orderId;
  }
  throw new Error("no order can be brought late");
}

async function isAudited(): Promise<void> {
  const { planId, document } = await plan();
  const { problem } = PlanProblemResponse.parse((await get(`/plans/${planId}/problem`)).json());
  const data = problem as unknown as ProblemData;
  expect(auditPlan(data, planOfDocument(document, data))).toEqual([]);
}

const lateIn = async (orderId: string): Promise<number> =>
  (await plan()).document.orders.find((order) => order.orderId === orderId)?.lateSeconds ?? 0;

describe("remedies for a late order", () => {
  test("are found with what each comes to; applying one gives just that plan, and an undo takes it back", async () => {
    const orderId = await lateOrder();
    const before = await planText();
    const { revision } = await here();
    const { task, state, findings, runId } = await run("/remedies", { revision, orderId, steps: 120 });
    expect(task).toMatchObject({ kind: "remedies", orderId });
    expect(state).toBe("done");
    if (findings?.kind !== "remedies") throw new Error("remedies were looked for");
    expect(findings.orderLateSeconds).toBe(await lateIn(orderId));
    expect(findings.before.cost).toBeCloseTo((await plan()).document.objective.total, 6);
    expect(findings.remedies.length).toBeGreaterThan(0);
    const ranks = findings.remedies.map(({ action }) =>
      action.kind === "edit" || action.kind === "plan on" ? 0 : 1,
    );
    expect(ranks).toEqual(ranks.toSorted((a, b) => a - b));
    for (const rank of [0, 1]) {
      const costs = findings.remedies.filter((_, i) => ranks[i] === rank).map(({ after }) => after.cost);
      expect(costs).toEqual(costs.toSorted((a, b) => a - b));
    }
    for (const [place, remedy] of findings.remedies.entries()) {
      const { action, after } = remedy;
      if (action.kind === "change") {
        const refusal = problemOf(await ask("choose", { runId, place }));
        expect(refusal).toMatchObject({ code: "not-found", faults: [{ path: "place" }] });
        continue;
      }
      if (action.kind === "edit") await take("edits", { edit: action.edit });
      else await take("choose", { runId, place });
      const { document } = await plan();
      expect(document.objective.total).toBeCloseTo(after.cost, 6);
      expect(document.summary.late).toBe(after.lateOrders);
      expect(await lateIn(orderId)).toBe(remedy.orderLateSeconds);
      await isAudited();
      if (action.kind === "plan on")
        expect((await here()).steps[0]).toMatchObject({
          kind: "edit",
          edit: { kind: "choose", runId, place, orderId },
        });
      await take("undo");
      expect(await planText()).toBe(before);
    }
  });

  test("bad asks are refused by name: an order that is not there or not late, an older plan, a place that is not there", async () => {
    const { revision } = await here();
    const unknown = problemOf(await post("/remedies", { revision, orderId: "nobody's" }));
    expect(unknown).toMatchObject({ status: 404, cause: expect.stringContaining("nobody's") as string });
    const inTime = (await plan()).document.orders.find((order) => order.state === "on time")?.orderId ?? "";
    const notLate = problemOf(await post("/remedies", { revision, orderId: inTime }));
    expect(notLate).toMatchObject({ code: "order-not-late", status: 422, faults: [{ path: "orderId" }] });
    expect(notLate.cause).toContain(inTime);
    const old = problemOf(await post("/remedies", { revision: revision - 1, orderId: inTime }));
    expect(old).toMatchObject({ code: "working-plan-changed", status: 409 });
    const nothing = problemOf(await ask("choose", { runId: "nobody's", place: 0 }));
    expect(nothing).toMatchObject({ status: 404, cause: expect.stringContaining("nobody's") as string });
    const plain = await askForPlan(api.app, plantId, { seconds: null, steps: 5 });
    await ended(api.app, plantId, plain);
    expect(problemOf(await ask("choose", { runId: plain, place: 0 }))).toMatchObject({ status: 404 });
    expect((await post("/remedies", { revision, orderId: inTime }, "sales")).statusCode).toBe(403);
  });

  test("a search that is stopped keeps what it has; a second run waits for its end", async () => {
    const orderId = await lateOrder();
    const { revision } = await here();
    const answer = await post("/remedies", { revision, orderId, seconds: 600 });
    const { runId } = SolveAccepted.parse(answer.json());
    const second = problemOf(await post("/trade-offs", { steps: 10 }));
    expect(second).toMatchObject({ code: "solve-in-progress", status: 409 });
    await api.app.commands.stopSolve({ plantId, runId, keep: null }, localPlanner);
    await ended(api.app, plantId, runId);
    const { state, findings, planId } = await runAt(runId);
    expect([state, planId]).toEqual(["stopped", null]);
    expect(findings?.kind ?? "remedies").toBe("remedies");
  });
});

describe("plans to choose from", () => {
  test("none beats another; the chosen one is worked on with the figures that were shown, and can be taken back", async () => {
    const before = await planText();
    const { findings, runId } = await run("/trade-offs", { steps: 270 });
    if (findings?.kind !== "trade-off") throw new Error("plans were compared");
    const { plans, criteria } = findings;
    expect(criteria).toEqual(expect.arrayContaining(["lateness", "changes", "stability"]));
    for (const one of plans)
      for (const other of plans)
        expect(one !== other && one.values.every((value, i) => value < (other.values[i] ?? 0))).toBe(false);
    const place = plans.length - 1;
    await take("choose", { runId, place });
    const { document } = await plan();
    expect(document.summary.late).toBe(plans[place]?.figures.lateOrders);
    expect(document.objective.terms.find(({ name }) => name === "starts moved")?.price ?? 0).toBe(0);
    await isAudited();
    await take("undo");
    expect(await planText()).toBe(before);
  });

  test("found for other orders they are not taken up any more", async () => {
    const { runId } = await run("/trade-offs", { steps: 30 });
    const book = await api.app.queries.getOrderBook({ plantId }, localPlanner);
    if (!book.ok) throw new Error("the plant has a book");
    const { revision: expectedRevision } = book.value;
    const [order] = book.value.orders;
    if (order === undefined) throw new Error("the book has orders");
    const changed = Order.parse({ ...order, weight: order.weight + 1 });
    const put = await api.app.commands.putOrders(
      { plantId, orders: [changed], expectedRevision },
      localPlanner,
    );
    expect(put.ok).toBe(true);
    const before = await here();
    expect(problemOf(await ask("choose", { runId, place: 0 }))).toMatchObject({ code: "findings-outdated" });
    expect(await here()).toEqual(before);
  });
});

describe("what matters more", () => {
  test("is asked for with a run; its plan's cost is told at the plant's own prices, and keeps all rules", async () => {
    for (const favour of ["lateness", "changes", "overtime", "calm"]) {
      const { state, task } = await run("/solves", { steps: 60, favour });
      expect([state, task]).toEqual(["done", { kind: "plan", favour }]);
      const { terms } = (await plan()).document.objective;
      const { problem } = PlanProblemResponse.parse(
        (await get(`/plans/${(await plan()).planId}/problem`)).json(),
      );
      const prices = (problem as unknown as ProblemData).objective;
      expect(terms.find(({ name }) => name === "change time")?.price).toBe(prices.changePerMachineHour);
      await isAudited();
    }
    expect(problemOf(await post("/solves", { steps: 5, favour: "beauty" }))).toMatchObject({ status: 400 });
  });

  test("calm leaves more where it is than a new plan does", async () => {
    const placed = async (): Promise<ReadonlyMap<string, string>> =>
      new Map(
        (await plan()).document.lots.map((lot) => [
          `${lot.orderId} ${lot.lot}`,
          `${lot.lineId} ${lot.start}`,
        ]),
      );
    const standing = await placed();
    const kept = async (payload: Readonly<Record<string, unknown>>): Promise<number> => {
      await run("/solves", payload);
      const after = await placed();
      await take("undo");
      return [...standing].filter(([lot, place]) => after.get(lot) === place).length;
    };
    const calm = await kept({ steps: 200, favour: "calm" });
    const anew = await kept({ steps: 200, seed: 9 });
    expect(calm).toBeGreaterThan(anew);
  });
});

describe("runs that the plan given out freezes", () => {
  test("stay in place in every plan that is found, and in the one that is chosen", async () => {
    const { planId, document } = await plan();
    const until = new Date(Date.parse(document.horizon.start) + 16 * 3_600_000);
    const frozenUntil = until.toISOString().replace(".000Z", "Z");
    await take("publish", { planId, note: "", frozenUntil });
    const placesOf = ({ lots }: typeof document): readonly string[] =>
      lots
        .filter(({ lot }) => lot === 0)
        .map(({ orderId, lineId, start }) => `${orderId} ${lineId} ${start}`);
    const frozen = placesOf(document).filter((place) => (place.split(" ")[2] ?? "") < frozenUntil);
    expect(frozen.length).toBeGreaterThan(2);
    const { findings, runId } = await run("/trade-offs", { steps: 90 });
    if (findings?.kind !== "trade-off") throw new Error("plans were compared");
    for (const place of findings.plans.keys()) {
      await take("choose", { runId, place });
      expect(placesOf((await plan()).document)).toEqual(expect.arrayContaining([...frozen]));
      await take("undo");
    }
  });
});
