import { tableWriter } from "@formweek/adapters/tabular";
import { localPlanner, tablesOfPlant } from "@formweek/application";
import {
  AcceptImportResponse,
  ImportReport,
  OrderBookResponse,
  OrderTerms,
  PlantResponse,
} from "@formweek/contracts";
import { generatePlant } from "@formweek/demo-plant";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { type ApiServer, fill, openApiServer, orders, plant, plantId } from "../fixtures/api-server.ts";
import { formOf, problemOf } from "../fixtures/http-asks.ts";

let api: ApiServer;
beforeAll(async () => {
  api = await openApiServer();
  await fill(api.app);
});
afterAll(() => api.close());

interface File {
  readonly name: string;
  readonly content: string | Uint8Array;
}

const upload = (kind: string, files: readonly File[], id = plantId) =>
  api.server.inject({ method: "POST", url: `/api/plants/${id}/imports?kind=${kind}`, ...formOf(files) });
const check = async (files: readonly File[], kind = "orders", id = plantId) => {
  const answer = await upload(kind, files, id);
  expect(answer.statusCode, answer.body).toBe(200);
  return ImportReport.parse(answer.json());
};
const accept = (importId: string, revision: number, id = plantId) =>
  api.server.inject({
    method: "POST",
    url: `/api/plants/${id}/imports/${importId}/accept`,
    payload: { revision },
  });
const book = async () =>
  OrderBookResponse.parse((await api.server.inject({ url: `/api/plants/${plantId}/orders` })).json());
const download = async (file: string) => {
  const answer = await api.server.inject({ url: `/api/plants/${plantId}/${file}` });
  expect(answer.statusCode).toBe(200);
  return { name: file, content: answer.rawPayload, headers: answer.headers };
};

const product = plant.products[0];
const header = "order;product;pieces;due\r\n";
const row = (id: string, pieces: string) => `${id};${product?.id};${pieces};2026-12-11\r\n`;
const csv = (text: string): File => ({ name: "week.csv", content: header + text });

