import { useId, type JSX } from "react";
import { useFormat } from "../../format/use-format.ts";
import type { BoardPlan } from "../../kernels/board-plan.ts";
import type { PlanChoice } from "../../kernels/plan-choices.ts";
import { useText } from "../../text/text.ts";
import { choiceWords } from "./choice-words.ts";

interface PlanSelectProps {
  readonly label: string;
  readonly choices: readonly PlanChoice[];
  readonly board: BoardPlan;
  readonly planId: string;
  readonly onPlan: (planId: string) => void;
}

/** One of the plans that there are; one that is not in the list (any more) stays chosen under a name of its own. */
export function PlanSelect({ label, choices, board, planId, onPlan }: PlanSelectProps): JSX.Element {
  const text = useText();
  const format = useFormat();
  const id = useId();
  const { groups, otherPlan } = text.versions;
  const named = [
    [groups.now, choices.filter(({ kind }) => kind === "working")],
    [groups.published, choices.filter(({ kind }) => kind === "published")],
    [groups.steps, choices.filter(({ kind }) => kind === "step")],
  ] as const;
  return (
    <div className="plan-select">
      <label htmlFor={id}>{label}</label>
      <select id={id} className="select" value={planId} onChange={(event) => onPlan(event.target.value)}>
        {choices.every((choice) => choice.planId !== planId) && <option value={planId}>{otherPlan}</option>}
        {named.map(([name, group]) =>
          group.length === 0 ? null : (
            <optgroup key={name} label={name}>
              {group.map((choice) => (
                <option key={choice.planId} value={choice.planId}>
                  {choiceWords(choice, board, { text, format })}
                </option>
              ))}
            </optgroup>
          ),
        )}
      </select>
    </div>
  );
}
