import type { PlanEdit, WorkingPlanResponse, WorkingPlanStep } from "@formweek/contracts";
import { createContext, useContext, useEffect, useMemo } from "react";
import { nextSteps, type NextSteps } from "../../kernels/undo-stack.ts";
import type { BoardStore } from "../../state/store.ts";
import type { CallError } from "../../sync/client.ts";
import { noOthers, useOthersSteps, type OthersSteps } from "./use-others-steps.ts";
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
  /** The plan on the board is a run's best so far: it is looked at, not changed. */
  readonly isProvisional: boolean;
  /** Why the last step was refused. */
  readonly failure: CallError | null;
  /** The step that was refused. */
  readonly refused: WantedStep | null;
  /** What others did since this page looked last. */
  readonly others: OthersSteps;
  /** Asks for a step; `onTaken` is told once the plan stands that it made. */
  readonly take: (step: WantedStep["step"], onTaken?: () => void) => void;
  /** Asks for the refused step once more, on the plan as it is now. */
  readonly takeAgain: (over: { readonly overFrozen: boolean }) => void;
  /** Sends the step once more as it was, for the plan that it was decided on: a step that was taken after all is not taken twice. */
  readonly sendAgain: () => void;
  readonly dismiss: () => void;
}

const idle: PlanEdits = {
  canUndo: false,
  canRedo: false,
  next: { undo: null, redo: null },
  newest: null,
  isReady: false,
  isBusy: false,
  isProvisional: false,
  failure: null,
  refused: null,
  others: noOthers,
  take: () => undefined,
  takeAgain: () => undefined,
  sendAgain: () => undefined,
  dismiss: () => undefined,
};

const EditsContext = createContext<PlanEdits>(idle);
export const EditsProvider = EditsContext.Provider;

export function usePlanEdits(): PlanEdits {
  return useContext(EditsContext);
}

/** Steps of the working plan for a board: carries out the edits that its state asks for. */
export function useOpenEdits(plantId: string, store: BoardStore, isProvisional: boolean): PlanEdits {
  const working = useWorkingPlan(plantId);
  const { mutate, isPending, error, reset, variables } = useTakeStep(plantId);
  const known = working.data;
  const others = useOthersSteps(plantId, known);

  useEffect(() => {
    const ask = (edit: PlanEdit): void =>
      mutate(
        { step: edit, ...seenIn(known), overFrozen: false },
        {
          onSuccess: ({ planId }) => store.send({ kind: "edit answered", planId }),
          onError: () => store.send({ kind: "edit answered", planId: null }),
        },
      );
    return store.onEffect((effect) => {
      if (effect.kind === "ask for edit") ask(effect.edit);
    });
  }, [known, mutate, store]);

  return useMemo(
    () => ({
      ...(isProvisional ? { ...standing(known), canUndo: false, canRedo: false } : standing(known)),
      isReady: known !== undefined && !isPending && !isProvisional,
      isProvisional,
      isBusy: isPending,
      failure: error,
      refused: error === null ? null : (variables ?? null),
      others,
      take: (step, onTaken) => {
        if (known === undefined || isPending || isProvisional) return;
        mutate({ step, ...seenIn(known), overFrozen: false }, { onSuccess: () => onTaken?.() });
      },
      takeAgain: ({ overFrozen }) => {
        if (variables !== undefined && !isPending)
          mutate({ step: variables.step, ...seenIn(known), overFrozen });
      },
      sendAgain: () => {
        if (variables !== undefined && !isPending) mutate(variables);
      },
      dismiss: reset,
    }),
    [known, isProvisional, isPending, error, variables, others, mutate, reset],
  );
}

function seenIn(known: WorkingPlanResponse | undefined): Pick<WantedStep, "revision" | "planId"> {
  return { revision: known?.revision ?? 0, planId: known?.planId ?? null };
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
