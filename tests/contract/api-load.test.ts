/** Load against capacity through the interface, held against the plan and the order book that it serves. */
import { localPlanner } from "@formweek/application";
import { Order } from "@formweek/capacity-model";
import {
  LoadFindingsResponse,
  LoadOrdersResponse,
  LoadResponse,
  PlanResponse,
  SolveRunResponse,
  type ResourceLoad,
} from "@formweek/contracts";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { type ApiServer, fill, openApiServer, orders, plant, plantId } from "../fixtures/api-server.ts";
import { eventually } from "../fixtures/eventually.ts";
import { problemOf } from "../fixtures/http-asks.ts";

let api: ApiServer;
beforeAll(async () => {
  api = await openApiServer();
});
afterAll(() => api.close());

const KINDS = ["line", "mould", "team", "pool"] as const;
const SIZES = ["shift", "day", "week"] as const;
const get = (path: string, id = plantId) => api.server.inject({ url: `/api/plants/${id}${path}` });
const load = async (query: string) => LoadResponse.parse((await get(`/load?${query}`)).json());
const findings = async () => LoadFindingsResponse.parse((await get("/load/findings")).json());
const sum = (figures: readonly number[]): number => figures.reduce((total, figure) => total + figure, 0);

async function book(more: readonly Order[]): Promise<void> {
  const { revision } = (await get("/orders")).json<{ readonly revision: number }>();
  const asked = { plantId, orders: more, expectedRevision: revision };
  const put = await api.app.commands.putOrders(asked, localPlanner);
  if (!put.ok) throw new Error(put.error.cause);
}

async function planned(): Promise<void> {
  const url = `/api/plants/${plantId}/solves`;
  const asked = await api.server.inject({ method: "POST", url, payload: { steps: 50, seed: 7 } });
  const { runId } = asked.json<{ readonly runId: string }>();
  const run = async () => SolveRunResponse.parse((await get(`/solves/${runId}`)).json());
  await eventually("the run ends", async () => (await run()).state === "done");
}

/** CV-60; source: committed, available and unattainable capacity of ISA-95 / IEC 62264, from memory. */
function expectConserved({ buckets, resources }: LoadResponse): void {
  for (const each of resources) {
    buckets.forEach(({ start, end }, at) => {
      const committed = (each.run[at] ?? 0) + (each.change[at] ?? 0);
      const unattainable = (each.stop[at] ?? 0) + (each.closed[at] ?? 0);
      const total = ((Date.parse(end) - Date.parse(start)) / 1000) * each.units;
      expect(committed + (each.idle[at] ?? 0) + unattainable).toBeCloseTo(total, 6);
    });
  }
}

const needed = ({ run, change, beyond, outside }: ResourceLoad): number =>
  sum(run) + sum(change) + sum(beyond) + sum(outside);

