import {
  OrderBookResponse,
  OrderTerms,
  PlanListResponse,
  PlanResponse,
  PlantResponse,
  ProvisionalResponse,
  RatesResponse,
  SolveRunResponse,
} from "@formweek/contracts";
import { Plant } from "@formweek/capacity-model";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { type ApiServer, fill, openApiServer, orders, plant, plantId } from "../fixtures/api-server.ts";
import { eventually } from "../fixtures/eventually.ts";
import { problemOf } from "../fixtures/http-asks.ts";

let api: ApiServer;
beforeAll(async () => {
  api = await openApiServer();
});
afterAll(() => api.close());

const base = `/api/plants/${plantId}`;
const get = (path: string) => api.server.inject({ url: `${base}${path}` });
const post = (path: string, payload?: object) =>
  api.server.inject({ method: "POST", url: `${base}${path}`, ...(payload === undefined ? {} : { payload }) });

async function startRun(wish: object): Promise<string> {
  const answer = await post("/solves", wish);
  expect(answer.statusCode).toBe(202);
  return answer.json<{ readonly runId: string }>().runId;
}
const runOf = async (runId: string) => SolveRunResponse.parse((await get(`/solves/${runId}`)).json());
async function endOf(runId: string) {
  await eventually("the run ends", async () => !["queued", "running"].includes((await runOf(runId)).state));
  return runOf(runId);
}

describe("before there is anything", () => {
  test("an empty store lists no plants and knows none", async () => {
    expect((await api.server.inject({ url: "/api/plants" })).json()).toEqual([]);
    for (const path of ["", "/orders", "/rates", "/plans", "/events", "/orders.csv", "/plant.xlsx"]) {
      expect(problemOf(await get(path)), path).toMatchObject({ code: "not-found", status: 404 });
    }
    expect(problemOf(await post("/solves", {})).code).toBe("not-found");
  });
});

