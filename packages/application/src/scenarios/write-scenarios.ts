import type { Actor } from "../actor.ts";
import { type AppError, type FieldFault } from "../errors.ts";
import { plantNotFound } from "../not-found.ts";
import { frozenPlanOf } from "../planning/frozen-plan.ts";
import { planningSnapshot } from "../planning/planning-snapshot.ts";
import type { Ports } from "../ports/ports.ts";
import type { StoredScenario } from "../ports/scenario-repository.ts";
import type { Repositories } from "../ports/unit-of-work.ts";
import { publishPending } from "../publish-pending.ts";
import { type Result, ok, refused } from "../result.ts";
import type { PlantInput, UseCase } from "../use-case.ts";
import { type ListedScenario, listedScenario } from "./list-scenarios.ts";
import { groundOf } from "./scenario-ground.ts";
import type { ScenarioChange } from "./scenario-change.ts";
import { scenarioFaults } from "./scenario-faults.ts";
import { scenarioChanged, scenarioNotFound, scenarioRefused, tooManyScenarios } from "./scenario-refusals.ts";

export interface ScenarioDraft extends PlantInput {
  readonly name: string;
  readonly changes: readonly ScenarioChange[];
}

export interface NamedScenario extends PlantInput {
  readonly scenarioId: string;
  /** Revision of the scenario that the caller saw. */
  readonly expectedRevision: number;
}

/** Scenarios that a plant keeps. */
const MOST_SCENARIOS = 50;

/** Writes a new scenario; nothing of plant, orders or plan is changed by it. */
export const writeScenario: UseCase<ScenarioDraft, ListedScenario> = {
  role: "planner",
  run: (ports, draft, actor) =>
    writing(ports, draft.plantId, async (repositories) => {
      const faulty = await refusalOf(ports, repositories, draft);
      if (faulty !== null) return refused(faulty);
      const { scenarios } = repositories;
      if ((await scenarios.list(draft.plantId)).length >= MOST_SCENARIOS)
        return refused(tooManyScenarios(MOST_SCENARIOS));
      const scenario = { ...written(ports, draft, actor), id: ports.ids.next(), revision: 1, outcome: null };
      await scenarios.insert(draft.plantId, scenario);
      return ok(scenario);
    }),
};

/** Writes a scenario over the one that was seen. What it came to before stays to be looked at, out of date. */
export const rewriteScenario: UseCase<ScenarioDraft & NamedScenario, ListedScenario> = {
  role: "planner",
  run: (ports, draft, actor) =>
    writing(ports, draft.plantId, async (repositories) => {
      const seen = await seenScenario(repositories, draft);
      if (!seen.ok) return seen;
      const faulty = await refusalOf(ports, repositories, draft);
      if (faulty !== null) return refused(faulty);
      const { id, revision, outcome } = seen.value;
      const scenario = { ...written(ports, draft, actor), id, revision, outcome };
      if (!(await repositories.scenarios.rewrite(draft.plantId, scenario)))
        return refused(scenarioChanged(seen.value.name, seen.value.by));
      return ok({ ...scenario, revision: revision + 1 });
    }),
};

/** Deletes a scenario, and answers what it was. */
export const deleteScenario: UseCase<NamedScenario, ListedScenario> = {
  role: "planner",
  run: (ports, named) =>
    writing(ports, named.plantId, async (repositories) => {
      const seen = await seenScenario(repositories, named);
      if (!seen.ok) return seen;
      const { id, name, by, revision } = seen.value;
      return (await repositories.scenarios.remove(named.plantId, id, revision))
        ? seen
        : refused(scenarioChanged(name, by));
    }),
};

/** The scenario, if it is still the one that was seen. */
export async function seenScenario(
  { scenarios }: Pick<Repositories, "scenarios">,
  { plantId, scenarioId, expectedRevision }: NamedScenario,
): Promise<Result<StoredScenario>> {
  const scenario = await scenarios.get(plantId, scenarioId);
  if (scenario === null) return refused(scenarioNotFound(scenarioId));
  return scenario.revision === expectedRevision
    ? ok(scenario)
    : refused(scenarioChanged(scenario.name, scenario.by));
}

/** One transaction with the event that tells of it. */
async function writing(
  ports: Ports,
  plantId: string,
  write: (repositories: Repositories) => Promise<Result<StoredScenario>>,
): Promise<Result<ListedScenario>> {
  const done = await ports.store.write<ListedScenario, AppError>(async (repositories) => {
    const scenario = await write(repositories);
    if (!scenario.ok) return scenario;
    await repositories.events.append(plantId, ports.clock.now(), { type: "scenarios-changed" });
    return ok(await listedScenario(repositories, plantId, scenario.value));
  });
  if (done.ok) await publishPending(ports);
  return done;
}

function written({ clock }: Pick<Ports, "clock">, { name, changes }: ScenarioDraft, actor: Actor) {
  return { name, changes, by: actor.id, at: clock.now(), adopted: null };
}

/** What stands against the changes as plant and orders are now. */
async function refusalOf(
  ports: Pick<Ports, "clock">,
  repositories: Repositories,
  { plantId, name, changes }: ScenarioDraft,
): Promise<AppError | null> {
  const faults = await faultsNow(ports, repositories, { plantId, changes });
  if (!faults.ok) return faults.error;
  return faults.value.length === 0 ? null : scenarioRefused(name, faults.value);
}

/** Everything against some changes as plant and orders are now. */
export async function faultsNow(
  { clock }: Pick<Ports, "clock">,
  repositories: Repositories,
  { plantId, changes }: Pick<ScenarioDraft, "plantId" | "changes">,
): Promise<Result<readonly FieldFault[]>> {
  const snapshot = await planningSnapshot(repositories, plantId);
  if (snapshot === null) return refused(plantNotFound(plantId));
  const frozen = await frozenPlanOf(repositories, plantId);
  return ok(scenarioFaults(changes, groundOf({ snapshot, frozen, now: clock.now() })));
}
