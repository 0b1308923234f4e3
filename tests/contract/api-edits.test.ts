import { planOfDocument } from "@formweek/application";
import {
  type PlanEdit,
  PlanListResponse,
  PlanProblemResponse,
  type PlanDocument,
  StepResponse,
} from "@formweek/contracts";
import { type ProblemData, auditPlan, openEdits } from "@formweek/scheduler";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { type ApiServer, fill, openApiServer, plant, plantId } from "../fixtures/api-server.ts";
import { problemOf } from "../fixtures/http-asks.ts";
import { askForPlan, ended } from "../fixtures/planning-asks.ts";
import { stepAsks } from "../fixtures/step-asks.ts";

let api: ApiServer;
beforeAll(async () => {
  api = await openApiServer();
  await fill(api.app);
  await ended(api.app, plantId, await askForPlan(api.app, plantId, { seconds: null, steps: 50 }));
});
afterAll(() => api.close());

const { get, here, ask, take, planText, plan } = stepAsks(() => api.server);
const edit = (change: PlanEdit | Readonly<Record<string, unknown>>) => ask("edits", { edit: change });

/** The problem of a plan as a browser gets it. */
async function problemOfPlan(planId: string): Promise<ProblemData> {
  const served = PlanProblemResponse.parse((await get(`/plans/${planId}/problem`)).json());
  expect(served.sameInputs).toBe(true);
  return served.problem as unknown as ProblemData;
}

/** Every lot at every other line's end, and each order in two, in one again, out and in: more than are wanted. */
function changesOf({ lots }: PlanDocument): readonly PlanEdit[] {
  const moves = lots.flatMap(({ orderId, lot, lineId: from }): readonly PlanEdit[] =>
    plant.lines.flatMap(({ id: lineId }): readonly PlanEdit[] =>
      lineId === from ? [] : [{ kind: "move", orderId, lot, lineId, before: null }],
    ),
  );
  const others = lots.flatMap(({ orderId, lot, lineId, pieces }): readonly PlanEdit[] => [
    { kind: "split", orderId, lot, pieces: Math.floor(pieces / 2), lineId, before: null },
    { kind: "join", orderId },
    { kind: "take out", orderId },
    { kind: "put back", orderId },
  ]);
  return Array.from({ length: Math.max(moves.length, others.length) }, (_, index) =>
    [others[index], moves[(index * 7) % moves.length]].flatMap((change) =>
      change === undefined ? [] : [change],
    ),
  ).flat();
}

describe("changes by hand", () => {
  test("thirty of all kinds, each audited, taken back and done again: every plan is what it was, byte for byte", async () => {
    const texts = [await planText()];
    const kinds: string[] = [];
    for (const change of changesOf((await plan()).document)) {
      if (texts.length > 30) break;
      const before = await here();
      const answer = await edit(change);
      if (answer.statusCode !== 200) {
        const refusal = problemOf(answer);
        expect(refusal).toMatchObject({ code: "edit-refused", status: 422 });
        expect(refusal.faults[0]?.path).toMatch(/^edit\.(orderId|lot|lineId|before|pieces)$/);
        expect(await here()).toEqual(before);
        continue;
      }
      const { revision, planId } = StepResponse.parse(answer.json());
      if (planId === before.planId) {
        expect(revision).toBe(before.revision);
        continue;
      }
      expect(revision).toBe(before.revision + 1);
      expect((await here()).steps[0]).toMatchObject({
        kind: "edit",
        edit: change,
        fromPlanId: before.planId,
        planId,
      });
      kinds.push(change.kind);
      texts.push(await planText());
      const problem = await problemOfPlan(planId);
      expect(auditPlan(problem, planOfDocument((await plan()).document, problem))).toEqual([]);
    }
    expect(texts).toHaveLength(31);
    expect(new Set(kinds)).toEqual(new Set(["join", "move", "put back", "split", "take out"]));
    for (const text of texts.toReversed().slice(1)) {
      await take("undo");
      expect(await planText()).toBe(text);
    }
    expect((await here()).canUndo).toBe(false);
    for (const text of texts.slice(1)) {
      await take("redo");
      expect(await planText()).toBe(text);
    }
    const { steps, canRedo } = await here();
    expect(canRedo).toBe(false);
    expect(steps.slice(0, 30).every(({ kind, edit: change }) => kind === "redo" && change !== null)).toBe(
      true,
    );
    while ((await here()).canUndo) await take("undo");
  });

  test("a browser that tries a change on the problem it is served comes to the server's plan", async () => {
    const { planId, document } = await plan();
    const problem = await problemOfPlan(planId);
    const opened = openEdits(problem, planOfDocument(document, problem));
    if (!opened.ok) throw new Error("the problem is faulty");
    const { orderId = "" } = document.lots[0] ?? {};
    const tried = opened.value.apply({ kind: "take out", orderId });
    if (!tried.ok) throw new Error(tried.error.text);
    await take("edits", { edit: { kind: "take out", orderId } });
    const served = planOfDocument((await plan()).document, problem);
    expect(served).toEqual(tried.value);
    await take("undo");
  });

  test("an order that was taken out stays out of every later change, until it is put back", async () => {
    const { document } = await plan();
    const [{ orderId: out } = { orderId: "" }, ...others] = document.lots;
    await take("edits", { edit: { kind: "take out", orderId: out } });
    const next = others.find(({ orderId }) => orderId !== out)?.orderId ?? "";
    await take("edits", { edit: { kind: "take out", orderId: next } });
    await take("edits", { edit: { kind: "put back", orderId: next } });
    const without = (await plan()).document;
    expect(without.orders.find(({ orderId }) => orderId === out)?.state).toBe("unplanned");
    expect(without.unplanned).toMatchObject([{ orderId: out, reasons: [{ code: "taken-out" }] }]);
    await take("edits", { edit: { kind: "put back", orderId: out } });
    expect((await plan()).document.unplanned).toEqual([]);
    while ((await here()).canUndo) await take("undo");
  });

  test("the list of plans tells what each was made from", async () => {
    const { planId: parentPlanId, document } = await plan();
    const change: PlanEdit = { kind: "take out", orderId: document.lots[0]?.orderId ?? "" };
    const { planId } = await take("edits", { edit: change });
    const heads = PlanListResponse.parse((await get("/plans")).json());
    expect(heads.find((head) => head.planId === planId)).toMatchObject({
      parentPlanId,
      edit: change,
      steps: 0,
    });
    expect(heads.find((head) => head.planId === parentPlanId)).toMatchObject({
      parentPlanId: null,
      edit: null,
    });
    await take("undo");
  });
});

