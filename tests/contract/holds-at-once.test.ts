import { type OpenDatabase, openPglite, openPostgres } from "@formweek/adapters/sql";
import { startThread } from "@formweek/adapters/system";
import {
  type Application,
  type PlanDocument,
  assembleProblem,
  auditDocument,
  localPlanner,
} from "@formweek/application";
import { sqlUnitOfWork } from "@formweek/adapters/sql";
import type { Plant } from "@formweek/capacity-model";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, test } from "vitest";
import { askForPlan, ended, fillPlant } from "../fixtures/planning-asks.ts";
import { applicationOn } from "../fixtures/store-application.ts";
import { testDatabaseUrl } from "../services/reachable-servers.ts";

const folder = mkdtempSync(join(tmpdir(), "formweek-holds-"));
const opened: OpenDatabase[] = [];
afterAll(async () => {
  for (const database of opened) await database.close();
  rmSync(folder, { recursive: true, force: true });
});

function kept(database: OpenDatabase): OpenDatabase {
  opened.push(database);
  return database;
}

const postgres = async () =>
  kept(
    await openPostgres({
      url: testDatabaseUrl ?? "",
      maxConnections: 10,
      onConnectionLost: (error) => console.error(error),
    }),
  );

/** Pieces and patience of the n-th customer, the same in every run. */
const drawn = (n: number, range: number): number => ((n * 7_919 + 104_729) % 1_000_003) % range;

const DAY = 86_400;
const now = (): number => Math.floor(Date.now() / 1000);

async function planOf(app: Application, plantId: string): Promise<PlanDocument> {
  const plan = await app.queries.getPlan({ plantId, planId: null }, localPlanner);
  if (!plan.ok) throw new Error(plan.error.cause);
  return plan.value.document;
}

async function plantOf(app: Application, plantId: string): Promise<Plant> {
  const plant = await app.queries.getPlant({ plantId }, localPlanner);
  if (!plant.ok) throw new Error(plant.error.cause);
  return plant.value.plant;
}

/** Many customers at once, each told the date that the empty desk offered or some days more; then everything is counted. */
async function sellAtOnce(apps: readonly Application[], database: OpenDatabase, customers: number) {
  const [app] = apps as readonly [Application, ...Application[]];
  const plantId = await fillPlant(app);
  await ended(app, plantId, await planned(app, plantId));
  const before = await planOf(app, plantId);
  const plant = await plantOf(app, plantId);
  const products = plant.products.slice(0, 12);
  const offers = new Map<string, number>();
  for (const { id: product } of products) {
    const enquiry = { product, pieces: 60_000, wanted: null, partsAllowed: false };
    const given = await app.queries.askPromise({ plantId, enquiry }, localPlanner);
    if (!given.ok) throw new Error(given.error.cause);
    const { outcome } = given.value;
    if (outcome.status === "promised") offers.set(product, Date.parse(outcome.offer.promised) / 1000);
  }
  const asked = [...offers];
  const answers = await Promise.all(
    Array.from({ length: customers }, (_, n) => {
      const [product, offered] = asked[n % asked.length]!;
      const seller = apps[n % apps.length]!;
      return seller.commands.holdCapacity(
        {
          plantId,
          key: `customer-${n}-of-this-test`,
          enquiry: { product, pieces: 20_000 + drawn(n, 40_000), wanted: null, partsAllowed: false },
          kind: "whole",
          promised: offered + drawn(n, 2 * DAY),
          customer: `Customer ${n}`,
          until: now() + DAY,
        },
        localPlanner,
      );
    }),
  );
  return { plantId, before, plant, answers, store: sqlUnitOfWork(database.database), app };
}

async function planned(app: Application, plantId: string): Promise<string> {
  const runId = await askForPlan(app, plantId, { seconds: null, steps: 100 });
  await app.jobs["run-solve"]({ runId }, { signal: new AbortController().signal });
  return runId;
}

/** No hour was sold twice, nothing acknowledged is lost, and nobody is later than promised. */
async function nothingSoldTwice({
  plantId,
  before,
  plant,
  answers,
  store,
  app,
}: Awaited<ReturnType<typeof sellAtOnce>>) {
  const held = answers.flatMap((answer) => (answer.ok ? [answer.value.hold] : []));
  const codes = new Set(answers.flatMap((answer) => (answer.ok ? [] : [answer.error.code])));
  expect([...codes].filter((code) => code !== "promise-moved" && code !== "offer-gone")).toEqual([]);
  expect(new Set(held.map(({ orderId }) => orderId)).size).toBe(held.length);
  const { list, book } = await store.read(async ({ holds, orders }) => ({
    list: await holds.list(plantId),
    book: await orders.book(plantId),
  }));
  expect(list.holds.map(({ id }) => id).toSorted()).toEqual(held.map(({ holdId }) => holdId).toSorted());
  const after = await planOf(app, plantId);
  const assembled = assembleProblem({
    plant,
    orders: [...book.orders, ...list.holds.map(({ order }) => order)],
    pins: [],
    stockShares: list.holds.map(({ order, stockPieces }) => ({ orderId: order.id, pieces: stockPieces })),
    now: now(),
  });
  expect(auditDocument(after, assembled).violations).toEqual([]);
  const finishOf = new Map(after.orders.map(({ orderId, finish }) => [orderId, finish]));
  for (const { orderId, promised } of held) {
    const order = after.orders.find((each) => each.orderId === orderId)!;
    expect(order.state === "covered by stock" || order.finish! <= promised).toBe(true);
  }
  for (const { orderId, due, finish } of before.orders) {
    if (finish === null) continue;
    expect(finishOf.get(orderId)! <= (finish > due ? finish : due)).toBe(true);
  }
  return held.length;
}

describe("holds made at once", () => {
  test("in one process on the embedded database are sold once each", async () => {
    const database = kept(await openPglite({ folder, startThread }));
    const sold = await sellAtOnce([applicationOn(database)], database, 60);
    const count = await nothingSoldTwice(sold);
    expect(count).toBeGreaterThan(5);
    expect(count).toBeLessThan(60);
  }, 240_000);

  test.skipIf(testDatabaseUrl === null)(
    "a thousand of them in two processes' worth of use cases on PostgreSQL are sold once each",
    async () => {
      const databases = [await postgres(), await postgres()];
      const sold = await sellAtOnce(databases.map(applicationOn), databases[0]!, 1000);
      const count = await nothingSoldTwice(sold);
      expect(count).toBeGreaterThan(5);
      expect(count).toBeLessThan(1000);
    },
    600_000,
  );
});
