import { localPlanner } from "@formweek/application";
import { type PlanEdit, PublicationListResponse } from "@formweek/contracts";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { type ApiServer, fill, openApiServer, orders, plantId } from "../fixtures/api-server.ts";
import { problemOf } from "../fixtures/http-asks.ts";
import { askForPlan, ended, runOf } from "../fixtures/planning-asks.ts";
import { stepAsks } from "../fixtures/step-asks.ts";

const byText = (a: string, b: string): number => (a < b ? -1 : 1);

const HOUR_MS = 3_600_000;

let api: ApiServer;
const { get, here, ask, take, plan } = stepAsks(() => api.server);
const publications = async () => PublicationListResponse.parse((await get("/publications")).json());
const instantText = (at: number): string => new Date(at).toISOString().replace(".000Z", "Z");

async function planAnew(steps: number): Promise<void> {
  const runId = await askForPlan(api.app, plantId, { seconds: null, steps });
  await ended(api.app, plantId, runId);
  expect((await runOf(api.app, plantId, runId)).problem).toBeNull();
}

/** Puts these orders into the book instead of those that are there. */
async function book(wanted: typeof orders): Promise<void> {
  const { revision: expectedRevision } = (await get("/orders")).json<{ readonly revision: number }>();
  const put = await api.app.commands.putOrders({ plantId, orders: wanted, expectedRevision }, localPlanner);
  expect(put.ok).toBe(true);
}

type Plan = Awaited<ReturnType<typeof plan>>["document"];

const firstLots = ({ lots }: Plan) => lots.filter(({ lot }) => lot === 0);
const placesOf = (document: Plan) =>
  new Map(firstLots(document).map(({ orderId, lineId, start }) => [orderId, [lineId, start]]));

const placeOf = ({ orderId, lineId, start }: Plan["lots"][number]) => [orderId, lineId, start];

/** Where orders that were frozen are in the working plan. */
async function frozenPlaces(frozen: Plan["lots"]) {
  const places = placesOf((await plan()).document);
  return frozen.map(({ orderId }) => [orderId, ...(places.get(orderId) ?? [])]);
}

/** Gives the working plan out with its first hours frozen; orders whose first lot starts in them, and the others. */
async function freeze(hours: number) {
  const { planId, document } = await plan();
  const frozenUntil = instantText(Date.parse(document.horizon.start) + hours * HOUR_MS);
  await take("publish", { planId, note: "", frozenUntil });
  const isFrozen = ({ start }: { readonly start: string }): boolean => start < frozenUntil;
  const frozen = firstLots(document).filter(isFrozen);
  const free = firstLots(document).filter((lot) => !isFrozen(lot));
  return { document, frozenUntil, frozen, free };
}

beforeAll(async () => {
  api = await openApiServer();
  await fill(api.app);
  await planAnew(1);
});
afterAll(() => api.close());

