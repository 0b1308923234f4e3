import { type FieldFault, appError } from "../errors.ts";
import { somethingToPlan } from "../commands/request-solve.ts";
import { type RunWish, runParams, startRun } from "../commands/start-run.ts";
import { ok, refused } from "../result.ts";
import type { UseCase } from "../use-case.ts";
import { scenarioNotFound, scenarioRefused } from "./scenario-refusals.ts";
import { faultsNow } from "./write-scenarios.ts";

export interface ScenariosWish extends RunWish {
  readonly scenarioIds: readonly string[];
}

/** Budget of all plans together when none is asked for, seconds. */
const SCENARIO_SECONDS = 40;
/** Budget of all trials together, seconds. */
const HELP_SECONDS = 60;

/** Asks what scenarios come to beside the plan without their changes. */
export const requestScenarios: UseCase<ScenariosWish, { readonly runId: string }> = {
  role: "planner",
  run: (ports, wish, actor) => {
    const { plantId, scenarioIds } = wish;
    const run = { plantId, params: runParams(wish, SCENARIO_SECONDS), requestedBy: actor.id };
    return startRun(ports, run, async (repositories) => {
      const orders = await somethingToPlan(repositories, plantId);
      if (!orders.ok) return orders;
      const twice = scenarioIds.findIndex((id, place) => scenarioIds.indexOf(id) !== place);
      if (twice >= 0) return refused(namedTwice(scenarioIds[twice] ?? "", twice));
      const faults: FieldFault[] = [];
      let faulty = "";
      for (const [place, id] of scenarioIds.entries()) {
        const scenario = await repositories.scenarios.get(plantId, id);
        if (scenario === null) return refused(scenarioNotFound(id));
        const own = await faultsNow(ports, repositories, { plantId, changes: scenario.changes });
        if (!own.ok) return own;
        if (own.value.length > 0 && faulty === "") faulty = scenario.name;
        faults.push(...own.value.map((fault) => ({ ...fault, path: `scenarioIds.${place}.${fault.path}` })));
      }
      if (faults.length > 0) return refused(scenarioRefused(faulty, faults));
      return ok({ kind: "scenarios", scenarioIds });
    });
  },
};

/** Asks which single changes of plant or orders would help most. */
export const requestHelp: UseCase<RunWish, { readonly runId: string }> = {
  role: "planner",
  run: (ports, wish, actor) => {
    const { plantId } = wish;
    const run = { plantId, params: runParams(wish, HELP_SECONDS), requestedBy: actor.id };
    return startRun(ports, run, async (repositories) => {
      const orders = await somethingToPlan(repositories, plantId);
      return orders.ok ? ok({ kind: "help" }) : orders;
    });
  },
};

const namedTwice = (id: string, place: number) =>
  appError(
    "invalid-input",
    {
      title: "These scenarios cannot be worked out so.",
      cause: `"${id}" is named twice.`,
      remedy: "Name each scenario once.",
    },
    [
      {
        path: `scenarioIds.${place}`,
        problem: `"${id}" is named twice.`,
        remedy: "Name it once.",
        cause: { kind: "named twice", id },
      },
    ],
  );
