import { StepResponse, WorkingPlanResponse, type HoursEdit, type PlanEdit } from "@formweek/contracts";
import {
  useIsMutating,
  useMutation,
  useQuery,
  useQueryClient,
  type UseMutationResult,
  type UseQueryResult,
} from "@tanstack/react-query";
import { call, type CallError } from "./client.ts";
import { rememberOwnStep } from "./own-steps.ts";
import { keys } from "./queries.ts";

/** A plan that a run found, by its place there. */
export interface FoundPlan {
  readonly kind: "found plan";
  readonly runId: string;
  readonly place: number;
}

/**
 * A step that a planner wants: an edit, a plan that was found, or one back or forth. `revision` is the working plan's that it was
 * decided on.
 */
export interface WantedStep {
  readonly step: PlanEdit | HoursEdit | FoundPlan | "undo" | "redo";
  readonly revision: number;
  /** The plan that it was decided on; null: not known. */
  readonly planId: string | null;
  /** It is said that what is frozen may move. */
  readonly overFrozen: boolean;
}

const pathOf = (plantId: string): string => `/plants/${encodeURIComponent(plantId)}/working-plan`;

/** The plan that is worked on, and its latest steps. */
export function useWorkingPlan(plantId: string): UseQueryResult<WorkingPlanResponse> {
  return useQuery({
    queryKey: keys.workingPlan(plantId),
    queryFn: ({ signal }) => call({ path: pathOf(plantId), answer: WorkingPlanResponse, signal }),
  });
}

/**
 * Takes a step; settled once the plan that stands then is known here, also when the step was refused: somebody else may
 * have changed the plan meanwhile.
 */
export function useTakeStep(plantId: string): UseMutationResult<StepResponse, CallError, WantedStep> {
  const client = useQueryClient();
  return useMutation({
    mutationKey: keys.step(plantId),
    mutationFn: (wanted) => {
      const [path, body] = askOf(wanted);
      return call({ path: `${pathOf(plantId)}/${path}`, answer: StepResponse, method: "POST", body });
    },
    onSuccess: ({ revision }) => rememberOwnStep(plantId, revision),
    onSettled: () =>
      Promise.all(
        [keys.workingPlan, keys.latestPlan, keys.orders].map((keyOf) =>
          client.invalidateQueries({ queryKey: keyOf(plantId) }),
        ),
      ),
  });
}

function askOf({
  step,
  revision,
  overFrozen,
}: WantedStep): readonly [path: string, body: Readonly<Record<string, unknown>>] {
  if (typeof step === "string") return [step, { revision }];
  if (step.kind === "found plan") return ["choose", { revision, runId: step.runId, place: step.place }];
  if ("closure" in step || "shift" in step) return ["hours", { revision, edit: step }];
  return ["edits", { revision, edit: step, overFrozen }];
}

/** A step that this page asked for is under way. */
export function useIsStepping(plantId: string): boolean {
  return useIsMutating({ mutationKey: keys.step(plantId) }) > 0;
}
