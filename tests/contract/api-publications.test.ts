import { localPlanner } from "@formweek/application";
import { PlanComparison, PublicationListResponse } from "@formweek/contracts";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { type ApiServer, fill, openApiServer, plantId } from "../fixtures/api-server.ts";
import { problemOf } from "../fixtures/http-asks.ts";
import { askForPlan, ended } from "../fixtures/planning-asks.ts";
import { stepAsks } from "../fixtures/step-asks.ts";

let api: ApiServer;
const ids: string[] = [];
const { get, here, ask, take, plan } = stepAsks(() => api.server);
const publications = async () => PublicationListResponse.parse((await get("/publications")).json());

beforeAll(async () => {
  api = await openApiServer();
  await fill(api.app);
  for (const steps of [1, 60]) {
    await ended(api.app, plantId, await askForPlan(api.app, plantId, { seconds: null, steps }));
    ids.push((await plan()).planId);
  }
});
afterAll(() => api.close());

describe("giving a plan out", () => {
  test("is listed with who, when and what was said; the steps before it can still be taken back", async () => {
    expect(await publications()).toEqual([]);
    const [first = "", second = ""] = ids;
    const published = await take("publish", { planId: second, note: '  Week 49, "final" ✓ ' });
    expect(published.planId).toBe(second);
    expect(await here()).toMatchObject({ publishedPlanId: second, canUndo: true, planId: second });
    await take("undo");
    expect(await here()).toMatchObject({ publishedPlanId: second, planId: first, canRedo: true });
    await take("publish", { planId: first, note: "" });
    expect(await here()).toMatchObject({
      publishedPlanId: first,
      planId: first,
      canUndo: false,
      canRedo: true,
    });
    await take("redo");
    expect((await here()).planId).toBe(second);
    const listed = await publications();
    expect(listed.map(({ planId, note, by }) => [planId, note, by])).toEqual([
      [first, "", localPlanner.id],
      [second, 'Week 49, "final" ✓', localPlanner.id],
    ]);
    const { steps } = await here();
    expect(steps.filter(({ kind }) => kind === "publish").map(({ revision }) => revision)).toEqual(
      listed.map(({ revision }) => revision),
    );
  });

  test("takes the working plan as it was looked at", async () => {
    const before = await publications();
    const [first, second] = ids;
    const other = problemOf(await ask("publish", { planId: first, note: "" }));
    expect(other).toMatchObject({ code: "not-working-plan", status: 409 });
    const stale = problemOf(await ask("publish", { planId: second, note: "", revision: 1 }));
    expect(stale).toMatchObject({ code: "working-plan-changed", status: 409 });
    for (const body of [
      { planId: second },
      { planId: second, note: null },
      { planId: second, note: "x".repeat(501) },
      { planId: second, note: "a\0b" },
      { note: "" },
    ]) {
      const problem = problemOf(await ask("publish", body));
      expect(problem).toMatchObject({ code: "invalid-request", status: 400 });
      expect(problem.faults.length).toBeGreaterThan(0);
    }
    expect(await publications()).toEqual(before);
  });
});

describe("two plans side by side", () => {
  const compare = async (from: string, to: string) =>
    PlanComparison.parse((await get(`/plans/${from}/compare/${to}`)).json());

  test("the difference leads from the one to the other", async () => {
    const [first = "", second = ""] = ids;
    const [one, two] = await Promise.all(
      [first, second].map(async (id) => {
        const { document } = (await get(`/plans/${id}`)).json<Awaited<ReturnType<typeof plan>>>();
        return document;
      }),
    );
    if (one === undefined || two === undefined) throw new Error("no plans");
    const difference = await compare(first, second);
    expect(difference.sameInputs).toBe(true);
    expect(difference.from).toMatchObject({ planId: first, summary: one.summary, objective: one.objective });
    expect(difference.to).toMatchObject({ planId: second, summary: two.summary, objective: two.objective });
    expect(difference.movedLots.length).toBeGreaterThan(0);
    const nameOf = ({ orderId, lot }: { readonly orderId: string; readonly lot: number }) =>
      `${orderId} ${lot}`;
    const lots = new Map(one.lots.map((lot) => [nameOf(lot), lot]));
    for (const moved of difference.movedLots) {
      expect(moved.from).toEqual(lots.get(nameOf(moved)) ?? null);
      if (moved.to === null) lots.delete(nameOf(moved));
      else lots.set(nameOf(moved), moved.to);
    }
    const placed = ({ orderId, lot, lineId, start }: (typeof one.lots)[number]) => [
      orderId,
      lot,
      lineId,
      start,
    ];
    const byName = (a: string, b: string) => (a < b ? -1 : 1);
    const text = (all: Iterable<(typeof one.lots)[number]>) =>
      Array.from(all, (lot) => JSON.stringify(placed(lot))).sort(byName);
    expect(text(lots.values())).toEqual(text(two.lots));
    const finishes = new Map(one.orders.map(({ orderId, finish }) => [orderId, finish]));
    for (const { orderId, to } of difference.changedFinishes) finishes.set(orderId, to);
    expect([...finishes]).toEqual(two.orders.map(({ orderId, finish }) => [orderId, finish]));
  });

  test("a plan and itself have none; an unknown one is named", async () => {
    const [first = ""] = ids;
    const none = await compare(first, first);
    expect([none.movedLots, none.changedFinishes, none.changedStates]).toEqual([[], [], []]);
    for (const path of [`${first}/compare/nowhere`, `nowhere/compare/${first}`]) {
      const problem = problemOf(await get(`/plans/${path}`));
      expect(problem).toMatchObject({ code: "not-found", status: 404 });
      expect(problem.cause).toContain("nowhere");
    }
  });
});
