import { openPglite, sqlUnitOfWork } from "@formweek/adapters/sql";
import { startThread } from "@formweek/adapters/system";
import { ok } from "@formweek/application";

/** Run as a process of its own: stores events one after the other and says each sequence once it is committed. */
const [folder = "", plantId = ""] = process.argv.slice(2);
const { database } = await openPglite({ folder, startThread });
const store = sqlUnitOfWork(database);
for (let revision = 1; ; revision++) {
  const written = await store.write(async ({ events }) =>
    ok(await events.append(plantId, revision, { type: "orders-changed", revision })),
  );
  if (written.ok) process.stdout.write(`${written.value.sequence}\n`);
}