describe("a change by hand is refused, and nothing changes", () => {
  const first = async () => {
    const [lot] = (await plan()).document.lots;
    if (lot === undefined) throw new Error("nothing is planned");
    return lot;
  };

  test("for orders, lots, lines and places that are not there", async () => {
    const before = await here();
    const { orderId, lot, lineId } = await first();
    const cases = [
      [{ kind: "move", orderId: "nobody", lot: 0, lineId, before: null }, "edit.orderId", "nobody"],
      [{ kind: "move", orderId, lot: 99, lineId, before: null }, "edit.lot", orderId],
      [{ kind: "move", orderId, lot, lineId: "L99", before: null }, "edit.lineId", "L99"],
      [{ kind: "move", orderId, lot, lineId, before: { orderId: "ghost", lot: 0 } }, "edit.before", "ghost"],
      [{ kind: "move", orderId, lot, lineId, before: null, mouldId: "M99" }, "edit.mouldId", "M99"],
      [{ kind: "put back", orderId }, "edit.orderId", orderId],
      [{ kind: "take out", orderId: "a\0b" }, "edit.orderId", ""],
    ] as const;
    for (const [change, path, named] of cases) {
      const refusal = problemOf(await edit(change));
      expect(refusal).toMatchObject({ code: "edit-refused", status: 422, faults: [{ path }] });
      expect(refusal.cause).toContain(named);
    }
    expect(await here()).toEqual(before);
  });

  test.each([
    {},
    { kind: "swap", orderId: "A" },
    { kind: "move", orderId: "A", lot: 0, lineId: "L1" },
    { kind: "move", orderId: "A", lot: -1, lineId: "L1", before: null },
    { kind: "move", orderId: "A", lot: 0.5, lineId: "L1", before: null },
    { kind: "move", orderId: "A", lot: 0, lineId: "", before: null },
    { kind: "move", orderId: "A", lot: 0, lineId: "L1", before: { orderId: "B" } },
    { kind: "split", orderId: "A", lot: 0, pieces: 0, lineId: "L1", before: null },
    { kind: "split", orderId: "A", lot: 0, pieces: "many", lineId: "L1", before: null },
    { kind: "take out" },
    { kind: "join", orderId: 7 },
  ])("for a request that is none: %o", async (change) => {
    const before = await here();
    const problem = problemOf(await edit(change));
    expect(problem).toMatchObject({ code: "invalid-request", status: 400 });
    expect(problem.faults.length).toBeGreaterThan(0);
    expect(await here()).toEqual(before);
  });

  test("on a plan that is not the one any more; of two planners at once, one is first", async () => {
    const { orderId } = await first();
    const change = { kind: "take out", orderId } as const;
    const { revision } = await here();
    const answers = await Promise.all(
      ["planner", "manager"].map((role) => ask("edits", { edit: change, revision }, role)),
    );
    expect(answers.map(({ statusCode }) => statusCode).sort((a, b) => a - b)).toEqual([200, 409]);
    const late = problemOf(await ask("edits", { edit: change, revision }));
    expect(late).toMatchObject({ code: "working-plan-changed", status: 409 });
    expect(late.cause).toMatch(/test-(planner|manager) changed it by hand/);
    expect(late.cause).toContain(`order ${orderId} taken out`);
    expect((await here()).revision).toBe(revision + 1);
    await take("undo");
  });
});
