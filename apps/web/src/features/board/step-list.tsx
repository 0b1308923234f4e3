import type { JSX } from "react";
import type { WorkingPlanStep } from "@formweek/contracts";
import { personName } from "../../format/person.ts";
import { stepWords } from "../../format/step-words.ts";
import { useFormat } from "../../format/use-format.ts";
import { secondsOf } from "../../kernels/board-plan.ts";
import { useText } from "../../text/text.ts";
import { useBoard } from "./use-board.ts";

const mostShown = 5;

/** Who did what and when, newest first, the newest few. */
export function StepList({ steps }: { readonly steps: readonly WorkingPlanStep[] }): JSX.Element | null {
  const text = useText();
  const format = useFormat();
  const plan = useBoard((state) => state.plan);
  if (plan === null) return null;
  return (
    <ul className="step-list">
      {steps.slice(0, mostShown).map((step) => (
        <li key={step.revision}>
          {text.versions.byAt(
            stepWords(plan, step, { text, format }),
            personName(step.by, text),
            format.instant(secondsOf(step.at)),
          )}
        </li>
      ))}
    </ul>
  );
}
