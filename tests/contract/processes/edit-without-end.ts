import { localPlanner } from "@formweek/application";
import { embeddedConfig, started } from "../../fixtures/composed-planners.ts";
import { askForPlan, ended, fillPlant } from "../../fixtures/planning-asks.ts";

/** Run as a process of its own: plans in the folder named in its arguments, then changes the plan by hand without end, and says the plant, then each step that was acknowledged as revision and plan. */
const [folder = ""] = process.argv.slice(2);
const { app } = await started(embeddedConfig(folder));
const plantId = await fillPlant(app);
process.stdout.write(`${plantId}\n`);
await ended(app, plantId, await askForPlan(app, plantId, { seconds: null, steps: 20 }));
const plan = await app.queries.getPlan({ plantId, planId: null }, localPlanner);
const orderId = (plan.ok ? plan.value.document.lots[0]?.orderId : null) ?? "";
for (let expectedRevision = 1; ; expectedRevision++) {
  const edit = { kind: expectedRevision % 2 === 1 ? "take out" : "put back", orderId } as const;
  const taken = await app.commands.editPlan(
    { plantId, expectedRevision, edit, overFrozen: false },
    localPlanner,
  );
  if (!taken.ok) throw new Error(taken.error.cause);
  process.stdout.write(`${taken.value.revision} ${taken.value.planId}\n`);
}
