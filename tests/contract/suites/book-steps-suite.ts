import type { BookStep } from "@formweek/application";
import { describe, expect, test } from "vitest";
import { anOrder, newId } from "../../fixtures/stored-records.ts";
import type { OpenedStore } from "./opened-store.ts";

const before = anOrder("A/1");
const step = (more: Partial<BookStep> = {}): BookStep => ({
  kind: "change",
  of: null,
  changes: [{ before, after: { ...before, pieces: before.pieces + 1 } }],
  desk: "d",
  by: "local",
  at: 1_795_000_000,
  ...more,
});

/** The part of every store that keeps what was done to order books, for taking it back. */
export function bookStepsSuite(opened: OpenedStore): void {
  const { commit, newPlant } = opened;
  const append = (plantId: string, next: BookStep) =>
    commit(({ bookSteps }) => bookSteps.append(plantId, next));
  const stepsOf = (plantId: string, desk = "d", mostChanges = 1000) =>
    opened.store().read(({ bookSteps }) => bookSteps.newest({ plantId, desk, by: "local" }, mostChanges));

  describe("steps of the order book", () => {
    test("come back field by field, oldest first, to the desk and the person that took them alone", async () => {
      const plantId = await newPlant();
      const added = [
        step({ changes: [{ before: null, after: { ...before, customer: "Mäder, «Söhne»" } }] }),
        step({ desk: "other" }),
        step({ by: "someone else" }),
      ];
      const first = await append(plantId, added[0] as BookStep);
      for (const each of added.slice(1)) await append(plantId, each);
      const undo = step({ kind: "undo", of: first, changes: [{ before, after: null }], at: 1_795_000_001 });
      const second = await append(plantId, undo);
      expect(second).toBeGreaterThan(first);
      expect(await stepsOf(plantId)).toEqual([
        { ...added[0], number: first },
        { ...undo, number: second },
      ]);
      expect(await stepsOf(newId())).toEqual([]);
    });

    test("are kept up to a hundred, and handed out as far back as so many changes go, the newest always", async () => {
      const plantId = await newPlant();
      const numbers: number[] = [];
      for (let made = 0; made < 103; made++) numbers.push(await append(plantId, step()));
      expect((await stepsOf(plantId)).map(({ number }) => number)).toEqual(numbers.slice(3));
      expect((await stepsOf(plantId, "d", 2)).map(({ number }) => number)).toEqual(numbers.slice(-2));
      expect(await stepsOf(plantId, "d", 0)).toHaveLength(1);
      const left = await append(plantId, step({ kind: "undo", of: numbers.at(-1) ?? 0, changes: [] }));
      expect((await stepsOf(plantId, "d", 0)).map(({ number }) => number)).toEqual([left]);
    });

    test("are forgotten by age, and one that turns no step, or a change that does, is not written", async () => {
      const plantId = await newPlant();
      await append(plantId, step({ at: 10 }));
      const young = await append(plantId, step());
      await commit(({ bookSteps }) => bookSteps.forgetBefore(1_000));
      expect((await stepsOf(plantId)).map(({ number }) => number)).toEqual([young]);
      await expect(append(plantId, step({ kind: "redo" }))).rejects.toThrow();
      await expect(append(plantId, step({ of: young }))).rejects.toThrow();
      expect(await stepsOf(plantId)).toHaveLength(1);
    });
  });
}
