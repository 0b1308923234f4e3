import { localPlanner } from "@formweek/application";
import { PlanListResponse } from "@formweek/contracts";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { type ApiServer, fill, openApiServer, orders, plantId } from "../fixtures/api-server.ts";
import { eventually } from "../fixtures/eventually.ts";
import { problemOf } from "../fixtures/http-asks.ts";
import { askForPlan, ended } from "../fixtures/planning-asks.ts";
import { stepAsks } from "../fixtures/step-asks.ts";

let api: ApiServer;
beforeAll(async () => {
  api = await openApiServer();
  await fill(api.app);
});
afterAll(() => api.close());

const { get, here, ask, take, planText, plan } = stepAsks(() => api.server);

/** Plans anew and returns the plan as it is served. */
async function planned(): Promise<string> {
  await ended(api.app, plantId, await askForPlan(api.app, plantId, { seconds: null, steps: 20 }));
  return planText();
}

describe("before the first plan", () => {
  test("the working plan is empty at revision 0, and no step can be taken", async () => {
    expect(await here()).toEqual({
      revision: 0,
      planId: null,
      canUndo: false,
      canRedo: false,
      publishedPlanId: null,
      steps: [],
    });
    for (const [step, body] of [
      ["undo", {}],
      ["redo", {}],
      ["restore", { planId: "x" }],
    ] as const)
      expect(problemOf(await ask(step, body))).toMatchObject({ code: "not-found", status: 404 });
  });
});

describe("the working plan over planning runs", () => {
  const plans: string[] = [];

  test("each run's plan comes in as a step that can be taken back and done again, byte for byte", async () => {
    for (let run = 0; run < 3; run++) plans.push(await planned());
    expect(new Set(plans).size).toBe(3);
    expect(await here()).toMatchObject({ revision: 3, canUndo: true, canRedo: false });
    await take("undo");
    expect(await planText()).toBe(plans[1]);
    await take("undo");
    expect(await planText()).toBe(plans[0]);
    expect(await here()).toMatchObject({ revision: 5, canUndo: false, canRedo: true });
    expect(problemOf(await ask("undo"))).toMatchObject({ code: "nothing-to-undo", status: 409 });
    await take("redo");
    expect(await planText()).toBe(plans[1]);
    await take("redo");
    expect(await planText()).toBe(plans[2]);
    expect(problemOf(await ask("redo"))).toMatchObject({ code: "nothing-to-redo", status: 409 });
    const { steps, ...now } = await here();
    expect(now).toMatchObject({ revision: 7, canUndo: true, canRedo: false });
    expect(steps.map(({ kind }) => kind)).toEqual(["redo", "redo", "undo", "undo", "run", "run", "run"]);
    expect(
      steps.every(({ by, edit, note }) => by === localPlanner.id && edit === null && note === null),
    ).toBe(true);
    for (const [index, step] of steps.entries())
      expect(step.fromPlanId).toBe(steps[index + 1]?.planId ?? null);
  });

  test("an earlier plan is fetched back as a step; a new step ends what could be done again", async () => {
    const { revision } = await take("undo");
    const [first = ""] = plans;
    const { planId } = JSON.parse(first) as { readonly planId: string };
    expect(await take("restore", { planId })).toEqual({ revision: revision + 1, planId });
    expect(await planText()).toBe(first);
    expect(problemOf(await ask("redo")).code).toBe("nothing-to-redo");
    expect(problemOf(await ask("restore", { planId }))).toMatchObject({
      code: "already-working-plan",
      status: 409,
    });
    expect(problemOf(await ask("restore", { planId: "unknown" }))).toMatchObject({ code: "not-found" });
    await take("undo");
    expect(await planText()).toBe(plans[1]);
    await take("redo");
    expect(await planText()).toBe(first);
  });

  test("whatever walk back and forth, each plan is what it was", async () => {
    const seen: string[] = [];
    while ((await here()).canUndo) {
      seen.push(await planText());
      await take("undo");
    }
    seen.push(await planText());
    for (const text of seen.toReversed().slice(1)) {
      await take("redo");
      expect(await planText()).toBe(text);
    }
    expect((await here()).canRedo).toBe(false);
    expect(seen.length).toBeGreaterThan(2);
  });

  test("the order book and the tables go by it", async () => {
    const document = (await plan()).document;
    const book = (await get("/orders")).json<{
      readonly orders: readonly { readonly id: string; readonly finish: string | null }[];
    }>();
    const finishes = new Map(document.orders.map(({ orderId, finish }) => [orderId, finish]));
    expect(book.orders.map(({ id, finish }) => [id, finish])).toEqual(
      book.orders.map(({ id }) => [id, finishes.get(id)]),
    );
    expect(book.orders).toHaveLength(orders.length);
    const { planId } = await here();
    expect((await get("/plans/latest/table?format=csv")).body).toBe(
      (await get(`/plans/${planId}/table?format=csv`)).body,
    );
    expect(PlanListResponse.parse((await get("/plans")).json())).toHaveLength(3);
  });
});

