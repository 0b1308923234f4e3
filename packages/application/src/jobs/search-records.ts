import { openEdits, type Plan } from "@formweek/scheduler";
import type { Assembled } from "../planning/assembled.ts";
import { type FrozenPlan, frozenPlanOf } from "../planning/frozen-plan.ts";
import { planOfDocument } from "../planning/plan-of-document.ts";
import { planningSnapshot, type PlanningSnapshot } from "../planning/planning-snapshot.ts";
import type { RunFindings } from "../planning/run-findings.ts";
import type { StoredPlan } from "../ports/plan-repository.ts";
import type { Ports } from "../ports/ports.ts";
import type { SolveRun } from "../ports/run-repository.ts";
import type { FoundOutcome } from "../ports/scenario-repository.ts";
import { workingPlanOf } from "../queries/working-plan-of.ts";
import { type Result, ok, refused } from "../result.ts";
import type { ProgressKeeper } from "./progress-keeper.ts";
import { plantGone, problemFaulty } from "./solve-refusals.ts";

/** A run that finds something out beside a plan. */
export interface Search {
  readonly ports: Ports;
  readonly run: SolveRun;
  readonly progress: ProgressKeeper;
  readonly signal: AbortSignal;
}

/** What a run came to, with what is kept beside the run itself. */
export interface Found {
  /** Null: it was stopped before there was anything. */
  readonly findings: RunFindings | null;
  /** By scenario. */
  readonly outcomes: ReadonlyMap<string, FoundOutcome>;
}

/** What stands in the run alone. */
export const findingsAlone = (findings: RunFindings | null): Found => ({ findings, outcomes: new Map() });

/** What a search looks at. */
export interface Records {
  readonly snapshot: PlanningSnapshot;
  readonly plan: StoredPlan | null;
  /** Null: nothing is frozen. */
  readonly frozen: FrozenPlan | null;
}

/** Inputs as they are now, and the plan that is named or worked on. */
export async function recordsOf({ ports, run }: Search, planId: string | null): Promise<Result<Records>> {
  const { plantId } = run;
  return ports.store.read(async (repositories) => {
    const snapshot = await planningSnapshot(repositories, plantId);
    if (snapshot === null) return refused(plantGone);
    const plan =
      planId === null
        ? await workingPlanOf(repositories, plantId)
        : await repositories.plans.get(plantId, planId);
    return ok({ snapshot, plan, frozen: await frozenPlanOf(repositories, plantId) });
  });
}

/** A plan as it is under the inputs as they are now. */
export function standingPlan({ problem }: Assembled, { document }: StoredPlan): Result<Plan> {
  const opened = openEdits(problem, planOfDocument(document, problem));
  return opened.ok ? ok(opened.value.plan) : refused(problemFaulty(opened.error));
}
