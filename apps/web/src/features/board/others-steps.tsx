import type { JSX } from "react";
import { Link } from "wouter";
import { compareAddress } from "../../format/compare-address.ts";
import { personName } from "../../format/person.ts";
import { useText } from "../../text/text.ts";
import { StepList } from "./step-list.tsx";
import { useBoard } from "./use-board.ts";
import { isConflict } from "./edit-failure.tsx";
import { usePlanEdits } from "./use-plan-edits.ts";

/** Says what somebody else just did to the plan on the board; a refused step of one's own says it itself. */
export function OthersSteps(): JSX.Element {
  const text = useText();
  const { others, failure } = usePlanEdits();
  const plan = useBoard((state) => state.plan);
  const [newest] = others.steps;
  const isShown = newest !== undefined && plan !== null && !isConflict(failure);
  const { seenPlanId } = others;
  return (
    <div role="status">
      {isShown && (
        <div className="others-steps">
          <div>
            <strong>{text.versions.othersTitle(personName(newest.by, text))}</strong>
            <StepList steps={others.steps} />
          </div>
          {seenPlanId !== null && seenPlanId !== newest.planId && (
            <Link href={compareAddress(seenPlanId, newest.planId)} className="button">
              {text.versions.whatChanged}
            </Link>
          )}
          <button type="button" className="button" onClick={others.acknowledge}>
            {text.versions.dismiss}
          </button>
        </div>
      )}
    </div>
  );
}
