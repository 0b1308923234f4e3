import type { HoursEdit, PlanEdit, PlanStep, StoredPlan } from "@formweek/application";
import { describe, expect, test } from "vitest";
import { aPlan, anEditedPlan, newId } from "../../fixtures/stored-records.ts";
import type { OpenedStore } from "./opened-store.ts";

const step = (revision: number, planId: string, more: Partial<PlanStep> = {}): PlanStep => ({
  revision,
  kind: "run",
  fromPlanId: null,
  planId,
  undoTo: revision === 1 ? null : revision - 1,
  redoTo: null,
  records: null,
  note: null,
  frozenUntil: null,
  by: "local",
  at: 1_795_000_000 + revision,
  ...more,
});

/** The part of every store that keeps the steps of a plant's working plan. */
export function stepsSuite(opened: OpenedStore): void {
  const { commit, newPlant } = opened;
  const append = (plantId: string, next: PlanStep) => commit(({ steps }) => steps.append(plantId, next));
  const newest = (plantId: string) => opened.store().read(({ steps }) => steps.newest(plantId));
  const withPlans = async (count: number) => {
    const plantId = await newPlant();
    const plans = Array.from({ length: count }, () => aPlan(plantId, newId()));
    for (const plan of plans) await commit((repositories) => repositories.plans.insertOnce(plan));
    return { plantId, ids: plans.map(({ id }) => id) as [string, ...string[]], plans };
  };

  describe("steps of the working plan", () => {
    test("a plant that was never planned has none", async () => {
      const plantId = await newPlant();
      expect(await newest(plantId)).toBeNull();
      expect(await opened.store().read(({ steps }) => steps.after(plantId, 0, 50))).toEqual([]);
      expect(await opened.store().read(({ steps }) => steps.published(plantId, 50))).toEqual([]);
      expect(await opened.store().read(({ steps }) => steps.get(plantId, 1))).toBeNull();
    });

    test("steps come back field by field, newest first, from a revision on and no more than asked for", async () => {
      const { plantId, ids } = await withPlans(2);
      const [one, two = ""] = ids;
      const added = [
        step(1, one),
        step(2, two, { fromPlanId: one }),
        step(3, one, { kind: "undo", fromPlanId: two, undoTo: null, redoTo: 2, by: "Ü" }),
        step(4, one, {
          kind: "publish",
          fromPlanId: one,
          redoTo: 2,
          note: 'Week 49 "final"',
          frozenUntil: 1_796_000_000,
        }),
      ];
      for (const each of added) expect(await append(plantId, each)).toBe(true);
      expect(await newest(plantId)).toEqual(added[3]);
      expect(await opened.store().read(({ steps }) => steps.get(plantId, 3))).toEqual(added[2]);
      const after = await opened.store().read(({ steps }) => steps.after(plantId, 1, 2));
      expect(after).toEqual([added[3], added[2]].map((each) => ({ ...each, edit: null })));
      const before = await opened.store().read(({ steps }) => steps.before(plantId, 4, 2));
      expect(before).toEqual([added[2], added[1]].map((each) => ({ ...each, edit: null })));
      expect(await opened.store().read(({ steps }) => steps.published(plantId, 5))).toEqual([added[3]]);
    });

    test("a step names the change by hand between its plans, there and back", async () => {
      const { plantId, ids, plans } = await withPlans(2);
      const [one, other = ""] = ids;
      const edit: PlanEdit = { kind: "take out", orderId: "A/1" };
      const edited = anEditedPlan(plans[0] as StoredPlan, edit);
      await commit((repositories) => repositories.plans.insertOnce(edited));
      const added = [
        step(1, one),
        step(2, edited.id, { kind: "edit", fromPlanId: one }),
        step(3, one, { kind: "undo", fromPlanId: edited.id, undoTo: null, redoTo: 2 }),
        step(4, edited.id, { kind: "redo", fromPlanId: one, undoTo: 1 }),
        step(5, other, { kind: "restore", fromPlanId: edited.id }),
        step(6, edited.id, { kind: "undo", fromPlanId: other, undoTo: 1, redoTo: 5 }),
      ];
      for (const each of added) expect(await append(plantId, each)).toBe(true);
      const listed = await opened.store().read(({ steps }) => steps.after(plantId, 0, 50));
      expect(listed.map((each) => each.edit)).toEqual([null, null, edit, edit, edit, null]);
    });

    test("a step keeps the change of the plant's hours that an undo of it takes back", async () => {
      const { plantId, ids, plans } = await withPlans(1);
      const shift = {
        date: "2026-12-05",
        name: "Saturday, «early»",
        start: "06:00",
        end: "14:00",
        breaks: [],
      };
      const who = { lineIds: ["L1"], teamIds: [], operators: [{ poolId: "O", heads: 0.5 }] };
      const hours: HoursEdit = { kind: "add shift", shift: { ...shift, ...who } };
      const changed = anEditedPlan(plans[0] as StoredPlan, hours);
      await commit((repositories) => repositories.plans.insertOnce(changed));
      const added = [
        step(1, ids[0]),
        step(2, changed.id, { kind: "edit", fromPlanId: ids[0], records: hours }),
        step(3, ids[0], { kind: "undo", fromPlanId: changed.id, undoTo: null, redoTo: 2 }),
      ];
      for (const each of added) expect(await append(plantId, each)).toBe(true);
      const kept = await opened.store().read(({ steps }) => steps.get(plantId, 2));
      expect(JSON.stringify(kept)).toBe(JSON.stringify(added[1]));
      expect(await newest(plantId)).toEqual(added[2]);
      const listed = await opened.store().read(({ steps }) => steps.after(plantId, 0, 50));
      expect(listed.map((each) => each.edit)).toEqual([hours, hours, null]);
    });

    test("a step that is not the next one is not written", async () => {
      const { plantId, ids } = await withPlans(1);
      expect(await append(plantId, step(2, ids[0]))).toBe(false);
      expect(await append(plantId, step(1, ids[0]))).toBe(true);
      expect(await append(plantId, step(1, ids[0], { by: "late" }))).toBe(false);
      expect(await append(plantId, step(3, ids[0]))).toBe(false);
      expect(await newest(plantId)).toEqual(step(1, ids[0]));
    });

    test("of ten planners at once, one takes the next step", async () => {
      const { plantId, ids } = await withPlans(1);
      await append(plantId, step(1, ids[0]));
      const taken = await Promise.all(
        Array.from({ length: 10 }, (_, index) => append(plantId, step(2, ids[0], { by: `p${index}` }))),
      );
      expect(taken.filter((won) => won)).toHaveLength(1);
      expect(await opened.store().read(({ steps }) => steps.after(plantId, 0, 50))).toHaveLength(2);
    });

    test("a step onto a plan that is not there is refused", async () => {
      const { plantId } = await withPlans(1);
      await expect(append(plantId, step(1, "nowhere"))).rejects.toThrow();
      expect(await newest(plantId)).toBeNull();
    });
  });
}
