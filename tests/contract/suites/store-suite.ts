import { ok, refused, type UnitOfWork } from "@formweek/application";
import { describe, expect, test } from "vitest";
import { aRun, anOrder, barePlant, newId } from "../../fixtures/stored-records.ts";
import { openedStore } from "./opened-store.ts";
import { bookStepsSuite } from "./book-steps-suite.ts";
import { holdsSuite } from "./holds-suite.ts";
import { pinsSuite } from "./pins-suite.ts";
import { planningRecordsSuite } from "./planning-records-suite.ts";
import { scenariosSuite } from "./scenarios-suite.ts";
import { stepsSuite } from "./steps-suite.ts";

/** What every store must do, whatever is behind it. `open` gives a store whose tables are up to date; each test uses plants of its own. */
export function storeSuite(open: () => Promise<UnitOfWork>): void {
  const opened = openedStore(open);
  const { commit, newPlant } = opened;

  describe("transactions", () => {
    test("a refusal is handed back and rolls everything back", async () => {
      const id = newId();
      const result = await opened.store().write(async ({ plants }) => {
        await plants.put(barePlant(id), null);
        return refused("no");
      });
      expect(result).toEqual({ ok: false, error: "no" });
      expect(await opened.store().read(({ plants }) => plants.get(id))).toBeNull();
    });

    test("an exception comes through and rolls everything back", async () => {
      const id = newId();
      const failing = opened.store().write(async ({ plants }) => {
        await plants.put(barePlant(id), null);
        throw new Error("bug");
      });
      await expect(failing).rejects.toThrow("bug");
      expect(await opened.store().read(({ plants }) => plants.get(id))).toBeNull();
    });

    test("the store goes on after a statement that the database refused", async () => {
      const id = await newPlant();
      const twice = aRun(id);
      await commit(({ runs }) => runs.insert(twice));
      const orphan = opened.store().write(async ({ runs }) => ok(await runs.insert(aRun(`no-${id}`))));
      await expect(orphan).rejects.toThrow();
      expect(await opened.store().read(({ runs }) => runs.get(twice.id))).toEqual(twice);
    });

    test("a reader may not write", async () => {
      const writing = opened.store().read(({ plants }) => plants.put(barePlant(newId()), null));
      await expect(writing).rejects.toThrow();
    });

    test("twenty writers on one book at once: each revision is given once", async () => {
      const id = await newPlant();
      await commit(({ orders }) => orders.apply(id, { put: [anOrder("A-0")], removeIds: [] }, 0));
      const revisions = await Promise.all(
        Array.from({ length: 20 }, (_, index) =>
          commit(async ({ orders }) => {
            const { revision } = await orders.book(id);
            return orders.apply(id, { put: [anOrder(`B-${index}`)], removeIds: [] }, revision);
          }),
        ),
      );
      expect([...revisions].sort((a, b) => Number(a) - Number(b))).toEqual(
        Array.from({ length: 20 }, (_, index) => index + 2),
      );
      const book = await opened.store().read(({ orders }) => orders.book(id));
      expect(book.revision).toBe(21);
      expect(book.orders).toHaveLength(21);
    });
  });

  describe("plants", () => {
    test("a plant comes back as it was put, with revision 1", async () => {
      const plant = barePlant(newId(), 'Größe "7" ✓ \'; drop table plants; --');
      expect(await commit(({ plants }) => plants.put(plant, null))).toBe(1);
      expect(await opened.store().read(({ plants }) => plants.get(plant.id))).toEqual({ plant, revision: 1 });
    });

    test("the revision counts up, and a write against another one changes nothing", async () => {
      const id = await newPlant();
      expect(await commit(({ plants }) => plants.put(barePlant(id, "Second"), 1))).toBe(2);
      expect(await commit(({ plants }) => plants.put(barePlant(id, "Stale"), 1))).toBeNull();
      expect(await commit(({ plants }) => plants.put(barePlant(id, "Again new"), null))).toBeNull();
      const stored = await opened.store().read(({ plants }) => plants.get(id));
      expect([stored?.plant.name, stored?.revision]).toEqual(["Second", 2]);
    });

    test("heads are listed by id", async () => {
      const prefix = newId();
      for (const end of ["b", "B", "a", "10", "9"])
        await commit(({ plants }) => plants.put(barePlant(`${prefix}-${end}`), null));
      const heads = await opened.store().read(({ plants }) => plants.list());
      const mine = heads.filter(({ id }) => id.startsWith(prefix));
      expect(mine.map(({ id }) => id.slice(prefix.length + 1))).toEqual(["10", "9", "B", "a", "b"]);
      expect(mine[0]).toEqual({
        id: `${prefix}-10`,
        name: "Bare plant",
        timeZone: "Europe/Berlin",
        currency: "EUR",
        revision: 1,
      });
    });

    test("an unknown plant is null", async () => {
      expect(await opened.store().read(({ plants }) => plants.get(newId()))).toBeNull();
    });
  });

  describe("orders", () => {
    test("a book that was never written is empty at revision 0", async () => {
      expect(await opened.store().read(({ orders }) => orders.book(newId()))).toEqual({
        revision: 0,
        orders: [],
      });
    });

    test("orders come back field by field, by due instant, then id", async () => {
      const id = await newPlant();
      const full = anOrder("Ü/2", {
        earliestStartAt: 1_795_500_000,
        dueAt: 253_402_300_799,
        pieces: 1_000_000_000,
      });
      const put = [full, anOrder("b"), anOrder("a"), anOrder("B", { kind: "forecast", weight: 0.1 })];
      expect(await commit(({ orders }) => orders.apply(id, { put, removeIds: [] }, 0))).toBe(1);
      const book = await opened.store().read(({ orders }) => orders.book(id));
      expect(book).toEqual({ revision: 1, orders: [put[3], put[2], put[1], full] });
    });

    test("put replaces, remove takes away, and both count as one change", async () => {
      const id = await newPlant();
      const first = [anOrder("A"), anOrder("B"), anOrder("C")];
      await commit(({ orders }) => orders.apply(id, { put: first, removeIds: [] }, 0));
      const changed = anOrder("B", { pieces: 5 });
      const change = { put: [changed, anOrder("D")], removeIds: ["A", "never-there"] };
      expect(await commit(({ orders }) => orders.apply(id, change, 1))).toBe(2);
      const book = await opened.store().read(({ orders }) => orders.book(id));
      expect(book.orders.map((order) => [order.id, order.pieces])).toEqual([
        ["B", 5],
        ["C", 120_000],
        ["D", 120_000],
      ]);
    });

    test("a change against another revision writes nothing", async () => {
      const id = await newPlant();
      const change = { put: [anOrder("A")], removeIds: [] };
      expect(await commit(({ orders }) => orders.apply(id, change, 3))).toBeNull();
      expect(await commit(({ orders }) => orders.apply(id, change, 0))).toBe(1);
      const late = { put: [anOrder("Z")], removeIds: ["A"] };
      expect(await commit(({ orders }) => orders.apply(id, late, 0))).toBeNull();
      const book = await opened.store().read(({ orders }) => orders.book(id));
      expect([book.revision, book.orders.map((order) => order.id)]).toEqual([1, ["A"]]);
    });

    test("the same id in two plants is two orders", async () => {
      const [one, other] = [await newPlant(), await newPlant()];
      await commit(({ orders }) =>
        orders.apply(one, { put: [anOrder("A", { pieces: 1 })], removeIds: [] }, 0),
      );
      await commit(({ orders }) =>
        orders.apply(other, { put: [anOrder("A", { pieces: 2 })], removeIds: [] }, 0),
      );
      await commit(({ orders }) => orders.apply(other, { put: [], removeIds: ["A"] }, 1));
      const book = await opened.store().read(({ orders }) => orders.book(one));
      expect(book.orders.map((order) => order.pieces)).toEqual([1]);
    });

    test("50,000 orders go in at once and come out again", async () => {
      const id = await newPlant();
      const put = Array.from({ length: 50_000 }, (_, index) =>
        anOrder(`N-${String(index).padStart(5, "0")}`, { pieces: index + 1 }),
      );
      expect(await commit(({ orders }) => orders.apply(id, { put, removeIds: [] }, 0))).toBe(1);
      const book = await opened.store().read(({ orders }) => orders.book(id));
      expect(book.orders).toEqual(put);
      const removeIds = put.map((order) => order.id);
      expect(await commit(({ orders }) => orders.apply(id, { put: [], removeIds }, 1))).toBe(2);
      expect((await opened.store().read(({ orders }) => orders.book(id))).orders).toEqual([]);
    });
  });

  pinsSuite(opened);
  bookStepsSuite(opened);

  holdsSuite(opened);
  scenariosSuite(opened);
  planningRecordsSuite(opened);
  stepsSuite(opened);
}
