import type { JSX } from "react";
import { Link } from "wouter";
import { ComparisonWords } from "../../components/comparison-words.tsx";
import { Icon } from "../../components/icon.tsx";
import { PlanFigures } from "../../components/plan-figures.tsx";
import { compareAddress } from "../../format/compare-address.ts";
import { useComparison } from "../../sync/versions.ts";
import { useWorkingPlan, type WantedStep } from "../../sync/working-plan.ts";
import { useText } from "../../text/text.ts";
import { StepList } from "./step-list.tsx";
import { useBoard } from "./use-board.ts";
import { usePlanEdits } from "./use-plan-edits.ts";
import { useWantedWords } from "./wanted-words.ts";

/** Somebody else was first: what they did since, the plan that was looked at beside the one that stands, and the own step again. */
export function EditConflict({ refused }: { readonly refused: WantedStep }): JSX.Element | null {
  const { versions: text } = useText();
  const plantId = useBoard((state) => state.plan)?.document.plant.id ?? "";
  const { dismiss, takeAgain, others, isReady } = usePlanEdits();
  const working = useWorkingPlan(plantId).data;
  const wanted = useWantedWords(refused.step);
  const isOther = refused.planId !== null && working?.planId !== refused.planId;
  const pair = { fromId: isOther ? refused.planId : null, toId: isOther ? (working?.planId ?? null) : null };
  const comparison = useComparison(plantId, pair).data;
  const close = (): void => {
    others.acknowledge();
    dismiss();
  };
  return (
    <div className="edit-failure edit-conflict" role="alert">
      <Icon name="warn" />
      <div className="conflict-words">
        <strong>{text.conflictTitle}</strong>
        <p>
          {text.conflictMine(wanted)} {text.conflictSince}
        </p>
        {working !== undefined && (
          <StepList steps={working.steps.filter(({ revision }) => revision > refused.revision)} />
        )}
        {comparison !== undefined && (
          <>
            <p>{text.conflictVersions}</p>
            <ComparisonWords comparison={comparison} />
            <PlanFigures before={comparison.from} after={comparison.to} heads={[text.yours, text.theirs]} />
          </>
        )}
        <div className="tool-group">
          <button
            type="button"
            className="button"
            disabled={!isReady}
            onClick={() => {
              others.acknowledge();
              takeAgain({ overFrozen: false });
            }}
          >
            {text.again}
          </button>
          {pair.fromId !== null && pair.toId !== null && (
            <Link href={compareAddress(pair.fromId, pair.toId)} className="button">
              {text.everyDifference}
            </Link>
          )}
          <button type="button" className="button" onClick={close}>
            {text.dismiss}
          </button>
        </div>
      </div>
    </div>
  );
}
