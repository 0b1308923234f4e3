import type { FoundOutcome, StoredScenario } from "@formweek/application";
import { describe, expect, test } from "vitest";
import { anOrder, newId } from "../../fixtures/stored-records.ts";
import type { OpenedStore } from "./opened-store.ts";

const aScenario = (part: Partial<StoredScenario> = {}): StoredScenario => ({
  id: newId(),
  revision: 1,
  name: 'Saturday «early» "or" not',
  changes: [
    { kind: "more copies", mouldId: "M-1", more: 1 },
    { kind: "rush order", order: anOrder("R-1") },
  ],
  by: "anna",
  at: 1_795_000_000,
  adopted: null,
  outcome: null,
  ...part,
});

const figures = {
  cost: 1234.5,
  lateOrders: 2,
  unplannedOrders: 0,
  lateSeconds: 7200,
  changeSeconds: 3600,
  overtimeSeconds: 0,
};

const anOutcome = (cost: number): FoundOutcome => ({
  outcome: {
    runId: newId(),
    inputHash: "0123456789abcdef",
    at: 1_795_000_060,
    endedAt: 1_795_000_100,
    scenarioRevision: 1,
    stepRevision: 4,
    standing: null,
    without: figures,
    with: { ...figures, cost },
    turned: [{ orderId: "A-1", from: "late", to: "on time", fromLateSeconds: 60, toLateSeconds: 0 }],
  },
  sketch: { lots: [], unplanned: [], objective: { total: cost, terms: [] } },
});

/** The part of every store that keeps scenarios. */
export function scenariosSuite(opened: OpenedStore): void {
  const { commit, newPlant } = opened;
  const read: OpenedStore["commit"] = (work) => opened.store().read(work);
  const list = (plantId: string) => read(({ scenarios }) => scenarios.list(plantId));

  describe("scenarios", () => {
    test("come back field by field, the oldest first, each plant its own", async () => {
      const [plantId, other] = [await newPlant(), await newPlant()];
      expect(await list(plantId)).toEqual([]);
      const [second, first] = [aScenario({ id: "b" }), aScenario({ id: "B", changes: [] })];
      for (const each of [second, first]) await commit(({ scenarios }) => scenarios.insert(plantId, each));
      expect(await list(plantId)).toEqual([first, second]);
      expect(await list(other)).toEqual([]);
      const get = (of: string, id: string) => read(({ scenarios }) => scenarios.get(of, id));
      expect(await get(plantId, "b")).toEqual(second);
      expect([await get(other, "b"), await get(plantId, "c")]).toEqual([null, null]);
      expect(JSON.stringify((await get(plantId, "b"))?.changes)).toBe(JSON.stringify(second.changes));
    });

    test("are written over and removed only at the revision that was seen; of ten at once one is first", async () => {
      const plantId = await newPlant();
      const scenario = aScenario();
      await commit(({ scenarios }) => scenarios.insert(plantId, scenario));
      const renamed = { ...scenario, name: "Renamed", by: "ben", at: 1_795_000_500 };
      const written = await Promise.all(
        Array.from({ length: 10 }, () => commit(({ scenarios }) => scenarios.rewrite(plantId, renamed))),
      );
      expect(written.filter(Boolean)).toHaveLength(1);
      expect(await list(plantId)).toEqual([{ ...renamed, revision: 2 }]);
      const remove = (revision: number) =>
        commit(({ scenarios }) => scenarios.remove(plantId, scenario.id, revision));
      expect([await remove(1), await remove(2), await remove(2)]).toEqual([false, true, false]);
      expect(await list(plantId)).toEqual([]);
    });

    test("keep what they came to last, apart from its plan; a scenario that is gone keeps nothing", async () => {
      const plantId = await newPlant();
      const scenario = aScenario();
      await commit(({ scenarios }) => scenarios.insert(plantId, scenario));
      const sketch = () => read(({ scenarios }) => scenarios.sketch(plantId, scenario.id));
      const put = (id: string, found: FoundOutcome) =>
        commit(({ scenarios }) => scenarios.putOutcome(plantId, id, found));
      expect(await sketch()).toBeNull();
      for (const found of [anOutcome(10), anOutcome(9)]) {
        expect(await put(scenario.id, found)).toBe(true);
        expect(await list(plantId)).toEqual([{ ...scenario, outcome: found.outcome }]);
        expect(await sketch()).toEqual(found.sketch);
      }
      expect(await put("gone", anOutcome(8))).toBe(false);
    });

    test("are marked as adopted and not, at one revision alone; writing one over forgets it", async () => {
      const plantId = await newPlant();
      const scenario = aScenario();
      await commit(({ scenarios }) => scenarios.insert(plantId, scenario));
      const adopted = { by: "anna", at: 1_795_000_200 };
      const mark = async (revision: number, to: typeof adopted | null) => {
        const named = { id: scenario.id, revision };
        await commit(({ scenarios }) => scenarios.markAdopted(plantId, named, to));
        return (await list(plantId))[0]?.adopted;
      };
      expect([await mark(2, adopted), await mark(1, adopted), await mark(1, null)]).toEqual([
        null,
        adopted,
        null,
      ]);
      expect(await mark(1, adopted)).toEqual(adopted);
      await commit(({ scenarios }) => scenarios.rewrite(plantId, scenario));
      expect((await list(plantId))[0]?.adopted).toBeNull();
    });
  });
}