describe("load of a plant", () => {
  test("is idle and closed time only while the book is empty", async () => {
    const put = await api.app.commands.putPlant({ plantId, plant, expectedRevision: null }, localPlanner);
    expect(put.ok).toBe(true);
    const view = await load("kind=line&bucket=week");
    expect(view).toMatchObject({ planId: null, plannedUntil: null, roughOrders: 0, unplacedCount: 0 });
    expect(view.buckets).toHaveLength(26);
    expect(sum(view.resources.map(needed))).toBe(0);
    expectConserved(view);
    expect(await findings()).toEqual({ bottleneck: null, resources: [], sheets: [] });
  });

  test("is rough-cut before the first plan", async () => {
    await api.close();
    api = await openApiServer();
    await fill(api.app);
    const view = await load("kind=line&bucket=week");
    expect(view.planId).toBeNull();
    expect(new Set(view.resources.flatMap(({ basis }) => basis))).toEqual(new Set(["rough-cut", "none"]));
    expectConserved(view);
  });

  test("is the plan's to the second, and nothing rough where all orders are planned", async () => {
    await planned();
    const { document } = PlanResponse.parse((await get("/plans/latest")).json());
    const view = await load("kind=line&bucket=week");
    expect(view.roughOrders).toBe(0);
    for (const line of view.resources) {
      const seconds = (kind: "run" | "change"): number =>
        sum(
          document.segments
            .filter((segment) => segment.kind === kind && segment.lineId === line.id)
            .map(({ start, end }) => (Date.parse(end) - Date.parse(start)) / 1000),
        );
      expect(sum(line.run)).toBe(seconds("run"));
      expect(sum(line.change) + sum(line.outside)).toBe(seconds("change"));
    }
    const ends = document.segments.map(({ end }) => Date.parse(end));
    expect(Date.parse(view.plannedUntil ?? "")).toBe(Math.max(...ends));
  });

  test.each(KINDS)("of a %s is the same in shifts, days and weeks, and conserved in each", async (kind) => {
    const views = await Promise.all(SIZES.map((size) => load(`kind=${kind}&bucket=${size}`)));
    for (const view of views) expectConserved(view);
    const totals = views.map(({ resources }) => resources.map((each) => Math.round(needed(each))));
    expect(totals[0]).toEqual(totals[2]);
    expect(totals[1]).toEqual(totals[2]);
    expect(totals[2]?.some((total) => total > 0)).toBe(true);
  });

  test("holds far orders and forecasts rough-cut, told order by order", async () => {
    const [model] = orders;
    if (model === undefined) throw new Error("the demo has orders");
    const dueAt = model.dueAt + 10 * 7 * 86_400;
    const far = Order.parse({ ...model, id: "far", kind: "forecast", pieces: 900_000, dueAt });
    await book([...orders, far]);
    const view = await load("kind=line&bucket=week");
    expect(view.roughOrders).toBe(1);
    const at = view.buckets.findIndex(({ end }) => Date.parse(end) / 1000 >= dueAt);
    const line = view.resources.find(({ basis }) => basis[at] === "rough-cut");
    if (line === undefined) throw new Error("no line carries the far order");
    const { start, end } = view.buckets[at] ?? { start: "", end: "" };
    const behind = LoadOrdersResponse.parse(
      (await get(`/load/orders?kind=line&id=${line.id}&start=${start}&end=${end}`)).json(),
    );
    expect(behind).toMatchObject({ total: 1, orders: [{ orderId: "far", basis: "rough-cut" }] });
    const told = sum(behind.orders.map(({ runSeconds, changeSeconds }) => runSeconds + changeSeconds));
    expect(told).toBeCloseTo((line.run[at] ?? 0) + (line.change[at] ?? 0) + (line.beyond[at] ?? 0), 6);
  });

  test("names a bottleneck with weeks, orders and what would help, and warns of moulds, teams and sheets", async () => {
    const [model] = orders;
    if (model === undefined) throw new Error("the demo has orders");
    const dueAt = model.dueAt + 8 * 7 * 86_400;
    const many = Array.from({ length: 6 }, (_, at) =>
      Order.parse({
        ...model,
        id: `many-${at}`,
        pieces: 30_000_000,
        dueAt,
        earliestStartAt: dueAt - 7 * 86_400,
      }),
    );
    await book([...orders, ...many]);
    const { bottleneck, resources, sheets } = await findings();
    const week = bottleneck?.weeks[bottleneck.worst];
    expect(week?.share).toBeGreaterThan(1);
    expect(week?.share).toBeCloseTo((week?.neededSeconds ?? 0) / (week?.attainableSeconds ?? 1), 3);
    expect(bottleneck?.orders.map(({ orderId }) => orderId)).toContain("many-0");
    for (const { reliefs, weeks, worst } of resources)
      for (const { gainedSeconds, shareBefore, shareAfter } of reliefs) {
        const { neededSeconds, attainableSeconds } = weeks[worst] ?? {
          neededSeconds: 0,
          attainableSeconds: 0,
        };
        expect(shareBefore).toBe(weeks[worst]?.share);
        expect(shareAfter).toBeCloseTo(neededSeconds / (attainableSeconds + gainedSeconds), 3);
      }
    const moulds = resources.filter(({ kind }) => kind === "mould");
    expect(moulds.length).toBeGreaterThan(0);
    expect(moulds.every(({ weeks }) => weeks.every(({ share }) => share === null || share > 0.9))).toBe(true);
    expect(moulds.flatMap(({ reliefs }) => reliefs.map(({ kind }) => kind))).toContain("copy");
    expect(sheets.every(({ missingKg }) => missingKg > 0)).toBe(true);
  });

  test("goes on page by page without a gap", async () => {
    const first = await load("kind=line&bucket=day");
    const second = await load(`kind=line&bucket=day&from=${first.nextFrom ?? ""}`);
    expect(first.previousFrom).toBeNull();
    expect(first.buckets.at(-1)?.end).toBe(second.buckets[0]?.start);
    const back = await load(`kind=line&bucket=day&from=${second.previousFrom ?? ""}`);
    expect(back.buckets).toEqual(first.buckets);
  });
});

describe("what can not be told says so", () => {
  test.each([
    "?kind=oven&bucket=week",
    "?kind=line&bucket=month",
    "?kind=line",
    "?kind=line&bucket=day&from=2026-02-30",
  ])("%s", async (query) => {
    expect(problemOf(await get(`/load${query}`))).toMatchObject({ code: "invalid-request", status: 400 });
  });

  test("a resource or a plant that is not there, and a span that ends before it starts", async () => {
    const span = "start=2026-12-07T00:00:00Z&end=2026-12-14T00:00:00Z";
    const unknown = problemOf(await get(`/load/orders?kind=mould&id=gone&${span}`));
    expect(unknown).toMatchObject({ code: "not-found", title: "There is no such mould." });
    const backwards = "start=2026-12-14T00:00:00Z&end=2026-12-07T00:00:00Z";
    const [{ id } = { id: "" }] = plant.lines;
    const problem = problemOf(await get(`/load/orders?kind=line&id=${id}&${backwards}`));
    expect(problem).toMatchObject({ code: "invalid-input", faults: [{ path: "end" }] });
    for (const path of ["/load?kind=line&bucket=week", "/load/findings"])
      expect(problemOf(await get(path, "elsewhere"))).toMatchObject({ code: "not-found", status: 404 });
  });
});
