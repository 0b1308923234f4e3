import { localPlanner } from "@formweek/application";
import { OrderBookResponse, OrderBookRevision, OrderTerms, type OrderChange } from "@formweek/contracts";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { type ApiServer, ROLE_HEADER, fill, openApiServer, plantId } from "../fixtures/api-server.ts";
import { eventually } from "../fixtures/eventually.ts";
import { problemOf } from "../fixtures/http-asks.ts";

let api: ApiServer;
beforeAll(async () => {
  api = await openApiServer();
  await fill(api.app);
});
afterAll(() => api.close());

const book = async (): Promise<OrderBookResponse> => {
  const answer = await api.server.inject({ url: `/api/plants/${plantId}/orders` });
  return OrderBookResponse.parse(answer.json());
};
const terms = async (): Promise<readonly OrderTerms[]> =>
  (await book()).orders.map((order) => OrderTerms.parse(order));
const some = async (): Promise<OrderTerms> => {
  const [order] = await terms();
  if (order === undefined) throw new Error("the book is empty");
  return order;
};
const ask = (changes: readonly unknown[], headers: Readonly<Record<string, string>> = {}) =>
  api.server.inject({
    method: "POST",
    url: `/api/plants/${plantId}/orders/changes`,
    headers,
    payload: { changes },
  });
const change = async (changes: readonly OrderChange[]): Promise<number> => {
  const answer = await ask(changes);
  expect(answer.statusCode, answer.body).toBe(200);
  return OrderBookRevision.parse(answer.json()).revision;
};
const turned = (changes: readonly OrderChange[]): readonly OrderChange[] =>
  changes.map(({ before, after }) => ({ before: after, after: before }));

/** Asks what must be refused, and holds that it changed nothing. */
const refusedWith = async (changes: readonly unknown[]) => {
  const before = await book();
  const problem = problemOf(await ask(changes));
  expect(await book()).toEqual(before);
  return problem;
};

