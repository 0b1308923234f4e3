import { ok, refused } from "@formweek/application";
import { describe, expect, test } from "vitest";
import { aPlan, aRun, anEditedPlan, anImport, newId, someProgress } from "../../fixtures/stored-records.ts";
import type { OpenedStore } from "./opened-store.ts";

/** The part of every store that keeps what planning leaves behind: dry runs, runs, plans and events. */
export function planningRecordsSuite(opened: OpenedStore): void {
  const { commit, newPlant } = opened;

  describe("imports", () => {
    test("a dry run comes back as stored; its acceptance is recorded once and spends the change", async () => {
      const plantId = newId();
      const stored = anImport(plantId);
      await commit(({ imports }) => imports.insert(stored));
      const found = await commit(({ imports }) => imports.getForUpdate(plantId, stored.id));
      expect(found).toEqual(stored);
      const acceptance = { at: 1_795_000_050, by: "local", revision: 1, applied: stored.counts };
      expect(await commit(({ imports }) => imports.accept(stored.id, acceptance))).toBe(true);
      expect(await commit(({ imports }) => imports.accept(stored.id, { ...acceptance, at: 1 }))).toBe(false);
      const after = await commit(({ imports }) => imports.getForUpdate(plantId, stored.id));
      expect(after).toEqual({ ...stored, change: null, accepted: acceptance });
    });

    test("a dry run of another plant is not found", async () => {
      const stored = anImport(newId());
      await commit(({ imports }) => imports.insert(stored));
      expect(await commit(({ imports }) => imports.getForUpdate(newId(), stored.id))).toBeNull();
    });

    test("old dry runs are forgotten, accepted and newer ones are kept", async () => {
      const plantId = newId();
      const [old, accepted, fresh] = [
        anImport(plantId, { createdAt: 1000 }),
        anImport(plantId, { createdAt: 1000 }),
        anImport(plantId, { createdAt: 2000 }),
      ];
      const acceptance = { at: 1001, by: "local", revision: 1, applied: accepted.counts };
      await commit(async ({ imports }) => {
        for (const stored of [old, accepted, fresh]) await imports.insert(stored);
        await imports.accept(accepted.id, acceptance);
      });
      expect(await commit(({ imports }) => imports.forgetBefore(2000))).toBe(1);
      const left = await commit(async ({ imports }) => [
        await imports.getForUpdate(plantId, old.id),
        await imports.getForUpdate(plantId, accepted.id),
        await imports.getForUpdate(plantId, fresh.id),
      ]);
      expect(left.map((found) => found?.id ?? null)).toEqual([null, accepted.id, fresh.id]);
    });

    test("two acceptances at once: one is first", async () => {
      const plantId = newId();
      const stored = anImport(plantId);
      await commit(({ imports }) => imports.insert(stored));
      const acceptance = { at: 1_795_000_050, by: "local", revision: 1, applied: stored.counts };
      const wins = await Promise.all(
        [1, 2, 3, 4].map(() =>
          commit(async ({ imports }) => {
            await imports.getForUpdate(plantId, stored.id);
            return imports.accept(stored.id, acceptance);
          }),
        ),
      );
      expect(wins.filter((won) => won)).toHaveLength(1);
    });
  });

  describe("runs", () => {
    test("one active run a plant; an ended one makes room", async () => {
      const plantId = await newPlant();
      const first = aRun(plantId);
      expect(await commit(({ runs }) => runs.insert(first))).toBe(true);
      expect(await commit(({ runs }) => runs.insert(aRun(plantId)))).toBe(false);
      expect(await commit(({ runs }) => runs.update({ ...first, state: "running" }))).toBe(true);
      expect(await commit(({ runs }) => runs.insert(aRun(plantId)))).toBe(false);
      expect(await commit(({ runs }) => runs.update({ ...first, revision: 2, state: "done" }))).toBe(true);
      expect(await commit(({ runs }) => runs.insert(aRun(plantId)))).toBe(true);
    });

    test("of ten asked for at once, one is taken", async () => {
      const plantId = await newPlant();
      const taken = await Promise.all(
        Array.from({ length: 10 }, () => commit(({ runs }) => runs.insert(aRun(plantId)))),
      );
      expect(taken.filter((won) => won)).toHaveLength(1);
    });

    test("an update counts the revision and needs the one it read", async () => {
      const run = aRun(await newPlant());
      await commit(({ runs }) => runs.insert(run));
      const problem = {
        code: "solver-failed" as const,
        title: "t",
        cause: "c",
        remedy: "r",
        faults: [{ path: "", problem: "p", remedy: "q" }],
      };
      const failed = { ...run, state: "failed" as const, startedAt: 5, endedAt: 6, problem, recoveries: 2 };
      expect(await commit(({ runs }) => runs.update(failed))).toBe(true);
      expect(await commit(({ runs }) => runs.update({ ...run, state: "running" }))).toBe(false);
      expect(await opened.store().read(({ runs }) => runs.get(run.id))).toEqual({ ...failed, revision: 2 });
    });

    test("progress is kept while running and leaves the revision alone", async () => {
      const run = aRun(await newPlant());
      await commit(({ runs }) => runs.insert(run));
      const curve = [
        [0, 9000],
        [1250.5, 8123.75],
      ] as const;
      await commit(({ runs }) => runs.saveProgress(run.id, someProgress, curve));
      expect((await opened.store().read(({ runs }) => runs.get(run.id)))?.progress).toBeNull();
      await commit(({ runs }) => runs.update({ ...run, state: "running" }));
      await commit(({ runs }) => runs.saveProgress(run.id, someProgress, curve));
      const running = await opened.store().read(({ runs }) => runs.get(run.id));
      expect(running).toEqual({ ...run, state: "running", revision: 2, progress: someProgress, curve });
    });

    test("active runs are listed oldest first, ended ones are not", async () => {
      const [young, old, ended] = [
        aRun(await newPlant(), { requestedAt: 20 }),
        aRun(await newPlant(), { requestedAt: 10, state: "running" }),
        aRun(await newPlant(), { requestedAt: 5, state: "stopped" }),
      ];
      for (const run of [young, old, ended]) await commit(({ runs }) => runs.insert(run));
      const active = await opened.store().read(({ runs }) => runs.listActive());
      const mine = active.filter(({ id }) => [young.id, old.id, ended.id].includes(id));
      expect(mine).toEqual([old, young]);
    });
  });

  describe("provisional plans", () => {
    const provisional = (number: number) => ({
      number,
      foundAt: 1_795_000_000 + number,
      document: aPlan("", "").document,
    });
    const put = (runId: string, number: number) =>
      commit((records) => records.provisional.put(runId, provisional(number)));
    const found = (runId: string) =>
      opened.store().read(async (records) => ({
        head: await records.provisional.head(runId),
        plan: await records.provisional.get(runId),
      }));
    const runThatIs = async (overrides: Parameters<typeof aRun>[1]) => {
      const run = aRun(await newPlant(), overrides);
      await commit(({ runs }) => runs.insert(run));
      return run;
    };

    test("the newest one of a run is kept, byte for byte, and others are not touched", async () => {
      const [run, other] = [await runThatIs({ state: "running" }), await runThatIs({ state: "running" })];
      expect(await found(run.id)).toEqual({ head: null, plan: null });
      for (const number of [1, 2]) expect(await put(run.id, number)).toBe(true);
      expect(await put(other.id, 7)).toBe(true);
      const { head, plan } = await found(run.id);
      expect(head).toEqual({ number: 2, foundAt: 1_795_000_002 });
      expect(JSON.stringify(plan)).toBe(JSON.stringify(provisional(2)));
      await commit((records) => records.provisional.forget(run.id));
      expect((await found(run.id)).plan).toBeNull();
      expect((await found(other.id)).head?.number).toBe(7);
    });

    test.each([
      ["waits", { state: "queued" }],
      ["has ended", { state: "done" }],
      ["was told to stop", { state: "running", stopRequested: true }],
    ] as const)("none is taken of a run that %s", async (_, overrides) => {
      const run = await runThatIs(overrides);
      expect(await put(run.id, 1)).toBe(false);
      expect((await found(run.id)).plan).toBeNull();
    });

    test("none is taken of a run that is not there", async () => {
      expect(await put(newId(), 1)).toBe(false);
    });

    test("a stop and a plan that come together: either the stop sees the plan, or the plan is not taken", async () => {
      for (let round = 0; round < 5; round++) {
        const run = await runThatIs({ state: "running" });
        const [seen, taken] = await Promise.all([
          commit(async ({ runs, provisional: plans }) => {
            const head = await plans.head(run.id);
            await runs.update({ ...run, stopRequested: true });
            return head;
          }),
          put(run.id, 1),
        ]);
        expect(seen !== null).toBe(taken);
      }
    });
  });

  describe("plans", () => {
    test("a document comes back byte for byte", async () => {
      const plan = aPlan(await newPlant(), newId());
      expect(await commit(({ plans }) => plans.insertOnce(plan))).toBe(plan.id);
      const found = await opened.store().read(({ plans }) => plans.get(plan.plantId, plan.id));
      expect(JSON.stringify(found?.document)).toBe(JSON.stringify(plan.document));
      expect(found).toEqual(plan);
    });

    test("the first plan of a run stands, whoever comes later", async () => {
      const [plantId, runId] = [await newPlant(), newId()];
      const [first, second] = [aPlan(plantId, runId), aPlan(plantId, runId, { steps: 5 })];
      expect(await commit(({ plans }) => plans.insertOnce(first))).toBe(first.id);
      expect(await commit(({ plans }) => plans.insertOnce(second))).toBe(first.id);
      expect(await opened.store().read(({ plans }) => plans.get(plantId, second.id))).toBeNull();
    });

    test("two workers that finish the same run together save one plan", async () => {
      const [plantId, runId] = [await newPlant(), newId()];
      const ids = await Promise.all(
        [1, 2, 3].map(() => commit(({ plans }) => plans.insertOnce(aPlan(plantId, runId)))),
      );
      expect(new Set(ids).size).toBe(1);
      expect(await opened.store().read(({ plans }) => plans.list(plantId, 10))).toHaveLength(1);
    });

    test("heads are listed newest first by instant, then id, without the document", async () => {
      const plantId = await newPlant();
      const made = [
        aPlan(plantId, newId(), { id: `a-${plantId}`, createdAt: 10 }),
        aPlan(plantId, newId(), { id: `c-${plantId}`, createdAt: 20 }),
        aPlan(plantId, newId(), { id: `b-${plantId}`, createdAt: 20 }),
      ];
      for (const plan of made) await commit(({ plans }) => plans.insertOnce(plan));
      const heads = await opened.store().read(({ plans }) => plans.list(plantId, 2));
      expect(heads.map(({ id }) => id.slice(0, 1))).toEqual(["c", "b"]);
      expect(heads[0]).not.toHaveProperty("document");
    });

    test("a plan by hand comes back with its parent and the change, and another one of the same parent stands beside it", async () => {
      const plantId = await newPlant();
      const parent = aPlan(plantId, newId());
      await commit(({ plans }) => plans.insertOnce(parent));
      const [first, second] = [anEditedPlan(parent), anEditedPlan(parent)];
      for (const plan of [first, second])
        expect(await commit(({ plans }) => plans.insertOnce(plan))).toBe(plan.id);
      expect(await opened.store().read(({ plans }) => plans.get(plantId, first.id))).toEqual(first);
      const heads = await opened.store().read(({ plans }) => plans.list(plantId, 10));
      expect(heads).toHaveLength(3);
      const { document: _, ...head } = second;
      expect(heads).toContainEqual(head);
    });

    test("a plan by hand of no plan is not stored", async () => {
      const orphan = anEditedPlan(aPlan(await newPlant(), newId()));
      await expect(commit(({ plans }) => plans.insertOnce(orphan))).rejects.toThrow();
    });

    test("a plan of another plant is not found", async () => {
      const plan = aPlan(await newPlant(), newId());
      await commit(({ plans }) => plans.insertOnce(plan));
      expect(await opened.store().read(({ plans }) => plans.get(newId(), plan.id))).toBeNull();
    });
  });

  describe("events", () => {
    const body = (revision: number) => ({ type: "orders-changed", revision }) as const;

    test("sequences count from 1 in each plant", async () => {
      const [one, other] = [newId(), newId()];
      const appended = await commit(async ({ events }) => [
        await events.append(one, 5, body(1)),
        await events.append(one, 6, body(2)),
        await events.append(other, 7, body(3)),
      ]);
      expect(appended.map(({ sequence }) => sequence)).toEqual([1, 2, 1]);
      const last = await opened
        .store()
        .read(async ({ events }) => [
          await events.lastSequence(one),
          await events.lastSequence(other),
          await events.lastSequence(newId()),
        ]);
      expect(last).toEqual([2, 1, 0]);
    });

    test("events after a sequence come in order, no more than asked for", async () => {
      const plantId = newId();
      await commit(async ({ events }) => {
        for (let revision = 1; revision <= 5; revision++)
          await events.append(plantId, revision, body(revision));
      });
      const page = await opened.store().read(({ events }) => events.after(plantId, 1, 3));
      expect(page).toEqual([2, 3, 4].map((n) => ({ plantId, sequence: n, at: n, body: body(n) })));
      expect(await opened.store().read(({ events }) => events.after(plantId, 5, 3))).toEqual([]);
    });

    test("writers at once get sequences without gaps, and a rolled back one leaves none", async () => {
      const plantId = newId();
      await Promise.all(
        Array.from({ length: 12 }, (_, index) =>
          opened.store().write<null, string>(async ({ events }) => {
            await events.append(plantId, index, body(index));
            return index % 3 === 0 ? refused("no") : ok(null);
          }),
        ),
      );
      const stored = await opened.store().read(({ events }) => events.after(plantId, 0, 100));
      expect(stored.map(({ sequence }) => sequence)).toEqual([1, 2, 3, 4, 5, 6, 7, 8]);
    });

    test("what was published leaves the outbox, the rest stays in order", async () => {
      const plantId = newId();
      const appended = await commit(async ({ events }) => [
        await events.append(plantId, 1, body(1)),
        await events.append(plantId, 2, body(2)),
        await events.append(plantId, 3, body(3)),
      ]);
      const waiting = async () =>
        (await opened.store().read(({ events }) => events.unpublished(10_000)))
          .filter((event) => event.plantId === plantId)
          .map(({ sequence }) => sequence);
      expect(await waiting()).toEqual([1, 2, 3]);
      await commit(({ events }) => events.markPublished(appended.slice(0, 2)));
      await commit(({ events }) => events.markPublished([]));
      expect(await waiting()).toEqual([3]);
    });
  });
}
