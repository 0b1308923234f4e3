import {
  AcceptImportResponse,
  BookStepsResponse,
  ImportReport,
  OrderBookResponse,
  OrderBookRevision,
  OrderTerms,
  type OrderChange,
} from "@formweek/contracts";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { type ApiServer, ROLE_HEADER, fill, openApiServer, plantId } from "../fixtures/api-server.ts";
import { formOf, problemOf } from "../fixtures/http-asks.ts";

let api: ApiServer;
beforeAll(async () => {
  api = await openApiServer();
  await fill(api.app);
});
afterAll(() => api.close());

interface SentStep {
  readonly desk: string;
  readonly kind: string;
  readonly of: number | null;
}

const root = `/api/plants/${plantId}`;
const terms = async (): Promise<readonly OrderTerms[]> => {
  const answer = await api.server.inject({ url: `${root}/orders` });
  return OrderBookResponse.parse(answer.json()).orders.map((order) => OrderTerms.parse(order));
};
const ask = (changes: readonly unknown[], step?: SentStep) =>
  api.server.inject({ method: "POST", url: `${root}/orders/changes`, payload: { changes, step } });
const make = async (changes: readonly OrderChange[], step?: SentStep): Promise<number | null> => {
  const answer = await ask(changes, step);
  expect(answer.statusCode, answer.body).toBe(200);
  return OrderBookRevision.parse(answer.json()).step;
};
const stepsOf = async (desk: string): Promise<BookStepsResponse> => {
  const answer = await api.server.inject({ url: `${root}/orders/steps?desk=${desk}` });
  expect(answer.statusCode, answer.body).toBe(200);
  return BookStepsResponse.parse(answer.json());
};
const turned = (changes: readonly OrderChange[]): readonly OrderChange[] =>
  changes.map(({ before, after }) => ({ before: after, after: before }));
const bulk = async (): Promise<readonly OrderChange[]> =>
  (await terms())
    .slice(0, 5)
    .map((order) => ({ before: order, after: { ...order, weight: order.weight + 1 } }));

describe("steps of the order book", () => {
  test("are told again as they were made: a bulk change, its undo and its redo", async () => {
    const changes = await bulk();
    const first = await make(changes, { desk: "one", kind: "change", of: null });
    const undo = await make(turned(changes), { desk: "one", kind: "undo", of: first });
    const redo = await make(changes, { desk: "one", kind: "redo", of: undo });
    expect(await stepsOf("one")).toMatchObject([
      { number: first, kind: "change", of: null, changes },
      { number: undo, kind: "undo", of: first, changes: turned(changes) },
      { number: redo, kind: "redo", of: undo, changes },
    ]);
    await make(turned(changes));
    expect(await stepsOf("one")).toHaveLength(3);
  });

  test("of another desk, or none, are not told", async () => {
    const changes = await bulk();
    expect(await make(changes)).toBeNull();
    await make(turned(changes), { desk: "two", kind: "change", of: null });
    expect(await stepsOf("two")).toHaveLength(1);
    expect(await stepsOf("nobody")).toEqual([]);
  });

  test("a pasted set is one step at the desk that accepted it, for good orders alone", async () => {
    const [order] = await terms();
    if (order === undefined) throw new Error("the book is empty");
    const due = order.dueAt.slice(0, 10);
    const content =
      "order,product,pieces,due\n" +
      [
        `${order.id},${order.productId},77000,${due}`,
        `P-1,${order.productId},5000,${due}`,
        "P-2,none,5,x",
      ].join("\n");
    const form = formOf([{ name: "pasted.csv", content }]);
    const checked = await api.server.inject({
      method: "POST",
      url: `${root}/imports?kind=orders`,
      headers: form.headers,
      payload: form.payload,
    });
    const report = ImportReport.parse(checked.json());
    expect(await stepsOf("paste")).toEqual([]);
    const accept = async () =>
      AcceptImportResponse.parse(
        (
          await api.server.inject({
            method: "POST",
            url: `${root}/imports/${report.importId}/accept`,
            payload: { revision: report.revision, desk: "paste" },
          })
        ).json(),
      );
    const { step } = await accept();
    expect(await stepsOf("paste")).toMatchObject([{ number: step, kind: "change", changes: report.changes }]);
    expect((await accept()).step).toBe(step);
    expect(await stepsOf("paste")).toHaveLength(1);
    const changes = report.changes;
    expect(changes).toHaveLength(2);
    await make(turned(changes), { desk: "paste", kind: "undo", of: step });
    expect(await terms()).toContainEqual(order);
    expect((await terms()).some(({ id }) => id === "P-1")).toBe(false);
  });

  test("an undo that would write over a second planner is refused with both versions and kept nowhere", async () => {
    const changes = await bulk();
    const first = await make(changes, { desk: "mine", kind: "change", of: null });
    const seen = changes[2]?.after ?? null;
    const theirs = seen && { ...seen, pieces: seen.pieces + 1000 };
    await make([{ before: seen, after: theirs }], { desk: "theirs", kind: "change", of: null });
    const before = await terms();
    const problem = problemOf(await ask(turned(changes), { desk: "mine", kind: "undo", of: first }));
    expect(problem).toMatchObject({ code: "order-book-changed", status: 409 });
    expect(problem.faults[0]?.problem).toContain(`${theirs?.pieces ?? ""}`);
    expect(await terms()).toEqual(before);
    expect(await stepsOf("mine")).toHaveLength(1);
    const rest = turned(changes).filter((_change, place) => place !== 2);
    await make(rest, { desk: "mine", kind: "undo", of: first });
    expect(await terms()).toContainEqual(theirs);
    await make([{ before: theirs, after: changes[2]?.before ?? null }]);
  });

  test("an undo that is left to others whole is kept without changes; a change without any is refused", async () => {
    const { length } = await terms();
    expect(await make([], { desk: "left", kind: "undo", of: 1 })).not.toBeNull();
    expect(await stepsOf("left")).toMatchObject([{ kind: "undo", of: 1, changes: [] }]);
    expect(problemOf(await ask([], { desk: "left", kind: "change", of: null })).status).toBe(400);
    expect(await terms()).toHaveLength(length);
  });

  test.each([
    ["an undo of no step", { desk: "d", kind: "undo", of: null }, "of"],
    ["a change of a step", { desk: "d", kind: "change", of: 3 }, "of"],
    ["no desk", { desk: "", kind: "change", of: null }, "desk"],
    ["a kind that is none", { desk: "d", kind: "rewind", of: null }, "kind"],
  ])("%s is refused by its field", async (_name, step, field) => {
    const changes = await bulk();
    const problem = problemOf(await ask(changes, step));
    expect(problem.status).toBe(400);
    expect(problem.faults.map(({ path }) => path).join()).toContain(field);
    expect(await terms()).toContainEqual(changes[0]?.before);
  });

  test("are a planner's to see", async () => {
    const answer = await api.server.inject({
      url: `${root}/orders/steps?desk=one`,
      headers: { [ROLE_HEADER]: "viewer" },
    });
    expect(problemOf(answer)).toMatchObject({ code: "forbidden", status: 403 });
  });
});
