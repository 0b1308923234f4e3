import { planOfDocument } from "@formweek/application";
import { type HoursEdit, PlanProblemResponse, PlantResponse } from "@formweek/contracts";
import { Plant } from "@formweek/capacity-model";
import { type ProblemData, auditPlan } from "@formweek/scheduler";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { type ApiServer, fill, openApiServer, plantId } from "../fixtures/api-server.ts";
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
const plantText = async () => (await get("")).body;
const records = async () => {
  const { revision, plant } = PlantResponse.parse(JSON.parse(await plantText()));
  return { revision, plant: Plant.parse(plant) };
};
const change = (edit: HoursEdit | Readonly<Record<string, unknown>>, more = {}) =>
  ask("hours", { edit, ...more });

const closing: HoursEdit = {
  kind: "close line",
  closure: { lineId: "L1", from: "2026-11-30T08:00", to: "2026-12-02T06:00", reason: "Oven repair" },
};
const saturday: HoursEdit = {
  kind: "add shift",
  shift: {
    date: "2026-12-05",
    name: "early",
    start: "06:00",
    end: "14:00",
    breaks: [],
    lineIds: ["L1", "L2"],
    teamIds: ["setters-B"],
    operators: [{ poolId: "operators", heads: 1.5 }],
  },
};

async function auditedNow(): Promise<void> {
  const { planId, document } = await plan();
  const served = PlanProblemResponse.parse((await get(`/plans/${planId}/problem`)).json());
  expect(served.sameInputs).toBe(true);
  const problem = served.problem as unknown as ProblemData;
  expect(auditPlan(problem, planOfDocument(document, problem))).toEqual([]);
}

describe("hours of a plant", () => {
  test("a line is closed and opened, a shift added and taken back: the plan is timed again at each, and all goes back and forth with the plan's own steps", async () => {
    const before = { plan: await planText(), plant: (await records()).plant };
    const states = [before];
    const lot = (await plan()).document.lots.find(({ lineId }) => lineId === "L1");
    const takeOut = { kind: "take out", orderId: lot?.orderId } as const;
    const asks: readonly (readonly [string, HoursEdit | typeof takeOut])[] = [
      ["hours", closing],
      ["edits", takeOut],
      ["hours", saturday],
      ["hours", { kind: "open line", closure: closing.closure }],
      ["hours", { kind: "take shift back", shift: saturday.shift }],
    ];
    for (const [path, edit] of asks) {
      await take(path, { edit });
      expect((await here()).steps[0]).toMatchObject({ kind: "edit", edit });
      await auditedNow();
      states.push({ plan: await planText(), plant: (await records()).plant });
    }
    expect(states[1]?.plant.lineClosures).toEqual([closing.closure]);
    expect(states[3]?.plant.addedShifts).toEqual([saturday.shift]);
    expect(states.at(-1)?.plant).toEqual(before.plant);
    const [, closed, , added] = states.map(
      (state) => JSON.parse(state.plan) as Awaited<ReturnType<typeof plan>>,
    );
    const line = (of: typeof closed, id: string) => of?.document.lines.find((each) => each.id === id);
    expect(line(closed, "L1")?.closures).toContainEqual({
      start: "2026-11-30T07:00:00Z",
      end: "2026-12-02T05:00:00Z",
      reason: "Oven repair",
    });
    const instants = { start: "2026-12-05T05:00:00Z", end: "2026-12-05T13:00:00Z" };
    expect(line(added, "L2")?.extraShifts).toEqual([{ ...instants, name: "early" }]);
    expect(line(added, "L4")?.extraShifts).toEqual([]);
    const team = added?.document.teams.find(({ id }) => id === "setters-B");
    expect(team?.open).toContainEqual([instants.start, instants.end]);

    for (const state of states.toReversed().slice(1)) {
      await take("undo");
      expect(await planText()).toBe(state.plan);
      expect((await records()).plant).toEqual(state.plant);
    }
    expect((await here()).canUndo).toBe(false);
    for (const state of states.slice(1)) {
      await take("redo");
      expect(await planText()).toBe(state.plan);
      expect((await records()).plant).toEqual(state.plant);
    }
    while ((await here()).canUndo) await take("undo");
  });

  test("an earlier plan that is fetched back leaves the hours alone, and so does undoing that", async () => {
    await take("hours", { edit: closing });
    const { planId } = await plan();
    await take("undo");
    await take("restore", { planId });
    expect((await records()).plant.lineClosures).toEqual([]);
    await take("undo");
    expect((await records()).plant.lineClosures).toEqual([]);
  });

  test("a plan that is given out keeps what an undo takes back", async () => {
    await take("hours", { edit: closing });
    await take("publish", { planId: (await here()).planId, note: "" });
    await take("undo");
    expect((await records()).plant.lineClosures).toEqual([]);
  });

  test("who planned before the change is told of it, and a plant changed in the meantime is not overwritten", async () => {
    const { revision } = await here();
    await take("hours", { edit: closing });
    const late = problemOf(await change(saturday, { revision }));
    expect(late).toMatchObject({ code: "working-plan-changed", status: 409 });
    expect(late.cause).toContain("line L1 closed from 2026-11-30T08:00 (Oven repair)");
    await take("undo");
    const standing = (await here()).revision;
    const both = await Promise.all(
      ["planner", "manager"].map((role) => ask("hours", { edit: closing, revision: standing }, role)),
    );
    expect(both.map(({ statusCode }) => statusCode).sort((a, b) => a - b)).toEqual([200, 409]);
    expect((await records()).plant.lineClosures).toEqual([closing.closure]);
    await take("undo");
  });

  test("the people who watch are told that the plant and the working plan changed", async () => {
    const { revision } = await records();
    await take("hours", { edit: closing });
    const after = await records();
    expect(after.revision).toBe(revision + 1);
    await take("undo");
    expect((await records()).revision).toBe(revision + 2);
  });
});

