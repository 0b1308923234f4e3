import type { WorkingPlanResponse, WorkingPlanStep } from "@formweek/contracts";
import { useCallback, useMemo, useState } from "react";
import { isOwnStep } from "../../sync/own-steps.ts";
import { useIsStepping } from "../../sync/working-plan.ts";

/** What others did to the plan since this page looked last. */
export interface OthersSteps {
  /** Newest first. */
  readonly steps: readonly WorkingPlanStep[];
  /** The plan that was looked at last; null: none was. */
  readonly seenPlanId: string | null;
  /** All of it has been taken note of. */
  readonly acknowledge: () => void;
}

export const noOthers: OthersSteps = { steps: [], seenPlanId: null, acknowledge: () => undefined };

type Seen = Pick<WorkingPlanResponse, "revision" | "planId">;

/** Watches for steps that this page did not take. Planning runs are left out: where they are started tells of them. */
export function useOthersSteps(plantId: string, known: WorkingPlanResponse | undefined): OthersSteps {
  const [seen, setSeen] = useState<Seen | null>(null);
  const isStepping = useIsStepping(plantId);
  const steps = useMemo(
    () =>
      known === undefined || seen === null || isStepping
        ? []
        : known.steps.filter(
            ({ revision, kind }) =>
              revision > seen.revision && kind !== "run" && !isOwnStep(plantId, revision),
          ),
    [known, seen, isStepping, plantId],
  );
  const isNews = known !== undefined && known.revision !== seen?.revision;
  if (isNews && !isStepping && steps.length === 0)
    setSeen({ revision: known.revision, planId: known.planId });
  const acknowledge = useCallback(() => {
    if (known !== undefined) setSeen({ revision: known.revision, planId: known.planId });
  }, [known]);
  return useMemo(
    () => ({ steps, seenPlanId: seen?.planId ?? null, acknowledge }),
    [steps, seen, acknowledge],
  );
}