describe("what is frozen", () => {
  test("stays in place in a new planning run, though the rest is urgent; without it the urgent goes first", async () => {
    const { document, frozenUntil, frozen, free } = await freeze(12);
    expect((await publications())[0]).toMatchObject({ frozenUntil, by: localPlanner.id });
    expect(frozen.length).toBeGreaterThan(2);
    const urgent = new Set(free.map(({ orderId }) => orderId));
    expect(urgent.size).toBeGreaterThan(2);
    const dueAt = Date.parse(document.horizon.start) / 1000 + 6 * 3600;
    await book(orders.map((order) => (urgent.has(order.id) ? { ...order, dueAt, weight: 5 } : order)));
    await planAnew(150);
    const places = placesOf((await plan()).document);
    for (const { orderId, lineId, start } of frozen) expect(places.get(orderId)).toEqual([lineId, start]);

    await take("undo");
    await take("publish", { planId: (await here()).planId, note: "nothing is frozen any more" });
    expect((await publications())[0]?.frozenUntil).toBeNull();
    await planAnew(150);
    const loose = placesOf((await plan()).document);
    expect(
      frozen.some(
        ({ orderId, lineId, start }) => loose.get(orderId)?.join(" ") !== [lineId, start].join(" "),
      ),
    ).toBe(true);
    await take("undo");
    await book(orders);
  });

  test("gives way to what is there by now: an order that has grown pushes its followers, and all are planned", async () => {
    const { frozen } = await freeze(12);
    const first = frozen.toSorted((a, b) => (a.start < b.start ? -1 : 1))[0];
    await book(
      orders.map((order) => (order.id === first?.orderId ? { ...order, pieces: order.pieces * 2 } : order)),
    );
    await planAnew(30);
    const { unplanned, orders: states } = (await plan()).document;
    expect(unplanned).toEqual([]);
    expect(states.filter(({ state }) => state === "unplanned")).toEqual([]);
    await book(orders);
    await take("undo");
  });

  test("is not left out of a new run, though orders weigh nothing and cost less left out than made", async () => {
    const { frozen } = await freeze(12);
    expect(frozen.length).toBeGreaterThan(2);
    await book(orders.map((order) => ({ ...order, weight: 0 })));
    await planAnew(150);
    expect((await plan()).document.unplanned.length).toBeGreaterThan(0);
    expect(await frozenPlaces(frozen)).toEqual(frozen.map(placeOf));
    await book(orders);
    await take("undo");
  });

  test("is not moved by hand unless that is said", async () => {
    const { frozen, free } = await freeze(12);
    const [held] = frozen;
    const [loose] = free;
    if (held === undefined || loose === undefined) throw new Error("some are frozen, some are not");
    const before = await here();
    const edit: PlanEdit = { kind: "take out", orderId: held.orderId };
    const refusal = problemOf(await ask("edits", { edit }));
    expect(refusal).toMatchObject({ code: "frozen-runs", status: 409 });
    expect(refusal.title).toContain(held.orderId);
    expect(refusal.cause).toContain(localPlanner.id);
    expect(refusal.remedy).toContain("confirm");
    expect(refusal.faults[0]).toMatchObject({ path: "overFrozen" });
    expect(await here()).toEqual(before);
    expect(problemOf(await ask("edits", { edit, overFrozen: "yes" })).code).toBe("invalid-request");

    await take("edits", { edit: { kind: "take out", orderId: loose.orderId } });
    expect(await frozenPlaces(frozen)).toEqual(frozen.map(placeOf));
    await take("undo");
    await take("edits", { edit, overFrozen: true });
    const others = frozen.slice(1);
    expect(await frozenPlaces(others)).toEqual(others.map(placeOf));
    // it is not where it was given out any more, so that what comes after needs no word
    await take("edits", { edit: { kind: "put back", orderId: held.orderId } });
    await take("undo");
    await planAnew(30);
    expect(await frozenPlaces(frozen)).toEqual(frozen.map(placeOf));
    while ((await here()).canUndo) await take("undo");
  });

  test("is pinned in the problem that a browser tries changes in", async () => {
    const { planId } = await here();
    const { frozen } = await freeze(12);
    const served = (await get(`/plans/${planId}/problem`)).json<{
      readonly frozenOrderIds: readonly string[];
      readonly problem: { readonly pins: readonly { readonly orderId: string }[] };
    }>();
    const ids = frozen.map(({ orderId }) => orderId).sort(byText);
    expect(served.frozenOrderIds.toSorted(byText)).toEqual(ids);
    expect(served.problem.pins.map(({ orderId }) => orderId).sort(byText)).toEqual(ids);
  });

  test("an edit that would push a frozen run says which, not the order that is edited", async () => {
    const { document, frozen } = await freeze(12);
    const [pushed] = frozen.toSorted((a, b) => (a.start < b.start ? -1 : 1));
    const other = document.lots.find(
      ({ orderId, lineId }) => lineId === pushed?.lineId && orderId !== pushed.orderId,
    );
    if (pushed === undefined || other === undefined) throw new Error("a line has two orders");
    const edit: PlanEdit = {
      kind: "move",
      orderId: other.orderId,
      lot: other.lot,
      lineId: pushed.lineId,
      before: { orderId: pushed.orderId, lot: pushed.lot },
    };
    const refusal = problemOf(await ask("edits", { edit }));
    expect(refusal.code).toBe("frozen-runs");
    expect(refusal.faults.map(({ problem }) => problem).join(" ")).toContain(pushed.orderId);
    await take("edits", { edit, overFrozen: true });
    await take("undo");
  });

  test("lies within the plan that is given out", async () => {
    const before = await publications();
    const { planId, document } = await plan();
    const outside = [document.horizon.start, instantText(Date.parse(document.horizon.end) + 1000)];
    for (const frozenUntil of outside) {
      const problem = problemOf(await ask("publish", { planId, note: "", frozenUntil }));
      expect(problem).toMatchObject({
        code: "invalid-input",
        status: 422,
        faults: [{ path: "frozenUntil" }],
      });
    }
    for (const frozenUntil of ["tomorrow", 7, "2026-02-30T00:00:00Z", "2026-12-02T05:00:00+01:00"])
      expect(problemOf(await ask("publish", { planId, note: "", frozenUntil }))).toMatchObject({
        code: "invalid-request",
        status: 400,
      });
    expect(await publications()).toEqual(before);
  });
});

describe("earlier steps", () => {
  test("come page by page, newest first, as those of the working plan do", async () => {
    while ((await here()).revision < 60) {
      const { canUndo } = await here();
      await take(canUndo ? "undo" : "redo");
    }
    const { revision, steps } = await here();
    expect(steps).toHaveLength(50);
    const list = async (before: number) =>
      (await get(`/working-plan/steps?before=${before}`)).json<typeof steps>();
    expect(await list(revision + 1)).toEqual(steps);
    const older = await list(steps.at(-1)?.revision ?? 0);
    expect(older.map((step) => step.revision)).toEqual(
      Array.from({ length: revision - 50 }, (_, index) => revision - 50 - index),
    );
    expect(await list(1)).toEqual([]);
    for (const query of ["", "?before=0", "?before=x", "?before=1.5"])
      expect(problemOf(await get(`/working-plan/steps${query}`))).toMatchObject({
        code: "invalid-request",
        status: 400,
      });
  });
});
