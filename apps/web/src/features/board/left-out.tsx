import type { JSX } from "react";
import { problemInWords } from "../../components/notice.tsx";
import { useFormat } from "../../format/use-format.ts";
import { useNaming } from "../../format/use-naming.ts";
import { usualSeconds, useStartRun } from "../../sync/solves.ts";
import { useText } from "../../text/text.ts";
import { useBoard } from "./use-board.ts";
import { usePlanEdits } from "./use-plan-edits.ts";

/**
 * Right after hours were added: says that orders which were left out are so still, since the plan was only timed again, and
 * offers to plan again.
 */
export function LeftOut(): JSX.Element {
  const plan = useBoard((state) => state.plan);
  const { newest } = usePlanEdits();
  const left = plan?.document.unplanned.length ?? 0;
  const isOfPlan = newest !== null && newest.planId === plan?.planId;
  const isMoreTime = isOfPlan && newest.kind !== "undo" && givesTime(newest.edit?.kind);
  return (
    <div role="status">
      {plan !== null && isMoreTime && left > 0 && <Offer plantId={plan.document.plant.id} left={left} />}
    </div>
  );
}

function givesTime(kind: string | undefined): boolean {
  return kind === "add shift" || kind === "open line";
}

function Offer({ plantId, left }: { readonly plantId: string; readonly left: number }): JSX.Element {
  const text = useText();
  const format = useFormat();
  const naming = useNaming();
  const start = useStartRun(plantId);
  const problem = start.error === null ? null : problemInWords(start.error, text, naming);
  return (
    <div className="others-steps">
      <div>
        <strong>{text.hours.leftOut(left, format.count(left))}</strong> {text.hours.leftOutHint}
        {problem !== null && (
          <p className="late-words">
            {problem.title} {problem.cause} {problem.remedy}
          </p>
        )}
      </div>
      <button
        type="button"
        className="button button-main"
        disabled={start.isPending}
        onClick={() => start.mutate({ kind: "plan", seconds: usualSeconds, favour: null })}
      >
        {text.hours.planThemIn}
      </button>
    </div>
  );
}
