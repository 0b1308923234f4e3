import type { PlanEdit, WorkingPlanResponse, WorkingPlanStep } from "@formweek/contracts";
import { createContext, useContext, useEffect, useMemo } from "react";
import { nextSteps, type NextSteps } from "../../kernels/undo-stack.ts";
import type { BoardStore } from "../../state/store.ts";
import type { CallError } from "../../sync/client.ts";
import { useTakeStep, useWorkingPlan, type WantedStep } from "../../sync/working-plan.ts";

/** What the board's parts need to change the plan. */
export interface PlanEdits {
  readonly canUndo: boolean;
  readonly canRedo: boolean;
  readonly next: NextSteps;
  /** The newest step of anybody; null before the first. */
  readonly newest: WorkingPlanStep | null;
  /** False until it is known what is worked on, and while a step is under way. */
  readonly isReady: boolean;
  readonly isBusy: boolean;
  /** Why the last step was refused. */
  readonly failure: CallError | null;
  readonly take: (step: WantedStep["step"]) => void;
  readonly dismiss: () => void;
}

const idle: PlanEdits = {
  canUndo: false,
  canRedo: false,
  next: { undo: null, redo: null },
  newest: null,
  isReady: false,
  isBusy: false,
  failure: null,
  take: () => undefined,
  dismiss: () => undefined,
};

const EditsContext = createContext<PlanEdits>(idle);
export const EditsProvider = EditsContext.Provider;

export function usePlanEdits(): PlanEdits {
  return useContext(EditsContext);
}

/** Steps of the working plan for a board: carries out the edits that its state asks for. */
export function useOpenEdits(plantId: string, store: BoardStore): PlanEdits {
  const working = useWorkingPlan(plantId);
  const { mutate, isPending, error, reset } = useTakeStep(plantId);
  const known = working.data;

  useEffect(() => {
    const ask = (edit: PlanEdit): void => {
      const { revision } = known ?? { revision: 0 };
      mutate(
        { step: edit, revision },
        {
          onSuccess: ({ planId }) => store.send({ kind: "edit answered", planId }),
          onError: () => store.send({ kind: "edit answered", planId: null }),
        },
      );
    };
    return store.onEffect((effect) => {
      if (effect.kind === "ask for edit") ask(effect.edit);
    });
  }, [known, mutate, store]);

  return useMemo(
    () => ({
      ...standing(known),
      isReady: known !== undefined && !isPending,
      isBusy: isPending,
      failure: error,
      take: (step) => {
        if (known !== undefined && !isPending) mutate({ step, revision: known.revision });
      },
      dismiss: reset,
    }),
    [known, isPending, error, mutate, reset],
  );
}

function standing(
  known: WorkingPlanResponse | undefined,
): Pick<PlanEdits, "canUndo" | "canRedo" | "next" | "newest"> {
  return {
    canUndo: known?.canUndo ?? false,
    canRedo: known?.canRedo ?? false,
    next: nextSteps(known?.steps ?? []),
    newest: known?.steps[0] ?? null,
  };
}