describe("orders changed by hand", () => {
  test("are changed, added and removed at once, and the same turned round takes all of it back", async () => {
    const before = await book();
    const [first, second] = await terms();
    if (first === undefined || second === undefined) throw new Error("too few orders");
    const changes: readonly OrderChange[] = [
      { before: first, after: { ...first, pieces: first.pieces + 1000, weight: 3, customer: "Hall & Sons" } },
      { before: second, after: null },
      { before: null, after: { ...second, id: "NEW-1", earliestStartAt: null, kind: "forecast" } },
    ];
    expect(await change(changes)).toBe(before.revision + 1);
    const changed = new Map((await terms()).map((order) => [order.id, order]));
    for (const { before: old, after } of changes)
      expect(changed.get(after?.id ?? old?.id ?? "") ?? null).toEqual(after);
    await change(turned(changes));
    expect({ ...(await book()), revision: 0 }).toEqual({ ...before, revision: 0 });
  });

  test("by two planners at once: an order that neither saw changed is refused with both versions", async () => {
    const [order, other] = await terms();
    if (order === undefined || other === undefined) throw new Error("too few orders");
    const theirs = { ...order, pieces: order.pieces + 500, dueAt: "2026-12-24T11:00:00Z" };
    await change([{ before: order, after: theirs }]);
    const problem = await refusedWith([
      { before: other, after: { ...other, weight: 9 } },
      { before: order, after: { ...order, pieces: order.pieces + 900 } },
    ]);
    expect(problem).toMatchObject({ code: "order-book-changed", status: 409 });
    expect(problem.cause).toContain(`order ${order.id}`);
    expect(problem.faults.map(({ path }) => path)).toEqual([
      `order ${order.id}, pieces`,
      `order ${order.id}, dueAt`,
    ]);
    expect(problem.faults[0]?.problem).toContain(`${theirs.pieces}`);
    expect(problem.faults[0]?.problem).toContain(`${order.pieces}`);
    expect(problem.faults[1]?.problem).toContain("2026-12-24T12:00");
    await change([{ before: other, after: { ...other, weight: 9 } }]);
    await change([
      { before: theirs, after: order },
      { before: { ...other, weight: 9 }, after: other },
    ]);
  });

  test("are refused where one was removed, or added, in the meantime", async () => {
    const order = await some();
    await change([{ before: order, after: null }]);
    const gone = await refusedWith([{ before: order, after: { ...order, pieces: 7 } }]);
    expect(gone.faults).toMatchObject([
      { path: `order ${order.id}`, problem: "is not in the book any more" },
    ]);
    await change([{ before: null, after: order }]);
    const there = await refusedWith([{ before: null, after: { ...order, pieces: 7 } }]);
    expect(there.faults).toMatchObject([{ path: `order ${order.id}`, problem: "is in the book already" }]);
  });

  test("name every field that is out of its range, and change nothing", async () => {
    const order = await some();
    const bad = { pieces: 0.5, weight: -1, kind: "maybe", overTolerance: 1.5, customer: " " };
    const problem = await refusedWith([{ before: order, after: { ...order, ...bad } }]);
    expect(problem).toMatchObject({ code: "invalid-input", status: 422 });
    expect(new Set(problem.faults.map(({ path }) => path))).toEqual(
      new Set(Object.keys(bad).map((field) => `order ${order.id}, ${field}`)),
    );
    const pieces = problem.faults.find(({ path }) => path.endsWith("pieces"));
    expect(pieces?.problem).toContain("0.5");
    expect(pieces?.remedy).toContain("whole pieces");
  });

  test("must fit the plant", async () => {
    const order = await some();
    const unknown = await refusedWith([{ before: order, after: { ...order, productId: "no such" } }]);
    expect(unknown).toMatchObject({ code: "invalid-input", status: 422 });
    expect(unknown.cause).toContain("no such");
    const early = { ...order, earliestStartAt: "2099-01-01T00:00:00Z" };
    expect((await refusedWith([{ before: order, after: early }])).faults[0]?.path).toContain(
      "earliestStartAt",
    );
  });

  test.each([
    ["no change", () => []],
    ["a change of nothing", () => [{ before: null, after: null }]],
    [
      "an order twice",
      (order: OrderTerms) => [1, 2].map((n) => ({ before: order, after: { ...order, weight: n } })),
    ],
    ["another number", (order: OrderTerms) => [{ before: order, after: { ...order, id: "other" } }]],
    [
      "a day that is none",
      (order: OrderTerms) => [{ before: order, after: { ...order, dueAt: "2026-02-30T00:00:00Z" } }],
    ],
    ["text for pieces", (order: OrderTerms) => [{ before: order, after: { ...order, pieces: "12" } }]],
    ["a field left out", (order: OrderTerms) => [{ before: order, after: { id: order.id } }]],
  ])("are refused: %s", async (_name, changesOf) => {
    const problem = await refusedWith(changesOf(await some()));
    expect([400, 422]).toContain(problem.status);
    expect(problem.faults.length).toBeGreaterThan(0);
  });

  test("are not removed while they are held", async () => {
    const order = await some();
    const url = `/api/plants/${plantId}/pins/${encodeURIComponent(order.id)}`;
    const start = order.dueAt;
    const held = await api.server.inject({
      method: "PUT",
      url,
      payload: { lineId: null, start, revision: 0 },
    });
    expect(held.statusCode, held.body).toBe(200);
    const problem = await refusedWith([{ before: order, after: null }]);
    expect(problem.cause).toContain(order.id);
    expect(problem.remedy).toMatch(/Free it/);
    await api.server.inject({ method: "DELETE", url: `${url}?revision=1` });
    await change([{ before: order, after: null }]);
    await change([{ before: null, after: order }]);
  });

  test("as they are already leave the book's revision, and a viewer changes nothing", async () => {
    const order = await some();
    const { revision } = await book();
    expect(await change([{ before: order, after: order }])).toBe(revision);
    const problem = problemOf(
      await ask([{ before: order, after: { ...order, weight: 4 } }], { [ROLE_HEADER]: "viewer" }),
    );
    expect(problem).toMatchObject({ code: "forbidden", status: 403 });
    expect((await some()).weight).toBe(order.weight);
  });

  test("are told to whoever watches the plant, and are not planned yet", async () => {
    const told: unknown[] = [];
    const watching = await api.app.queries.watchPlant(
      { plantId, afterSequence: null, onMessage: ({ body }) => void told.push(body) },
      localPlanner,
    );
    const order = await some();
    const revision = await change([{ before: order, after: { ...order, pieces: order.pieces + 1 } }]);
    await eventually("the change is told", () => told.length > 0);
    expect(told).toContainEqual({ type: "orders-changed", revision });
    expect((await book()).orders.find(({ id }) => id === order.id)?.state).toBe("not planned yet");
    await change([{ before: { ...order, pieces: order.pieces + 1 }, after: order }]);
    if (watching.ok) await watching.value.close();
  });
});
