import { localPlanner } from "@formweek/application";
import { OrderBookResponse } from "@formweek/contracts";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { type ApiServer, fill, openApiServer, plant, plantId } from "../fixtures/api-server.ts";
import { problemOf } from "../fixtures/http-asks.ts";
import { askForPlan, ended } from "../fixtures/planning-asks.ts";
import { HOUR, enquiryOf, isoIn, promiseAsks } from "../fixtures/promise-asks.ts";
import { stepAsks } from "../fixtures/step-asks.ts";

let api: ApiServer;
beforeAll(async () => {
  api = await openApiServer();
  await fill(api.app);
});
afterAll(() => api.close());

const { post, promise, alternatives, holdBody, holdFirst, holds } = promiseAsks(() => api.server);
const { here, ask, take, plan } = stepAsks(() => api.server);
const book = async () =>
  OrderBookResponse.parse((await api.server.inject({ url: `/api/plants/${plantId}/orders` })).json());
const planned = async (): Promise<void> => {
  const runId = await askForPlan(api.app, plantId, { seconds: null, steps: 200 });
  await ended(api.app, plantId, runId);
};

describe("an enquiry", () => {
  test("has no answer before the plant was planned, and says what to do", async () => {
    const problem = problemOf(await post("/promises", enquiryOf()));
    expect(problem).toMatchObject({ status: 409, code: "not-planned-yet" });
    expect(problem.remedy).toContain("planning run");
    await planned();
  });

  test("is answered with its line, mould, change, shift and price, on the working plan", async () => {
    const before = await plan();
    const given = await promise({ product: plant.products[0]!.name.toUpperCase(), partsAllowed: true });
    expect(given).toMatchObject({
      enquiry: { productId: plant.products[0]!.id, wantedAt: null },
      base: {
        planId: before.planId,
        revision: (await here()).revision,
        sameInputs: true,
        unplannedHolds: [],
      },
      currency: plant.currency,
    });
    const { outcome } = given;
    if (outcome.status !== "promised") throw new Error(outcome.status);
    const [part] = outcome.offer.parts;
    expect(outcome.offer).toMatchObject({ kind: "whole", slackSeconds: null, displaced: [], holdable: true });
    expect(plant.lines.map(({ id }) => id)).toContain(part!.lineId);
    expect(part!.shift).not.toBeNull();
    expect(part!.finish >= part!.end && part!.promised >= part!.finish).toBe(true);
    expect(await plan()).toEqual(before);
  });

  test("of a product whose rate is not proven has a margin that says where it is from", async () => {
    const proven = new Set<string>(plant.provenRates.map(({ productId }) => productId));
    const unproven = plant.products.find(({ id }) => !proven.has(id))!;
    const { outcome } = await promise({ product: unproven.id, pieces: 100_000 });
    if (outcome.status !== "promised") throw new Error(outcome.status);
    const [part] = outcome.offer.parts;
    expect(part!.rate.basis).toMatchObject({ kind: "computed", from: { kind: "plant" } });
    expect(part!.promised > part!.finish).toBe(true);
  });

  test("that cannot be is told at its fields; an unknown product with the names most like it", async () => {
    const [product] = plant.products;
    const wrong: readonly (readonly [object, string])[] = [
      [{ product: `${product!.id}x` }, "product"],
      [{ product: "  " }, "product"],
      [{ pieces: 0 }, "pieces"],
      [{ pieces: 1.5 }, "pieces"],
      [{ pieces: 1e12 }, "pieces"],
      [{ wanted: "2020-01-01" }, "wanted"],
      [{ wanted: "2099-01-01" }, "wanted"],
      [{ wanted: "2026-02-30" }, "wanted"],
      [{ wanted: "soon" }, "wanted"],
    ];
    for (const [asked, path] of wrong) {
      const problem = problemOf(await post("/promises", enquiryOf(asked)));
      expect([asked, problem]).toMatchObject([
        asked,
        { code: "invalid-input", status: 422, faults: [{ path }] },
      ]);
    }
    const problem = problemOf(await post("/promises", enquiryOf({ product: `${product!.id}x` })));
    expect(problem.nearest).toContain(product!.id);
  });

  test("for more than the horizon holds is impossible, with a reason for each line", async () => {
    const { outcome } = await promise({ pieces: 900_000_000 });
    if (outcome.status !== "impossible") throw new Error(outcome.status);
    for (const reason of outcome.reasons) expect(reason.text.length).toBeGreaterThan(10);
    expect(outcome.reasons.some(({ cause }) => cause !== undefined)).toBe(true);
  });

  test("has other ways, each with its price, or says why it has not", async () => {
    const { offers, none } = await alternatives({
      pieces: 300_000,
      wanted: "2026-12-02",
      partsAllowed: true,
    });
    const kinds = [...offers, ...none].map(({ kind }) => kind).toSorted((a, b) => (a < b ? -1 : 1));
    expect(kinds).toEqual(["displacing", "extra shift", "first part", "split"]);
    for (const offer of offers) {
      expect(offer.parts.length).toBeGreaterThan(0);
      if (offer.kind === "extra shift") expect(offer.shift).not.toBeNull();
      expect(offer.price.cost).toBeCloseTo(
        offer.price.terms.reduce((sum, { cost }) => sum + cost, 0),
        1,
      );
    }
    const whole = await alternatives({ pieces: 300_000 });
    expect(whole.none).toContainEqual({ kind: "split", reason: "parts-not-allowed" });
  });
});

