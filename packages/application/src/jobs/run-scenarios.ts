import { refusalOfOrders, refusalOfPlant } from "../commands/record-faults.ts";
import { planFigures } from "../planning/plan-figures.ts";
import { sketchOf } from "../planning/run-findings.ts";
import type { RunTask } from "../ports/run-repository.ts";
import type { FoundOutcome, StoredScenario } from "../ports/scenario-repository.ts";
import { type Result, ok, refused } from "../result.ts";
import { applyScenario } from "../scenarios/apply-scenario.ts";
import { groundOf } from "../scenarios/scenario-ground.ts";
import { scenarioFaults } from "../scenarios/scenario-faults.ts";
import { scenarioRefused } from "../scenarios/scenario-refusals.ts";
import { turnedOrders } from "../scenarios/turned-orders.ts";
import { planBeside } from "./plan-beside.ts";
import { type Found, type Search, recordsOf, standingPlan } from "./search-records.ts";

/**
 * Works scenarios out: one plan of the inputs as they are, then one with the changes of each, all on from the working plan and
 * with the same budget. Stopped, it keeps those that were worked out to their end.
 */
export async function searchScenarios(
  search: Search,
  { scenarioIds }: Extract<RunTask, { readonly kind: "scenarios" }>,
): Promise<Result<Found>> {
  // read first: a step that comes between the two leaves the outcome out of date
  const { scenarios, stepRevision } = await scenariosOf(search, scenarioIds);
  const records = await recordsOf(search, null);
  if (!records.ok) return records;
  const { snapshot, plan: working, frozen } = records.value;
  const refusal = refusalOfPlant(snapshot.plant) ?? refusalOfOrders(snapshot.orders, snapshot.plant);
  if (refusal !== null) return refused(refusal);
  const { ports, run, signal } = search;
  const at = ports.clock.now();
  const ground = groundOf({ snapshot, frozen, now: at });
  for (const { name, changes } of scenarios) {
    const faults = scenarioFaults(changes, ground);
    if (faults.length > 0) return refused(scenarioRefused(name, faults));
  }
  const all = scenarios.length + 1;
  const { seed, maxSteps, maxMs } = run.params;
  const params = { seed, maxSteps, maxMs: maxMs === null ? null : maxMs / all };
  const begunMs = ports.clock.monotonicMs();
  const terms = { at, working, frozen, params, all, begunMs };
  const without = await planBeside(search, terms, { snapshot, done: 0 });
  if (!without.ok) return without;
  const outcomes = new Map<string, FoundOutcome>();
  if (without.value === null) return ok(foundOf(outcomes));
  const { problem, inputHash } = without.value.assembled;
  const standing = working === null ? null : standingPlan(without.value.assembled, working);
  if (standing?.ok === false) return standing;
  for (const [index, scenario] of scenarios.entries()) {
    if (signal.aborted) break;
    const changed = applyScenario(snapshot, scenario.changes);
    const planned = await planBeside(search, terms, { snapshot: changed, done: index + 1 });
    if (!planned.ok) return planned;
    // what was cut short has had less time than what it is held against
    if (signal.aborted || planned.value === null) break;
    outcomes.set(scenario.id, {
      sketch: sketchOf(planned.value.plan),
      outcome: {
        runId: run.id,
        inputHash,
        at,
        endedAt: ports.clock.now(),
        scenarioRevision: scenario.revision,
        stepRevision,
        standing: standing === null ? null : planFigures(problem, standing.value),
        without: planFigures(problem, without.value.plan),
        with: planFigures(planned.value.assembled.problem, planned.value.plan),
        turned: turnedOrders(without.value, planned.value),
      },
    });
  }
  return ok(foundOf(outcomes));
}

const foundOf = (outcomes: Found["outcomes"]): Found => ({
  findings: { kind: "scenarios", scenarioIds: [...outcomes.keys()] },
  outcomes,
});

/** The scenarios as they are now, in the order asked for; one that is gone is passed over. */
async function scenariosOf(
  { ports, run: { plantId } }: Search,
  ids: readonly string[],
): Promise<{ readonly scenarios: readonly StoredScenario[]; readonly stepRevision: number }> {
  return ports.store.read(async (repositories) => {
    const found = await Promise.all(ids.map((id) => repositories.scenarios.get(plantId, id)));
    const here = await repositories.steps.newest(plantId);
    return { scenarios: found.filter((each) => each !== null), stepRevision: here?.revision ?? 0 };
  });
}
