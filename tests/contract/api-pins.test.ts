import { localPlanner } from "@formweek/application";
import type { Order, Plant } from "@formweek/capacity-model";
import type { PlanDocument } from "@formweek/contracts";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { type ApiServer, fill, openApiServer, orders, plant, plantId } from "../fixtures/api-server.ts";
import { eventually } from "../fixtures/eventually.ts";
import { problemOf } from "../fixtures/http-asks.ts";
import { firstLot, isoAt, pinAsks } from "../fixtures/pin-asks.ts";

let api: ApiServer;
beforeAll(async () => {
  api = await openApiServer();
  await fill(api.app);
});
afterAll(() => api.close());

const { pins, hold, free, freeAll, run, planned, moveSome } = pinAsks(() => api.server);

describe("an order that is held", () => {
  test("is on its line, and at its start, in every later plan, until it is freed", async () => {
    const before = await planned();
    const { orderId, lineId } = await moveSome(before);
    expect((await pins()).pins).toMatchObject([
      { orderId, lineId, start: null, pinnedBy: localPlanner.id, idle: null },
    ]);
    const onLine = await planned();
    expect(new Set(onLine.lots.filter((lot) => lot.orderId === orderId).map((lot) => lot.lineId))).toEqual(
      new Set([lineId]),
    );
    expect(onLine.inputHash).not.toBe(before.inputHash);

    const start = laterStart(onLine, orderId, lineId);
    expect((await hold(orderId, { lineId, start })).statusCode).toBe(200);
    for (let time = 0; time < 2; time++)
      expect(firstLot(await planned(), orderId)).toMatchObject({ lineId, start });

    expect((await hold(orderId, { start })).statusCode).toBe(200);
    expect(firstLot(await planned(), orderId)).toMatchObject({ start });

    expect((await free(orderId)).statusCode).toBe(200);
    expect((await pins()).pins).toEqual([]);
    expect(JSON.stringify(await planned())).toBe(JSON.stringify(before));
  });

  test("is told to whoever watches the plant", async () => {
    const told: unknown[] = [];
    const watching = await api.app.queries.watchPlant(
      { plantId, afterSequence: null, onMessage: ({ body }) => void told.push(body) },
      localPlanner,
    );
    const { orderId } = await moveSome(await planned());
    const { revision } = await pins();
    await freeAll();
    await eventually("both are told", () => told.length >= 2);
    const changes = told.filter((body) => (body as { readonly type: string }).type === "pins-changed");
    expect(changes).toEqual([
      { type: "pins-changed", revision },
      { type: "pins-changed", revision: revision + 1 },
    ]);
    expect((await pins()).pins.map((pin) => pin.orderId)).not.toContain(orderId);
    if (watching.ok) await watching.value.close();
  });

  test("keeps its pin when two planners change pins at once: the second is told", async () => {
    const { orderId, lineId } = await moveSome(await planned());
    const { revision } = await pins();
    const stale = problemOf(await hold(orderId, { lineId, revision: revision - 1 }));
    expect(stale).toMatchObject({ code: "pins-changed", status: 409 });
    expect(problemOf(await free(orderId, revision - 1)).code).toBe("pins-changed");
    expect(await pins()).toMatchObject({ revision, pins: [{ orderId, lineId }] });
    await freeAll();
  });
});

describe("when the data change under a pin", () => {
  const changeOrder = async (order: Order, expectedRevision: number) => {
    const put = await api.app.commands.putOrders(
      { plantId, orders: [order], expectedRevision },
      localPlanner,
    );
    expect(put.ok).toBe(true);
  };
  let revision = 1;
  /** Puts the demo plant with such changes. */
  const changePlant = async (changes: Partial<Plant>) => {
    const changed = { ...plant, ...changes };
    const put = await api.app.commands.putPlant(
      { plantId, plant: changed, expectedRevision: revision },
      localPlanner,
    );
    if (!put.ok) throw new Error(put.error.cause);
    revision = put.value.revision;
  };
  const orderOf = (orderId: string): Order => {
    const order = orders.find(({ id }) => id === orderId);
    if (order === undefined) throw new Error("the order is gone");
    return order;
  };

  test("an order that stock now covers is listed as idle and does not stop the run", async () => {
    const { orderId, lineId } = await moveSome(await planned());
    const { productId } = orderOf(orderId);
    const products = plant.products.map((product) =>
      product.id === productId ? { ...product, stockPieces: 100_000_000 } : product,
    );
    await changePlant({ products });
    expect((await pins()).pins).toMatchObject([{ orderId, idle: "covered by stock" }]);
    expect((await planned()).orders.find((each) => each.orderId === orderId)?.state).toBe("covered by stock");
    await freeAll();
    const problem = problemOf(await hold(orderId, { lineId }));
    expect(problem).toMatchObject({ code: "invalid-input", faults: [{ path: "orderId" }] });
    expect(problem.cause).toMatch(/covered by stock/);
    await changePlant({});
  });

  test("a start that has passed stops the run, which says what to do", async () => {
    const lot = (await planned()).lots.find(({ lot: number }) => number === 0);
    if (lot === undefined) throw new Error("nothing is planned");
    const { orderId, lineId, start } = lot;
    expect((await hold(orderId, { lineId, start })).statusCode).toBe(200);
    await changePlant({ planFrom: "2027-03-01T06:00" });
    const ended = await run();
    expect(ended).toMatchObject({ state: "failed", problem: { code: "problem-faulty" } });
    expect(ended.problem?.cause).toContain(`Order ${orderId} is pinned to a start before the horizon.`);
    expect(ended.problem?.remedy).toMatch(/Free it/);
    expect(ended.problem?.faults).toMatchObject([{ path: orderId }]);
    await changePlant({});
    await freeAll();
    expect((await run()).state).toBe("done");
  });

  test("an order of a product that the plant lost cannot be held", async () => {
    const [order] = orders;
    if (order === undefined) throw new Error("no orders");
    await changePlant({ products: plant.products.filter(({ id }) => id !== order.productId) });
    const problem = problemOf(await hold(order.id, { lineId: plant.lines[0]?.id ?? "" }));
    expect(problem.cause).toContain(order.productId);
    await changePlant({});
  });

  test("a pin stays while its order changes; its new earliest start counts for the next pin", async () => {
    const { orderId, lineId } = await moveSome(await planned());
    const order = orderOf(orderId);
    await changeOrder({ ...order, earliestStartAt: order.dueAt - 86_400 }, 1);
    expect((await pins()).pins).toMatchObject([{ orderId, lineId }]);
    const start = isoAt((order.dueAt - 86_401) * 1000);
    const problem = problemOf(await hold(orderId, { lineId, start }));
    expect(problem).toMatchObject({ code: "invalid-input", faults: [{ path: "start" }] });
    expect(problem.cause).toMatch(/earliest start of order/);
    await changeOrder(order, 2);
    await freeAll();
  });
});

/** An hour past its start in the plan, or into the spell in which that lies. */
function laterStart(document: PlanDocument, orderId: string, lineId: string): string {
  const lot = firstLot(document, orderId);
  const wanted = Date.parse(lot?.start ?? "") + 3_600_000;
  const spell = document.lines
    .find(({ id }) => id === lineId)
    ?.open.find(([, end]) => Date.parse(end) > wanted);
  return isoAt(Math.max(wanted, Date.parse(spell?.[0] ?? "")));
}