describe("a hold", () => {
  test("takes the capacity for everyone, by a step that undo does not go back over", async () => {
    const first = await promise();
    const { hold } = await holdFirst();
    const after = await plan();
    expect(hold).toMatchObject({ state: "held", keepsPromise: true, customer: "A customer" });
    expect(after.document.lots.map(({ orderId }) => orderId)).toContain(hold.orderId);
    const { steps, canUndo } = await here();
    expect(steps[0]).toMatchObject({ kind: "hold", edit: { kind: "hold", orderId: hold.orderId } });
    expect(canUndo).toBe(false);
    expect(problemOf(await ask("undo")).cause).toContain("held for a customer");
    expect((await holds()).holds).toContainEqual(hold);
    expect((await book()).orders.map(({ id }) => id)).not.toContain(hold.orderId);
    expect((await book()).planInputs).toBe("same");

    const second = await promise();
    if (first.outcome.status !== "promised" || second.outcome.status !== "promised")
      throw new Error("no offer");
    expect(second.outcome.offer.finish > first.outcome.offer.finish).toBe(true);
    const again = await post("/holds", holdBody({}, first.outcome.offer.promised));
    expect(problemOf(again)).toMatchObject({
      status: 409,
      code: "promise-moved",
      offer: { kind: "whole", promised: second.outcome.offer.promised },
    });
    expect(await plan()).toEqual(after);
  });

  test("is in every later planning run, and in place after an edit by hand", async () => {
    const { hold } = await holdFirst({ product: plant.products[3]!.id }, { until: isoIn(HOUR / 2) });
    expect((await book()).planInputs).toBe("same");
    await planned();
    expect((await book()).planInputs).toBe("same");
    expect((await plan()).document.orders.find(({ orderId }) => orderId === hold.orderId)).toMatchObject({
      customer: "A customer",
      due: hold.promised,
      state: "on time",
    });
    const other = (await plan()).document.lots.find(({ orderId }) => !orderId.startsWith("H-"))!;
    await take("edits", { edit: { kind: "take out", orderId: other.orderId } });
    expect((await plan()).document.lots.map(({ orderId }) => orderId)).toContain(hold.orderId);
    await take("undo");
  });

  test("with the same key answers the same; the key for something else is refused", async () => {
    const { outcome } = await promise();
    if (outcome.status !== "promised") throw new Error(outcome.status);
    const body = holdBody({}, outcome.offer.promised);
    const [one, other] = await Promise.all([post("/holds", body), post("/holds", body)]);
    expect(one.statusCode).toBe(200);
    expect(other.json()).toEqual(one.json());
    const problem = problemOf(await post("/holds", { ...body, customer: "Somebody else" }));
    expect(problem).toMatchObject({ code: "hold-key-used", status: 409, faults: [{ path: "key" }] });
  });

  test("is refused for a time that is past or far, a date that never was offered, and kinds for a planner", async () => {
    const { revision } = await here();
    const wrong: readonly (readonly [object, string])[] = [
      [{ until: isoIn(-10) }, "invalid-input"],
      [{ until: isoIn(31 * 24 * HOUR) }, "invalid-input"],
      [{ offer: { kind: "whole", promised: "2020-01-01T00:00:00Z" } }, "promise-moved"],
      [{ offer: { kind: "whole", promised: "2099-01-01T00:00:00Z" } }, "invalid-input"],
      [{ offer: { kind: "extra shift", promised: "2026-12-20T00:00:00Z" } }, "offer-gone"],
      [{ offer: { kind: "split", promised: "2026-12-20T00:00:00Z" } }, "offer-gone"],
      [{ enquiry: enquiryOf({ product: "nothing" }) }, "invalid-input"],
      [{ customer: "  " }, "invalid-request"],
    ];
    for (const [more, code] of wrong) {
      const problem = problemOf(await post("/holds", holdBody({}, "2026-12-20T00:00:00Z", more)));
      expect([more, problem.code]).toEqual([more, code]);
    }
    expect((await here()).revision).toBe(revision);
  });

  test("that is released gives its hours back, once", async () => {
    const before = await promise();
    const { hold } = await holdFirst();
    const released = await post(`/holds/${hold.holdId}/release`, {});
    expect(released.json()).toMatchObject({ hold: { state: "released", endedBy: localPlanner.id } });
    expect((await post(`/holds/${hold.holdId}/release`, {})).json()).toEqual(released.json());
    expect((await plan()).document.orders.map(({ orderId }) => orderId)).not.toContain(hold.orderId);
    expect((await here()).steps[0]).toMatchObject({
      kind: "hold",
      edit: { kind: "end holds", state: "released" },
    });
    expect((await promise()).outcome).toEqual(before.outcome);
    const late = await post(`/holds/${hold.holdId}/order`, {
      orderNumber: "A-9",
      revision: (await book()).revision,
    });
    expect(problemOf(late).code).toBe("hold-ended");
    expect(problemOf(await post("/holds/unknown/release", {})).status).toBe(404);
  });

  test("of another seller is theirs or a planner's to change", async () => {
    const { hold } = await holdFirst();
    expect(problemOf(await post(`/holds/${hold.holdId}/release`, {}, "sales")).code).toBe("forbidden");
    expect((await post(`/holds/${hold.holdId}/release`, {}, "planner")).statusCode).toBe(200);
  });

  test("becomes an order of the book: its run stays where it is, under the order's number", async () => {
    const { hold } = await holdFirst();
    const run = (await plan()).document.lots.find(({ orderId }) => orderId === hold.orderId)!;
    const { revision } = await book();
    const stale = await post(`/holds/${hold.holdId}/order`, { orderNumber: "A-1", revision: revision + 5 });
    expect(problemOf(stale).code).toBe("order-book-changed");
    const taken = { orderNumber: (await book()).orders[0]!.id, revision };
    expect(problemOf(await post(`/holds/${hold.holdId}/order`, taken))).toMatchObject({
      code: "invalid-input",
      faults: [{ path: "orderNumber" }],
    });
    const ordered = await post(`/holds/${hold.holdId}/order`, { orderNumber: "A-1", revision });
    expect(ordered.json()).toMatchObject({ hold: { state: "ordered", orderId: "A-1" } });
    const after = await plan();
    expect(after.document.lots.find(({ orderId }) => orderId === "A-1")).toEqual({ ...run, orderId: "A-1" });
    const { orders, planInputs } = await book();
    expect(orders.find(({ id }) => id === "A-1")).toMatchObject({ dueAt: hold.promised, state: "on time" });
    expect(planInputs).toBe("same");
    const again = await post(`/holds/${hold.holdId}/order`, { orderNumber: "A-1", revision });
    expect(again.statusCode).toBe(200);
  });

  test("that ran out is gone at the next look", async () => {
    const { hold } = await holdFirst({}, { until: isoIn(2) });
    await new Promise((resolve) => setTimeout(resolve, 2500));
    expect((await holds()).holds.find(({ holdId }) => holdId === hold.holdId)).toMatchObject({
      state: "expired",
      endedBy: null,
    });
    expect((await plan()).document.orders.map(({ orderId }) => orderId)).not.toContain(hold.orderId);
  });

  test("is told to whoever watches the plant", async () => {
    const told: string[] = [];
    const watching = await api.app.queries.watchPlant(
      {
        plantId,
        afterSequence: null,
        onMessage: ({ body }) => void (body.type === "holds-changed" && told.push(body.state)),
      },
      localPlanner,
    );
    const { hold } = await holdFirst();
    await post(`/holds/${hold.holdId}/release`, {});
    expect(told).toEqual(["held", "released"]);
    if (watching.ok) await watching.value.close();
  });

  test("keeps an earlier plan from coming back that has no place for it", async () => {
    const earlier = (await plan()).planId;
    const { hold } = await holdFirst();
    expect(problemOf(await ask("restore", { planId: earlier }))).toMatchObject({ code: "holds-not-planned" });
    await post(`/holds/${hold.holdId}/release`, {});
    await take("restore", { planId: earlier });
  });
});
