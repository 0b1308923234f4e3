import { type PlanDocument, RatesResponse } from "@formweek/contracts";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { type ApiServer, fill, openApiServer, plant } from "../fixtures/api-server.ts";
import { problemOf } from "../fixtures/http-asks.ts";
import { type AskedPlace, isoAt, pinAsks } from "../fixtures/pin-asks.ts";

let api: ApiServer;
let document: PlanDocument;
let lot: PlanDocument["lots"][number];

const { get, pins, hold, free, planned } = pinAsks(() => api.server);

beforeAll(async () => {
  api = await openApiServer();
  await fill(api.app);
  document = await planned();
  const found = document.lots.find(({ lot: number }) => number === 0);
  if (found === undefined) throw new Error("nothing is planned");
  lot = found;
});
afterAll(() => api.close());

/** A second after the first spell of the line's working time ends. */
function closedInstant(): string {
  const spell = document.lines.find(({ id }) => id === lot.lineId)?.open[0];
  return isoAt(Date.parse(spell?.[1] ?? "") + 1000);
}

const invalid = (path: string) => ({ code: "invalid-input", status: 422, faults: [{ path }] });

describe("a pin is refused, and nothing changes,", () => {
  const refusals: readonly (readonly [
    string,
    () => AskedPlace & { readonly orderId?: string },
    object,
    RegExp,
  ])[] = [
    ["of an unknown order", () => ({ orderId: "none", lineId: lot.lineId }), { code: "not-found" }, /"none"/],
    ["to an unknown line", () => ({ lineId: "L99" }), invalid("lineId"), /"L99" is no line/],
    ["to nowhere", () => ({}), invalid("lineId"), /Neither a line nor a start/],
    [
      "to a start before the planning window",
      () => ({ lineId: lot.lineId, start: "2020-01-01T06:00:00Z" }),
      invalid("start"),
      /2020-01-01.*planning window/,
    ],
    [
      "to a start after it, without a line too",
      () => ({ start: "2099-01-01T06:00:00Z" }),
      invalid("start"),
      /2099-01-01.*planning window/,
    ],
    [
      "to a start in closed time",
      () => ({ lineId: lot.lineId, start: closedInstant() }),
      invalid("start"),
      /is closed at/,
    ],
  ];
  test.each(refusals)("%s", async (_name, ask, expected, words) => {
    const { orderId = lot.orderId, ...place } = ask();
    const problem = problemOf(await hold(orderId, place));
    expect(problem).toMatchObject(expected);
    expect(problem.cause).toMatch(words);
    for (const fault of problem.faults) expect(fault.remedy.length).toBeGreaterThan(10);
    expect(await pins()).toEqual({ revision: 0, pins: [] });
  });

  test("with everything against it at once", async () => {
    const problem = problemOf(await hold(lot.orderId, { lineId: "L99", start: "2020-01-01T06:00:00Z" }));
    expect(problem.faults.map(({ path }) => path)).toEqual(["lineId", "start"]);
  });

  test("to a line on which no mould fits, in the fit check's own words", async () => {
    const { productId } = document.orders.find((order) => order.orderId === lot.orderId) ?? {};
    const all = RatesResponse.parse((await get("/rates")).json());
    const rates = all.filter((rate) => rate.productId === productId);
    const unable = plant.lines.find(({ id }) =>
      rates.every(({ lineId, rate }) => lineId !== id || rate === null),
    );
    const against = rates
      .filter(({ lineId }) => lineId === unable?.id)
      .flatMap(({ refusals: reasons }) => reasons.map(({ text }) => text));
    expect(against.length).toBeGreaterThan(0);
    const problem = problemOf(await hold(lot.orderId, { lineId: unable?.id ?? "" }));
    expect(problem).toMatchObject({ code: "invalid-input", status: 422 });
    expect(problem.faults.map((fault) => fault.problem)).toEqual(against);
    const able = plant.lines.find(({ id }) => id === lot.lineId);
    for (const { path, remedy } of problem.faults) {
      expect(path).toBe("lineId");
      expect(remedy).toContain(able?.name);
    }
    expect(await pins()).toEqual({ revision: 0, pins: [] });
  });

  test("for texts that are no instant, and instants of days that are none", async () => {
    for (const start of ["soon", "2026-02-31T06:00:00Z", "2026-11-30T06:00:00.5Z"]) {
      const problem = problemOf(await hold(lot.orderId, { start }));
      expect(problem).toMatchObject({ code: "invalid-request", faults: [{ path: "start" }] });
    }
  });

  test("and so is freeing a free order", async () => {
    expect(problemOf(await free(lot.orderId)).code).toBe("not-found");
    expect(problemOf(await free("none")).code).toBe("not-found");
    expect(await pins()).toEqual({ revision: 0, pins: [] });
  });
});
