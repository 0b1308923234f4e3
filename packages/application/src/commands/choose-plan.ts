import type { Plant } from "@formweek/capacity-model";
import { openEdits } from "@formweek/scheduler";
import { appError } from "../errors.ts";
import { planNotFound, plantNotFound, runNotFound } from "../not-found.ts";
import { assembleProblem } from "../planning/assemble-problem.ts";
import { auditedDocument } from "../planning/retime-document.ts";
import { applyHours } from "../planning/apply-hours.ts";
import { frozenPins, keptBy, withPins } from "../planning/frozen-pins.ts";
import { type FrozenPlan, frozenPlanOf } from "../planning/frozen-plan.ts";
import type { HoursEdit } from "../planning/plan-edit.ts";
import { problemFaulty } from "../jobs/solve-refusals.ts";
import { inputHash } from "../planning/input-hash.ts";
import { type PlanningSnapshot, planningSnapshot } from "../planning/planning-snapshot.ts";
import {
  type ChoosableFindings,
  planOfSketch,
  type PlanSketch,
  type RunFindings,
} from "../planning/run-findings.ts";
import type { StoredPlan } from "../ports/plan-repository.ts";
import type { Ports } from "../ports/ports.ts";
import { type Result, ok, refused } from "../result.ts";
import type { UseCase } from "../use-case.ts";
import { notGivenOut } from "./add-step.ts";
import { writePlant } from "./put-plant.ts";
import { planByHand } from "./plan-by-hand.ts";
import { type StepInput, type StepTaken, standing, takeStep } from "./take-step.ts";

export interface ChooseInput extends StepInput {
  readonly runId: string;
  /** Place of the plan in what the run found, from 0. */
  readonly place: number;
}

/**
 * Works on a plan that a search for remedies or a comparison of plans found, as a step that can be taken back. Where the plan is
 * for added hours they are added with it: both in one transaction and one step.
 */
export const choosePlan: UseCase<ChooseInput, StepTaken> = {
  role: "planner",
  run: async (ports, input, actor) => {
    const chosen = await chosenPlan(ports, input);
    if (!chosen.ok) return chosen;
    const { plan, hours } = chosen.value;
    return takeStep(ports, input, actor, async (here, repositories) => {
      const changed =
        hours === null ? null : await writePlant(ports, repositories, hours.plant, hours.revision);
      if (changed?.ok === false) return changed;
      const planId = await repositories.plans.insertOnce(plan);
      const step = { kind: "edit", planId, undoTo: here.revision, redoTo: null } as const;
      return ok({ ...step, records: hours?.edit ?? null, ...notGivenOut });
    });
  },
};

interface Chosen {
  readonly plan: StoredPlan;
  /** Change of the plant's hours that the plan is made for, with the plant after it; null: there is none. */
  readonly hours: { readonly edit: HoursEdit; readonly plant: Plant; readonly revision: number } | null;
}

interface Known {
  readonly parent: StoredPlan;
  /** Of the plant. */
  readonly revision: number;
  readonly snapshot: PlanningSnapshot;
  /** Null: nothing is frozen. */
  readonly frozen: FrozenPlan | null;
  readonly findings: ChoosableFindings;
  readonly found: FoundPlan;
}

interface FoundPlan {
  readonly sketch: PlanSketch;
  readonly hours: HoursEdit | null;
}

/** Worked out before anything is written: it takes far longer than a transaction should. */
async function chosenPlan(ports: Ports, input: ChooseInput): Promise<Result<Chosen>> {
  const known = await recordsOf(ports, input);
  if (!known.ok) return known;
  const { parent, revision, snapshot, frozen, findings, found } = known.value;
  if (inputHash(snapshot) !== findings.inputHash) return refused(findingsOutdated);
  const plant = found.hours === null ? snapshot.plant : applyHours(snapshot.plant, found.hours);
  const assembled = assembleProblem({ ...snapshot, plant, now: findings.at });
  const sketched = planOfSketch(found.sketch);
  const kept = frozen === null ? [] : keptBy(sketched, frozenPins(assembled.problem, frozen));
  const problem = withPins(assembled.problem, kept);
  const opened = openEdits(problem, sketched);
  if (!opened.ok) return refused(problemFaulty(opened.error));
  const document = auditedDocument({ ...assembled, problem }, opened.value.plan, parent.document);
  if (!document.ok) return document;
  const { runId, place } = input;
  const orderId = findings.kind === "remedies" ? findings.orderId : null;
  const plan = planByHand(ports, { parent, edit: { kind: "choose", runId, place, orderId } }, document.value);
  return ok({ plan, hours: found.hours === null ? null : { edit: found.hours, plant, revision } });
}

function recordsOf(
  ports: Ports,
  { plantId, expectedRevision, runId, place }: ChooseInput,
): Promise<Result<Known>> {
  return ports.store.read(async (repositories) => {
    const here = await standing(repositories, plantId, expectedRevision);
    if (!here.ok) return here;
    const run = await repositories.runs.get(runId);
    if (run === null || run.plantId !== plantId) return refused(runNotFound(runId));
    const findings = choosableOf(run.findings);
    const found = findings === null ? null : foundAt(findings, place);
    if (findings === null || found === null) return refused(noSuchPlan(place));
    const parent = await repositories.plans.get(plantId, here.value.planId);
    if (parent === null) return refused(planNotFound(here.value.planId));
    const snapshot = await planningSnapshot(repositories, plantId);
    const stored = await repositories.plants.get(plantId);
    if (snapshot === null || stored === null) return refused(plantNotFound(plantId));
    const frozen = await frozenPlanOf(repositories, plantId);
    return ok({ parent, revision: stored.revision, snapshot, frozen, findings, found });
  });
}

function choosableOf(findings: RunFindings | null): ChoosableFindings | null {
  return findings?.kind === "remedies" || findings?.kind === "trade-off" ? findings : null;
}

/** A plan for the inputs as they are, or for hours that are added with it; what people must change first has none to choose. */
function foundAt(findings: ChoosableFindings, place: number): FoundPlan | null {
  if (findings.kind === "trade-off") {
    const plan = findings.plans[place];
    return plan === undefined ? null : { sketch: plan.sketch, hours: null };
  }
  const { action, sketch = null } = findings.remedies[place] ?? {};
  if (action === undefined || sketch === null || action.kind === "change") return null;
  return { sketch, hours: action.kind === "hours" ? action.edit : null };
}

const noSuchPlan = (place: number) =>
  appError(
    "not-found",
    {
      title: "There is no such plan to choose.",
      cause: `The run has no plan of its own at place ${place}.`,
      remedy: "Choose one of the plans that it lists.",
    },
    [
      {
        path: "place",
        problem: `Nothing can be chosen at place ${place}.`,
        remedy: "Name a place of the list.",
        cause: { kind: "nothing at place", place },
      },
    ],
  );

const findingsOutdated = appError("findings-outdated", {
  title: "This was found for other data.",
  cause: "Plant, orders or held orders have changed since the run looked at them.",
  remedy: "Start the search again, then choose.",
});