describe("a change of hours is refused, and nothing changes", () => {
  const state = async () => [await plantText(), await planText(), JSON.stringify(await here())];

  test("for a field that cannot be, which is named", async () => {
    const before = await state();
    const closure = closing.closure;
    const cases = [
      [{ ...closing, closure: { ...closure, lineId: "a\0b" } }, "edit.closure.lineId"],
      [{ ...closing, closure: { ...closure, to: closure.from } }, "edit.closure.to"],
      [{ ...closing, closure: { ...closure, from: "2026-02-30T06:00" } }, "edit.closure.from"],
      [{ kind: "open line", closure }, "edit.closure.from"],
      [{ ...saturday, shift: { ...saturday.shift, date: "2026-12-04" } }, "edit.shift.lineIds.0"],
      [{ ...saturday, shift: { ...saturday.shift, teamIds: ["nobody"] } }, "edit.shift.teamIds.0"],
      [{ kind: "take shift back", shift: { ...saturday.shift, date: "2026-02-30" } }, "edit.shift.date"],
    ] as const;
    for (const [edit, path] of cases) {
      const refusal = problemOf(await change(edit));
      expect(refusal).toMatchObject({ code: "hours-refused", status: 422 });
      expect(refusal.faults[0]?.path).toBe(path);
    }
    expect(await state()).toEqual(before);
  });

  test.each([
    {},
    { kind: "close line" },
    { kind: "close line", closure: { ...closing.closure, from: "today" } },
    { kind: "close line", closure: { ...closing.closure, reason: " " } },
    { kind: "add shift", shift: { ...saturday.shift, start: "24:00" } },
    { kind: "add shift", shift: { ...saturday.shift, operators: [{ poolId: "operators", heads: -1 }] } },
    { kind: "take out", orderId: "A" },
  ])("for a request that is none: %o", async (edit) => {
    const before = await state();
    expect(problemOf(await change(edit))).toMatchObject({ code: "invalid-request", status: 400 });
    expect(await state()).toEqual(before);
  });
});
