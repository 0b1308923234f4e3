import { localPlanner } from "@formweek/application";
import { embeddedConfig, started } from "../../fixtures/composed-planners.ts";
import { askForPlan, fillPlant } from "../../fixtures/planning-asks.ts";

/** Run as a process of its own: plans in the folder named in its arguments for ten minutes, and says the plant, the run and that it is at work. */
const [folder = ""] = process.argv.slice(2);
const { app } = await started(embeddedConfig(folder));
const plantId = await fillPlant(app);
const runId = await askForPlan(app, plantId, { seconds: 600, steps: null });
process.stdout.write(`${plantId}\n${runId}\n`);
await app.queries.watchPlant(
  {
    plantId,
    afterSequence: null,
    onMessage: ({ body }) => {
      if (body.type === "solve-progress" && body.progress !== null) process.stdout.write("at work\n");
    },
  },
  localPlanner,
);