describe("an import of orders", () => {
  test("is checked without changing anything, then taken over once", async () => {
    const before = await book();
    const report = await check([csv(row("N-1", "12000") + row("N-2", "3000"))]);
    expect(report).toMatchObject({
      kind: "orders",
      files: ["week.csv"],
      rows: 2,
      acceptable: true,
      revision: before.revision,
    });
    expect(report.summary).toMatchObject({ added: 2, changed: 0, unchanged: 0, bad: 0 });
    expect(await book()).toEqual(before);

    const first = AcceptImportResponse.parse((await accept(report.importId, report.revision)).json());
    expect(first).toEqual({
      applied: { added: 2, changed: 0, unchanged: 0 },
      revision: before.revision + 1,
      step: null,
    });
    expect((await book()).orders).toHaveLength(before.orders.length + 2);
    expect((await accept(report.importId, report.revision)).json()).toEqual(first);
    expect((await book()).revision).toBe(first.revision);
  });

  test("of the same file again finds nothing to change, and leaves the revision", async () => {
    const before = await book();
    const report = await check([csv(row("N-1", "12000") + row("N-2", "3000"))]);
    expect(report.summary).toMatchObject({ added: 0, changed: 0, unchanged: 2 });
    const accepted = AcceptImportResponse.parse((await accept(report.importId, report.revision)).json());
    expect(accepted.revision).toBe(before.revision);
  });

  test("names every bad row with what to do, and takes over the good ones", async () => {
    const before = await book();
    const text =
      row("N-3", "5000") + row("N-4", "many") + row("N-3", "70") + `N-5;nothing-like-it;100;2026-12-11\r\n`;
    const report = await check([csv(text)]);
    expect(report.summary).toMatchObject({ added: 1, bad: 3 });
    const errors = report.faults.filter(({ severity }) => severity === "error");
    expect(errors.map((fault) => [fault.sheet, fault.row])).toEqual([
      ["week", 3],
      ["week", 4],
      ["week", 5],
    ]);
    expect(errors[0]).toMatchObject({ column: "pieces", value: "many" });
    for (const { problem, remedy } of errors) expect(problem.length > 3 && remedy.length > 3).toBe(true);
    expect((await accept(report.importId, report.revision)).statusCode).toBe(200);
    expect((await book()).orders).toHaveLength(before.orders.length + 1);
  });

  test("lists what it would change with both versions; what it has no column for stays as it is", async () => {
    const [order] = (await book()).orders;
    if (order === undefined || product === undefined) throw new Error("the book is empty");
    const seen = OrderTerms.parse(order);
    const kept = { ...seen, customer: "Alder Foods", weight: 3, overTolerance: 0.1 };
    const changes = [{ before: seen, after: kept }];
    const url = `/api/plants/${plantId}/orders/changes`;
    const changed = await api.server.inject({ method: "POST", url, payload: { changes } });
    expect(changed.statusCode, changed.body).toBe(200);
    const text = `${seen.id};${seen.productId};777;2026-12-11T12:00\r\n${row("N-8", "800")}`;
    const report = await check([csv(text)]);
    const moved = { ...kept, pieces: 777, dueAt: "2026-12-11T11:00:00Z" };
    expect(report.changes).toEqual([
      { before: null, after: expect.objectContaining({ id: "N-8", pieces: 800, weight: 1 }) as unknown },
      { before: kept, after: moved },
    ]);
    expect((await accept(report.importId, report.revision)).statusCode).toBe(200);
    const after = (await book()).orders.find(({ id }) => id === seen.id);
    expect(OrderTerms.parse(after)).toEqual(moved);
    const back = report.changes.map((change) => ({ before: change.after, after: change.before }));
    const taken = await api.server.inject({ method: "POST", url, payload: { changes: back } });
    expect(taken.statusCode, taken.body).toBe(200);
  });

  test("is refused when the book changed since the check, and changes nothing", async () => {
    const report = await check([csv(row("N-6", "100"))]);
    const other = await check([csv(row("N-7", "100"))]);
    expect((await accept(other.importId, other.revision)).statusCode).toBe(200);
    const before = await book();
    expect(problemOf(await accept(report.importId, report.revision))).toMatchObject({
      code: "order-book-changed",
      status: 409,
    });
    expect(problemOf(await accept(report.importId, before.revision)).code).toBe("order-book-changed");
    expect(await book()).toEqual(before);
  });

  test("with no usable row can not be taken over", async () => {
    const report = await check([csv(row("", "100"))]);
    expect(report.acceptable).toBe(false);
    expect(problemOf(await accept(report.importId, report.revision))).toMatchObject({
      code: "import-not-acceptable",
      status: 422,
    });
  });

  test("that nobody checked is not found, nor one of another plant", async () => {
    expect(problemOf(await accept("unknown", 1)).code).toBe("not-found");
    const report = await check([csv(row("N-8", "100"))]);
    expect(problemOf(await accept(report.importId, report.revision, "elsewhere")).code).toBe("not-found");
  });

  test("without a file, of no form, or of an unknown kind is refused", async () => {
    expect(problemOf(await upload("orders", []))).toMatchObject({ code: "malformed-body", status: 400 });
    expect(problemOf(await upload("weather", [csv("")])).faults[0]?.path).toBe("kind");
    const url = `/api/plants/${plantId}/imports?kind=orders`;
    const answer = await api.server.inject({ method: "POST", url, payload: { file: "x" } });
    expect(problemOf(answer)).toMatchObject({ code: "unsupported-media-type", status: 415 });
  });

  test("of a file that is no table is refused with its name", async () => {
    const problem = problemOf(
      await upload("orders", [{ name: "week.xlsx", content: "this is no workbook" }]),
    );
    expect(problem).toMatchObject({ code: "unreadable-file", status: 422 });
    expect(problem.faults[0]?.path).toContain("week.xlsx");
  });

  test("a path in a file's name is cut off", async () => {
    const report = await check([{ name: "..\\..\\etc/week.csv", content: header + row("N-1", "12000") }]);
    expect(report.files).toEqual(["week.csv"]);
  });
});

