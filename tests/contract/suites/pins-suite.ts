import type { StoredPin } from "@formweek/application";
import { describe, expect, test } from "vitest";
import { anOrder, newId } from "../../fixtures/stored-records.ts";
import type { OpenedStore } from "./opened-store.ts";

const onLine = (orderId: string, lineId: string): StoredPin => ({
  orderId,
  lineId,
  startAt: null,
  pinnedBy: "local",
  pinnedAt: 1_795_000_000,
});

/** The part of every store that keeps which orders are held where. */
export function pinsSuite(opened: OpenedStore): void {
  const { commit, newPlant } = opened;
  const listOf = (plantId: string) => opened.store().read(({ pins }) => pins.list(plantId));
  const put = (plantId: string, pin: StoredPin, revision: number) =>
    commit(({ pins }) => pins.put(plantId, pin, revision));
  const withOrders = async (...ids: readonly string[]): Promise<string> => {
    const plantId = await newPlant();
    const change = { put: ids.map((id) => anOrder(id)), removeIds: [] };
    await commit(({ orders }) => orders.apply(plantId, change, 0));
    return plantId;
  };

  describe("pins", () => {
    test("a plant that never had one has an empty list at revision 0", async () => {
      expect(await listOf(newId())).toEqual({ revision: 0, pins: [] });
    });

    test("pins come back field by field, by order id; a second one of an order takes the first one's place", async () => {
      const plantId = await withOrders("b", "Ü/2", "a");
      const atStart: StoredPin = {
        orderId: "Ü/2",
        lineId: null,
        startAt: 253_402_300_799,
        pinnedBy: "x",
        pinnedAt: 1,
      };
      const both: StoredPin = { ...onLine("a", "L2"), startAt: 1_795_500_000 };
      expect(await put(plantId, onLine("b", "L1"), 0)).toBe(1);
      expect(await put(plantId, atStart, 1)).toBe(2);
      expect(await put(plantId, onLine("a", "L1"), 2)).toBe(3);
      expect(await put(plantId, both, 3)).toBe(4);
      expect(await listOf(plantId)).toEqual({ revision: 4, pins: [both, onLine("b", "L1"), atStart] });
    });

    test("a change against another revision writes nothing", async () => {
      const plantId = await withOrders("A");
      expect(await put(plantId, onLine("A", "L1"), 5)).toBeNull();
      expect(await put(plantId, onLine("A", "L1"), 0)).toBe(1);
      expect(await put(plantId, onLine("A", "L2"), 0)).toBeNull();
      expect(await commit(({ pins }) => pins.remove(plantId, "A", 0))).toBeNull();
      expect(await listOf(plantId)).toEqual({ revision: 1, pins: [onLine("A", "L1")] });
      expect(await commit(({ pins }) => pins.remove(plantId, "A", 1))).toBe(2);
      expect(await listOf(plantId)).toEqual({ revision: 2, pins: [] });
    });

    test("of ten planners at once, one is first", async () => {
      const plantId = await withOrders("A");
      const revisions = await Promise.all(
        Array.from({ length: 10 }, (_, index) => put(plantId, onLine("A", `L${index}`), 0)),
      );
      expect(revisions.filter((revision) => revision !== null)).toEqual([1]);
      expect((await listOf(plantId)).pins).toHaveLength(1);
    });

    test("a pin goes with its order, stays when the order changes, and does not come back with its number", async () => {
      const plantId = await withOrders("A", "B");
      await put(plantId, onLine("A", "L1"), 0);
      await put(plantId, onLine("B", "L1"), 1);
      const change = { put: [anOrder("B", { pieces: 5 })], removeIds: ["A"] };
      await commit(({ orders }) => orders.apply(plantId, change, 1));
      expect((await listOf(plantId)).pins).toEqual([onLine("B", "L1")]);
      await commit(({ orders }) => orders.apply(plantId, { put: [anOrder("A")], removeIds: [] }, 2));
      expect((await listOf(plantId)).pins).toEqual([onLine("B", "L1")]);
    });

    test("an order that is not in the plant's own book, or a place that is none, is not stored", async () => {
      const [plantId, other] = [await withOrders("A"), await withOrders("B")];
      await expect(put(plantId, onLine("B", "L1"), 0)).rejects.toThrow();
      await put(other, onLine("B", "L1"), 0);
      const nowhere = { ...onLine("A", "L1"), lineId: null } as unknown as StoredPin;
      await expect(put(plantId, nowhere, 0)).rejects.toThrow();
      expect(await listOf(plantId)).toEqual({ revision: 0, pins: [] });
    });
  });
}
