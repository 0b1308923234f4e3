import { PGlite } from "@electric-sql/pglite";
import { sql } from "drizzle-orm";
import { drizzle } from "drizzle-orm/pglite";
import { afterAll, expect, test } from "vitest";
import { migrate } from "../migrate.ts";
import { stepRepository } from "../step-repository.ts";
import { migrations } from "./index.ts";

const engine = new PGlite();
const database = drizzle(engine);
afterAll(() => engine.close());

const write = (statement: string) => database.execute(sql.raw(statement));
const plant = (id: string) =>
  write(`insert into formweek.plants values ('${id}', 1, 'Plant', 'Europe/Berlin', 'EUR', '{}')`);
const plan = (id: string, plantId: string, createdAt: number) =>
  write(`insert into formweek.plans (id, plant_id, run_id, created_at, engine_version, seed, steps, summary, document)
    values ('${id}', '${plantId}', 'run of ${id}', ${createdAt}, 'e', 1, 2, '{}', '{"is": "${id}"}')`);

test("plants that were planned before begin with their newest plan, and nothing is lost", async () => {
  await migrate(
    database,
    migrations.filter(({ version }) => version < 3),
  );
  await plant("P1");
  await plant("P2");
  await plant("never planned");
  await plan("a", "P1", 10);
  await plan("c", "P1", 30);
  await plan("b", "P1", 30);
  await plan("z", "P2", 5);
  await write(`insert into formweek.runs
    (id, plant_id, revision, state, params, stop_requested, requested_at, requested_by, curve, recoveries)
    values ('run of c', 'P1', 3, 'done', '{}', false, 20, 'anna', '[]', 0)`);
  await migrate(database, migrations);
  const steps = stepRepository(database);
  const begun = {
    revision: 1,
    kind: "run",
    fromPlanId: null,
    undoTo: null,
    redoTo: null,
    note: null,
    records: null,
    frozenUntil: null,
  };
  expect(await steps.newest("P1")).toEqual({ ...begun, planId: "c", by: "anna", at: 30 });
  expect(await steps.newest("P2")).toEqual({ ...begun, planId: "z", by: "local", at: 5 });
  expect(await steps.newest("never planned")).toBeNull();
  const kept = await database.execute(sql`select id, run_id from formweek.plans order by id`);
  expect(kept.rows.map(({ id }) => id)).toEqual(["a", "b", "c", "z"]);
});

test("a plan with a run and a parent, or with neither, is refused", async () => {
  const making = (columns: string) => write(`update formweek.plans set ${columns} where id = 'b'`);
  await expect(making("run_id = null")).rejects.toThrow();
  await expect(making("parent_id = 'a'")).rejects.toThrow();
  await expect(making(`parent_id = 'a', edit = '{}'`)).rejects.toThrow();
  await making(`run_id = null, parent_id = 'a', edit = '{}'`);
});
