import { openEdits } from "@formweek/scheduler";
import { notGivenOut } from "../commands/add-step.ts";
import { planByHand } from "../commands/plan-by-hand.ts";
import { type StepInput, type StepTaken, standing, takeStep } from "../commands/take-step.ts";
import { problemFaulty } from "../jobs/solve-refusals.ts";
import { planNotFound, plantNotFound } from "../not-found.ts";
import { assembleProblem } from "../planning/assemble-problem.ts";
import { frozenPins, keptBy, withPins } from "../planning/frozen-pins.ts";
import { type FrozenPlan, frozenPlanOf } from "../planning/frozen-plan.ts";
import { inputHash } from "../planning/input-hash.ts";
import { type PlanningSnapshot, planningSnapshot } from "../planning/planning-snapshot.ts";
import { auditedDocument } from "../planning/retime-document.ts";
import { type PlanSketch, planOfSketch } from "../planning/run-findings.ts";
import type { StoredPlan } from "../ports/plan-repository.ts";
import type { Ports } from "../ports/ports.ts";
import type { PlantRevisions } from "../ports/revision-repository.ts";
import type { StoredOutcome, StoredScenario } from "../ports/scenario-repository.ts";
import { type Result, ok, refused } from "../result.ts";
import type { UseCase } from "../use-case.ts";
import { applyScenario } from "./apply-scenario.ts";
import { movedSince } from "./list-scenarios.ts";
import { type AdoptedRecords, listChanges, orderChanges } from "./record-changes.ts";
import { scenarioFaults } from "./scenario-faults.ts";
import { groundOf } from "./scenario-ground.ts";
import { scenarioOutdated, scenarioRefused } from "./scenario-refusals.ts";
import { seenScenario } from "./write-scenarios.ts";
import { writeAdopted } from "./write-adopted.ts";

export interface AdoptInput extends StepInput {
  readonly scenarioId: string;
  /** Revision of the scenario that the caller saw. */
  readonly scenarioRevision: number;
}

/**
 * Makes the changes of a scenario in plant and book and works on the plan that was found for them: all in one transaction and one
 * step, so that an undo brings all back. Refused where anything has moved since the scenario was worked out.
 */
export const adoptScenario: UseCase<AdoptInput, StepTaken> = {
  role: "planner",
  run: async (ports, input, actor) => {
    const prepared = await preparedAdoption(ports, input);
    if (!prepared.ok) return prepared;
    const { plan, records, revisions } = prepared.value;
    return takeStep(ports, input, actor, async (here, repositories) => {
      const now = await repositories.revisions.of(input.plantId);
      if (!isSameBut(now, revisions))
        return refused(scenarioOutdated(["Plant, orders or held orders have just changed."]));
      const seen = await seenScenario(repositories, seenBy(input));
      if (!seen.ok) return seen;
      const adopted = { by: actor.id, at: ports.clock.now() };
      const written = await writeAdopted(ports, repositories, { plantId: input.plantId, records, adopted });
      if (!written.ok) return written;
      const planId = await repositories.plans.insertOnce(plan);
      return ok({ kind: "edit", planId, undoTo: here.revision, redoTo: null, records, ...notGivenOut });
    });
  },
};

const seenBy = ({ plantId, scenarioId, scenarioRevision }: AdoptInput) => ({
  plantId,
  scenarioId,
  expectedRevision: scenarioRevision,
});

interface Prepared {
  readonly plan: StoredPlan;
  readonly records: AdoptedRecords;
  /** Versions of the records that it was prepared for. */
  readonly revisions: PlantRevisions;
}

interface Known {
  readonly parent: StoredPlan;
  readonly scenario: StoredScenario;
  readonly outcome: StoredOutcome;
  readonly sketch: PlanSketch;
  readonly snapshot: PlanningSnapshot;
  readonly revisions: PlantRevisions;
  /** Null: nothing is frozen. */
  readonly frozen: FrozenPlan | null;
}

/** Worked out before anything is written: it takes far longer than a transaction should. */
async function preparedAdoption(ports: Ports, input: AdoptInput): Promise<Result<Prepared>> {
  const known = await recordsOf(ports, input);
  if (!known.ok) return known;
  const { parent, scenario, outcome, sketch, snapshot, revisions, frozen } = known.value;
  const { id: scenarioId, name, changes, revision: scenarioRevision } = scenario;
  const faults = scenarioFaults(changes, groundOf({ snapshot, frozen, now: outcome.at }));
  if (faults.length > 0) return refused(scenarioRefused(name, faults));
  const changed = applyScenario(snapshot, changes);
  const assembled = assembleProblem({ ...changed, now: outcome.at });
  const sketched = planOfSketch(sketch);
  const kept = frozen === null ? [] : keptBy(sketched, frozenPins(assembled.problem, frozen));
  const problem = withPins(assembled.problem, kept);
  const opened = openEdits(problem, sketched);
  if (!opened.ok) return refused(problemFaulty(opened.error));
  const document = auditedDocument({ ...assembled, problem }, opened.value.plan, parent.document);
  if (!document.ok) return document;
  return ok({
    plan: planByHand(ports, { parent, edit: { kind: "adopt", scenarioId, name } }, document.value),
    records: {
      kind: "adopt",
      scenarioId,
      scenarioRevision,
      plant: listChanges(snapshot.plant, changed.plant),
      orders: orderChanges(snapshot.orders, changed.orders),
    },
    revisions,
  });
}

function recordsOf(ports: Ports, input: AdoptInput): Promise<Result<Known>> {
  const { plantId, expectedRevision } = input;
  return ports.store.read(async (repositories) => {
    const here = await standing(repositories, plantId, expectedRevision);
    if (!here.ok) return here;
    const seen = await seenScenario(repositories, seenBy(input));
    if (!seen.ok) return seen;
    const { outcome, revision } = seen.value;
    const sketch = await repositories.scenarios.sketch(plantId, seen.value.id);
    if (outcome === null || sketch === null)
      return refused(scenarioOutdated(["It has not been worked out yet."]));
    const parent = await repositories.plans.get(plantId, here.value.planId);
    if (parent === null) return refused(planNotFound(here.value.planId));
    const snapshot = await planningSnapshot(repositories, plantId);
    const revisions = await repositories.revisions.of(plantId);
    if (snapshot === null || revisions === null) return refused(plantNotFound(plantId));
    const now = { inputHash: inputHash(snapshot), stepRevision: here.value.revision, revision };
    const moved = movedSince(outcome, now);
    if (moved.length > 0) return refused(scenarioOutdated(moved));
    const frozen = await frozenPlanOf(repositories, plantId);
    return ok({ parent, scenario: seen.value, outcome, sketch, snapshot, revisions, frozen });
  });
}

/** True when plant, book, pins and holds are as they were; the step is looked at by whoever takes one. */
function isSameBut(now: PlantRevisions | null, seen: PlantRevisions): boolean {
  return (
    now !== null &&
    now.plant === seen.plant &&
    now.book === seen.book &&
    now.pins === seen.pins &&
    now.holds === seen.holds
  );
}