describe("a step on what is not there any more", () => {
  test("is refused, names who did what since, and changes nothing", async () => {
    const before = await here();
    await take("undo");
    const now = await here();
    for (const [step, body] of [
      ["undo", {}],
      ["redo", {}],
      ["restore", { planId: before.planId }],
    ] as const) {
      const problem = problemOf(await ask(step, { ...body, revision: before.revision }));
      expect(problem).toMatchObject({ code: "working-plan-changed", status: 409 });
      expect(problem.cause).toContain(`${localPlanner.id} took a step back`);
      expect(problem.cause).toContain(now.steps[0]?.at);
    }
    expect(problemOf(await ask("undo", { revision: 1 })).cause).toMatch(/\d+ steps before that/);
    const ahead = problemOf(await ask("redo", { revision: now.revision + 1 }));
    expect(ahead.code).toBe("working-plan-changed");
    expect(ahead.cause).toContain(`revision ${now.revision}`);
    expect(await here()).toEqual(now);
    await take("redo");
  });

  test("two planners at once: one is first, the other is told", async () => {
    const { revision } = await here();
    const answers = await Promise.all(["planner", "manager"].map((role) => ask("undo", { revision }, role)));
    expect(answers.map(({ statusCode }) => statusCode).sort((a, b) => a - b)).toEqual([200, 409]);
    const told = answers.find(({ statusCode }) => statusCode === 409);
    expect(told === undefined ? null : problemOf(told).cause).toMatch(
      /test-(planner|manager) took a step back/,
    );
    expect((await here()).revision).toBe(revision + 1);
    await take("redo");
  });

  test.each([
    ["undo", {}],
    ["undo", { revision: -1 }],
    ["redo", { revision: "1" }],
    ["redo", { revision: 1.5 }],
    ["restore", { revision: 1 }],
    ["restore", { revision: 1, planId: "" }],
    ["restore", { revision: 1, planId: 7 }],
  ])("a bad request is named: %s %o", async (step, body) => {
    const payload = JSON.stringify(body);
    const answer = await api.server.inject({
      method: "POST",
      url: `/api/plants/${plantId}/working-plan/${step}`,
      payload,
      headers: { "content-type": "application/json" },
    });
    const problem = problemOf(answer);
    expect(problem).toMatchObject({ code: "invalid-request", status: 400 });
    expect(problem.faults.length).toBeGreaterThan(0);
  });
});

test("each step is told to whoever watches the plant", async () => {
  const told: unknown[] = [];
  const watching = await api.app.queries.watchPlant(
    { plantId, afterSequence: null, onMessage: ({ body }) => void told.push(body) },
    localPlanner,
  );
  const undone = await take("undo");
  const redone = await take("redo");
  await planned();
  const { revision, planId } = await here();
  await eventually("all are told", () =>
    told.some((body) => (body as { readonly type: string }).type === "solve-ended"),
  );
  const changes = told.filter((body) => (body as { readonly type: string }).type === "working-plan-changed");
  expect(changes).toEqual(
    [undone, redone, { revision, planId }].map((step) => ({ type: "working-plan-changed", ...step })),
  );
  if (watching.ok) await watching.value.close();
});
