import type { HoldEnding, StoredHold } from "@formweek/application";
import { describe, expect, test } from "vitest";
import { anOrder, newId } from "../../fixtures/stored-records.ts";
import type { OpenedStore } from "./opened-store.ts";

const aHold = (part: Partial<StoredHold> = {}): StoredHold => ({
  id: newId(),
  key: newId(),
  wish: '["a wish"]',
  order: anOrder("H-1"),
  stockPieces: 500,
  kind: "whole",
  until: 1_795_100_000,
  heldBy: "anna",
  heldAt: 1_795_000_000,
  ending: null,
  ...part,
});

const released: HoldEnding = { state: "released", by: "anna", at: 1_795_050_000, orderNumber: null };

/** The part of every store that keeps what is held for customers. */
export function holdsSuite(opened: OpenedStore): void {
  const { commit, newPlant } = opened;
  const read: OpenedStore["commit"] = (work) => opened.store().read(work);
  const insert = (plantId: string, hold: StoredHold, revision: number) =>
    commit(({ holds }) => holds.insert(plantId, hold, revision));

  describe("holds", () => {
    test("a plant that never had one has an empty list at revision 0", async () => {
      expect(await read(({ holds }) => holds.list(newId()))).toEqual({ revision: 0, holds: [] });
    });

    test("come back field by field, by when they run out, and by key and id", async () => {
      const plantId = await newPlant();
      const late = aHold({ until: 1_795_900_000, kind: "split" });
      const early = aHold({ until: 1_795_000_001 });
      expect(await insert(plantId, late, 0)).toBe(1);
      expect(await insert(plantId, early, 1)).toBe(2);
      const { list, byKey, byId, elsewhere } = await read(async ({ holds }) => ({
        list: await holds.list(plantId),
        byKey: await holds.withKey(plantId, late.key),
        byId: await holds.get(plantId, early.id),
        elsewhere: await holds.get(newId(), early.id),
      }));
      expect(list).toEqual({ revision: 2, holds: [early, late] });
      expect([byKey, byId, elsewhere]).toEqual([late, early, null]);
    });

    test("a write against another revision writes nothing, and of ten at once one is first", async () => {
      const plantId = await newPlant();
      expect(await insert(plantId, aHold(), 3)).toBeNull();
      const first = await Promise.all(Array.from({ length: 10 }, () => insert(plantId, aHold(), 0)));
      expect(first.filter((revision) => revision !== null)).toEqual([1]);
      expect((await read(({ holds }) => holds.list(plantId))).holds).toHaveLength(1);
    });

    test("end once, and are listed by their end; the plants of those that ran out are known", async () => {
      const plantId = await newPlant();
      const [one, other] = [aHold({ until: 10 }), aHold({ until: 30 })];
      await insert(plantId, one, 0);
      await insert(plantId, other, 1);
      expect(await read(({ holds }) => holds.plantsWithExpired(9))).not.toContain(plantId);
      expect(await read(({ holds }) => holds.plantsWithExpired(10))).toContain(plantId);
      const end = (ending: HoldEnding, revision: number) =>
        commit(({ holds }) => holds.end(plantId, { holdIds: [one.id], ending }, revision));
      expect(await end(released, 1)).toBeNull();
      expect(await end(released, 2)).toBe(3);
      expect(await end({ ...released, state: "expired", by: null }, 3)).toBe(4);
      const { list, ended } = await read(async ({ holds }) => ({
        list: await holds.list(plantId),
        ended: await holds.ended(plantId, 5),
      }));
      expect(list.holds).toEqual([other]);
      expect(ended).toEqual([{ ...one, ending: released }]);
    });

    test("an order keeps the stock of the hold that it was, until it leaves the book", async () => {
      const plantId = await newPlant();
      const hold = aHold();
      await insert(plantId, hold, 0);
      await commit(({ orders }) => orders.apply(plantId, { put: [anOrder("A-1")], removeIds: [] }, 0));
      const ending: HoldEnding = { ...released, state: "ordered", orderNumber: "A-1" };
      await commit(({ holds }) => holds.end(plantId, { holdIds: [hold.id], ending }, 1));
      const shares = () => read(({ holds }) => holds.stockShares(plantId));
      expect(await shares()).toEqual([{ orderId: "A-1", pieces: 500 }]);
      await commit(({ orders }) =>
        orders.apply(plantId, { put: [anOrder("A-1", { pieces: 7 })], removeIds: [] }, 1),
      );
      expect(await shares()).toEqual([{ orderId: "A-1", pieces: 500 }]);
      await commit(({ orders }) => orders.apply(plantId, { put: [], removeIds: ["A-1"] }, 2));
      expect(await shares()).toEqual([]);
      const kept = await read(({ holds }) => holds.get(plantId, hold.id));
      expect(kept?.ending).toEqual({ ...ending, orderNumber: null });
    });

    test("an ending without an instant, or an order of one that was not ordered, is refused", async () => {
      const plantId = await newPlant();
      const hold = aHold();
      await insert(plantId, hold, 0);
      await commit(({ orders }) => orders.apply(plantId, { put: [anOrder("A-1")], removeIds: [] }, 0));
      const ending: HoldEnding = { ...released, orderNumber: "A-1" };
      await expect(
        commit(({ holds }) => holds.end(plantId, { holdIds: [hold.id], ending }, 1)),
      ).rejects.toThrow();
    });

    test("every list's revision is told in one statement, with the instant at which the first hold runs out", async () => {
      const plantId = await newPlant();
      const revisions = () => read((repositories) => repositories.revisions.of(plantId));
      expect(await revisions()).toEqual({ plant: 1, book: 0, pins: 0, holds: 0, step: 0, nextExpiry: null });
      await insert(plantId, aHold({ until: 70 }), 0);
      await insert(plantId, aHold({ until: 50 }), 1);
      await commit(({ orders }) => orders.apply(plantId, { put: [anOrder("A-1")], removeIds: [] }, 0));
      expect(await revisions()).toEqual({ plant: 1, book: 1, pins: 0, holds: 2, step: 0, nextExpiry: 50 });
      expect(await read((repositories) => repositories.revisions.of(newId()))).toBeNull();
    });
  });
}