describe("an export", () => {
  test.each(["orders.csv", "orders.xlsx"])("%s, loaded again, changes nothing", async (file) => {
    const before = await book();
    const { headers, ...written } = await download(file);
    expect(headers["content-disposition"]).toBe(`attachment; filename="${plantId}-${file}"`);
    const report = await check([written]);
    expect(report.summary).toMatchObject({ added: 0, changed: 0, unchanged: before.orders.length, bad: 0 });
  });

  test("of the plant, loaded again, changes nothing", async () => {
    const written = await download("plant.xlsx");
    const again = await check([written], "plant");
    expect(again).toMatchObject({ acceptable: true, summary: { added: 0, changed: 0, bad: 0 } });
    const stored = await api.app.queries.getPlant({ plantId }, localPlanner);
    expect(stored.ok && stored.value.plant).toEqual(plant);
  });

  test("keeps a customer's name that looks like a formula a text", async () => {
    const [first] = orders;
    if (first === undefined) throw new Error("the demo has orders");
    const hostile = { ...first, id: "N-9" as typeof first.id, customer: "=1+1" };
    const { revision } = await book();
    await api.app.commands.putOrders(
      { plantId, orders: [hostile], expectedRevision: revision },
      localPlanner,
    );
    const text = (await download("orders.csv")).content.toString("utf8");
    expect(text).toContain("N-9");
    expect(text).not.toMatch(/(^|[,;\n"])=1\+1/);
  });
});

describe("an import of plant data", () => {
  test("that brings nothing new leaves the revision as it is", async () => {
    const report = await check([await download("plant.xlsx")], "plant");
    const accepted = AcceptImportResponse.parse((await accept(report.importId, report.revision)).json());
    expect(accepted.revision).toBe(report.revision);
  });

  test("is refused when the plant changed since the check", async () => {
    const report = await check([await download("plant.xlsx")], "plant");
    await api.app.commands.putPlant({ plantId, plant, expectedRevision: report.revision }, localPlanner);
    expect(problemOf(await accept(report.importId, report.revision))).toMatchObject({
      code: "plant-changed",
      status: 409,
    });
  });

  test("changes what the file changes and counts the revision up", async () => {
    const text = `id;name\r\n${plant.trolleys[0]?.id};Renamed trolley\r\n`;
    const report = await check([{ name: "trolleys.csv", content: text }], "plant");
    expect(report.summary).toMatchObject({ added: 0, changed: 1, bad: 0 });
    expect((await accept(report.importId, report.revision)).statusCode).toBe(200);
    const after = PlantResponse.parse((await api.server.inject({ url: `/api/plants/${plantId}` })).json());
    expect(after.revision).toBe(report.revision + 1);
    expect(after.plant).toMatchObject({
      trolleys: [{ name: "Renamed trolley" }, ...plant.trolleys.slice(1)],
    });
  });

  test("goes to the plant that the files name, a new one too, and leaves the open one alone", async () => {
    const { plant: other } = generatePlant({ lines: 3, orders: 5, seed: 2 });
    const files = tablesOfPlant(other).map((table) => ({
      name: `${table.name}.csv`,
      content: tableWriter.csv(table),
    }));
    const report = await check(files, "plant");
    expect(report).toMatchObject({ plantId: other.id, acceptable: true, revision: 0, faults: [] });
    const missing = await api.server.inject({ url: `/api/plants/${other.id}` });
    expect(missing.statusCode).toBe(404);
    const before = (await api.server.inject({ url: `/api/plants/${plantId}` })).json<unknown>();
    expect(problemOf(await accept(report.importId, report.revision))).toMatchObject({ code: "not-found" });
    expect((await accept(report.importId, report.revision, other.id)).statusCode).toBe(200);
    const made = PlantResponse.parse((await api.server.inject({ url: `/api/plants/${other.id}` })).json());
    expect(made.plant).toEqual(other);
    expect((await api.server.inject({ url: `/api/plants/${plantId}` })).json<unknown>()).toEqual(before);
    expect(await check(files, "plant", other.id)).toMatchObject({
      summary: { added: 0, changed: 0 },
      revision: made.revision,
    });
  });
});