describe("a plant with orders", () => {
  beforeAll(() => fill(api.app));

  test("is listed and comes back as it went in", async () => {
    expect((await api.server.inject({ url: "/api/plants" })).json()).toEqual([
      { id: plantId, name: plant.name, timeZone: plant.timeZone, currency: plant.currency, revision: 1 },
    ]);
    const answer = PlantResponse.parse((await get("")).json());
    expect(Plant.parse(answer.plant)).toEqual(plant);
  });

  test("has a rate or a reason for every line with every mould and its products", async () => {
    const [line, mould] = [plant.lines[0], plant.moulds[0]];
    const all = RatesResponse.parse((await get("/rates")).json());
    const pairs = plant.products.reduce(
      (sum, product) => sum + new Set(product.moulds.map((choice) => choice.mouldId)).size,
      0,
    );
    expect(all).toHaveLength(plant.lines.length * pairs);
    for (const { fits, refusals, rate } of all) {
      expect(refusals.length > 0).toBe(rate === null);
      if (rate !== null)
        expect(fits && rate.cyclesPerMin > 0 && rate.piecesPerHour > 0 && rate.skeletonShare < 1).toBe(true);
    }
    const narrowed = RatesResponse.parse(
      (await get(`/rates?lineId=${line?.id}&mouldId=${mould?.id}`)).json(),
    );
    expect(narrowed).toEqual(all.filter((rate) => rate.lineId === line?.id && rate.mouldId === mould?.id));
    expect(narrowed.length).toBeGreaterThan(0);
    expect(problemOf(await get("/rates?lineId=")).faults[0]?.path).toBe("lineId");
  });

  test("has its orders in the book, not planned yet", async () => {
    const book = OrderBookResponse.parse((await get("/orders")).json());
    expect(book.revision).toBe(1);
    expect(book.orders.map(({ id }) => id).sort(compareText)).toEqual(
      orders.map(({ id }) => id).sort(compareText),
    );
    expect(new Set(book.orders.map(({ state }) => state))).toEqual(new Set(["not planned yet"]));
    expect(book.planInputs).toBeNull();
    const due = book.orders.map(({ dueAt }) => dueAt);
    expect(due).toEqual([...due].sort(compareText));
  });

  test("has no plan at first, and no run of an unknown id", async () => {
    expect((await get("/plans")).json()).toEqual([]);
    expect(problemOf(await get("/plans/latest")).code).toBe("not-found");
    expect(problemOf(await get("/plans/unknown")).code).toBe("not-found");
    expect(problemOf(await get("/solves/unknown")).code).toBe("not-found");
    expect(problemOf(await post("/solves/unknown/stop")).code).toBe("not-found");
  });

  test("is planned: the run ends, the plan is served, the book shows its states", async () => {
    const runId = await startRun({ steps: 50, seed: 7 });
    const run = await endOf(runId);
    expect(run).toMatchObject({ state: "done", problem: null });
    const latest = PlanResponse.parse((await get("/plans/latest")).json());
    expect(latest.planId).toBe(run.planId);
    expect(latest.document).toMatchObject({ format: "formweek-plan/1", seed: 7, plant: { id: plantId } });
    expect(latest.document.orders).toHaveLength(orders.length);
    expect((await get(`/plans/${latest.planId}`)).json()).toEqual((await get("/plans/latest")).json());
    const heads = PlanListResponse.parse((await get("/plans")).json());
    expect(heads.map(({ planId }) => planId)).toEqual([latest.planId]);
    expect(heads[0]?.summary).toEqual(latest.document.summary);
    const book = OrderBookResponse.parse((await get("/orders")).json());
    const planned = new Map(latest.document.orders.map((order) => [order.orderId, order]));
    for (const order of book.orders) {
      expect(order.state).toBe(planned.get(order.id)?.state);
      expect(order.finish).toBe(planned.get(order.id)?.finish);
    }
    expect(book.planInputs).toBe("same");
  });

  test("says so when orders are others than the plan was made from, and no longer when they are as before", async () => {
    const planInputs = async () => OrderBookResponse.parse((await get("/orders")).json()).planInputs;
    const [order] = OrderBookResponse.parse((await get("/orders")).json()).orders.map((booked) =>
      OrderTerms.parse(booked),
    );
    const heavier = { ...order, weight: 7 };
    await post("/orders/changes", { changes: [{ before: order, after: heavier }] });
    expect(await planInputs()).toBe("changed");
    await post("/orders/changes", { changes: [{ before: heavier, after: order }] });
    expect(await planInputs()).toBe("same");
  });

  test("gives the same plan for the same seed and steps", async () => {
    const documents = [];
    for (let time = 0; time < 2; time++) {
      await endOf(await startRun({ steps: 80, seed: 3, threads: 1 }));
      documents.push(PlanResponse.parse((await get("/plans/latest")).json()).document);
    }
    expect(JSON.stringify(documents[0])).toBe(JSON.stringify(documents[1]));
  });

  test("shows a run's best plan so far, and keeps the one that a stop names", async () => {
    const runId = await startRun({ seconds: 600 });
    await eventually("a plan is there", async () => (await runOf(runId)).provisional !== null);
    const look = async () => ProvisionalResponse.parse((await get(`/solves/${runId}/plan`)).json()).plan;
    const seen = await look();
    if (seen === null) throw new Error("the plan is gone while the run goes on");
    expect(seen.document.late).toEqual([]);
    expect(problemOf(await get("/solves/unknown/plan"))).toMatchObject({ code: "not-found", status: 404 });
    const stop = (payload: object) => post(`/solves/${runId}/stop`, payload);
    expect(problemOf(await stop({ keep: 1_000_000 }))).toMatchObject({ code: "plan-outrun", status: 409 });
    for (const keep of [0, 1.5, "1"])
      expect(problemOf(await stop({ keep }))).toMatchObject({ code: "invalid-request", status: 400 });
    expect((await runOf(runId)).state).toBe("running");
    expect((await stop({ keep: seen.number })).statusCode).toBe(202);
    const run = await endOf(runId);
    expect(run).toMatchObject({ state: "stopped", provisional: null });
    const latest = PlanResponse.parse((await get("/plans/latest")).json());
    expect(latest.planId).toBe(run.planId);
    expect(latest.document.lots).toEqual(seen.document.lots);
    expect(await look()).toBeNull();
  });

  test("takes one run at a time, and a stopped run keeps its best plan", async () => {
    const runId = await startRun({ seconds: 600 });
    const problem = problemOf(await post("/solves", { seconds: 1 }));
    expect(problem).toMatchObject({ code: "solve-in-progress", status: 409 });
    await eventually("a plan is found", async () => (await runOf(runId)).curve.length > 0);
    expect((await post(`/solves/${runId}/stop`)).statusCode).toBe(202);
    const run = await endOf(runId);
    expect(run.state).toBe("stopped");
    expect(run.progress?.share).toBeLessThan(1);
    const latest = PlanResponse.parse((await get("/plans/latest")).json());
    expect(latest.planId).toBe(run.planId);
    expect((await post(`/solves/${runId}/stop`)).statusCode).toBe(202);
    expect((await runOf(runId)).state).toBe("stopped");
  });
});

const compareText = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);
