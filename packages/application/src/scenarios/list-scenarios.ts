import { plantNotFound } from "../not-found.ts";
import { inputHash } from "../planning/input-hash.ts";
import { planningSnapshot } from "../planning/planning-snapshot.ts";
import type { StoredOutcome, StoredScenario } from "../ports/scenario-repository.ts";
import type { Repositories } from "../ports/unit-of-work.ts";
import { ok, refused } from "../result.ts";
import type { PlantInput, UseCase } from "../use-case.ts";

/** What a scenario came to, and whether it would still come to that. */
export interface ListedOutcome extends StoredOutcome {
  /** Plant, orders, working plan and scenario are those that were worked out. */
  readonly isCurrent: boolean;
}

/** A scenario as it is looked at. */
export interface ListedScenario extends StoredScenario {
  readonly outcome: ListedOutcome | null;
}

/** What an outcome was worked out for, as it is now. */
export interface OutcomeInputs {
  /** Null: the plant is gone. */
  readonly inputHash: string | null;
  /** Of the working plan. */
  readonly stepRevision: number;
}

/** Scenarios of a plant, the oldest first. */
export const listScenarios: UseCase<PlantInput, readonly ListedScenario[]> = {
  role: "viewer",
  run: (ports, { plantId }) =>
    ports.store.read(async (repositories) => {
      if ((await repositories.plants.get(plantId)) === null) return refused(plantNotFound(plantId));
      const scenarios = await repositories.scenarios.list(plantId);
      if (scenarios.every(({ outcome }) => outcome === null)) return ok(scenarios.map(withoutOutcome));
      const now = await inputsNow(repositories, plantId);
      return ok(scenarios.map((scenario) => listed(scenario, now)));
    }),
};

/** One scenario as it is looked at. */
export async function listedScenario(
  repositories: Repositories,
  plantId: string,
  scenario: StoredScenario,
): Promise<ListedScenario> {
  return scenario.outcome === null
    ? withoutOutcome(scenario)
    : listed(scenario, await inputsNow(repositories, plantId));
}

/** What outcomes are of by now. */
async function inputsNow(repositories: Repositories, plantId: string): Promise<OutcomeInputs> {
  const snapshot = await planningSnapshot(repositories, plantId);
  const here = await repositories.steps.newest(plantId);
  return {
    inputHash: snapshot === null ? null : inputHash(snapshot),
    stepRevision: here?.revision ?? 0,
  };
}

const withoutOutcome = (scenario: StoredScenario): ListedScenario => ({ ...scenario, outcome: null });

function listed(scenario: StoredScenario, now: OutcomeInputs): ListedScenario {
  const { outcome, revision } = scenario;
  if (outcome === null) return withoutOutcome(scenario);
  const isCurrent = movedSince(outcome, { ...now, revision }).length === 0;
  return { ...scenario, outcome: { ...outcome, isCurrent } };
}

/** What is another than when a scenario was worked out, each a sentence; empty: nothing is. */
export function movedSince(
  outcome: StoredOutcome,
  { inputHash: hash, stepRevision, revision }: OutcomeInputs & Pick<StoredScenario, "revision">,
): readonly string[] {
  return [
    ...(outcome.scenarioRevision === revision ? [] : ["The scenario was rewritten since it was worked out."]),
    ...(outcome.inputHash === hash
      ? []
      : ["Plant, orders or held orders have changed since it was worked out."]),
    ...(outcome.stepRevision === stepRevision
      ? []
      : ["The working plan has taken a step since it was worked out."]),
  ];
}
