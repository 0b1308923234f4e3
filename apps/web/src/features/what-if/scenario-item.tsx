import type { Scenario } from "@formweek/contracts";
import { useState, type JSX } from "react";
import { FailureWords } from "../../components/failure-words.tsx";
import type { Format } from "../../format/format.ts";
import { personName } from "../../format/person.ts";
import { useFormat } from "../../format/use-format.ts";
import { secondsOf } from "../../kernels/board-plan.ts";
import { nameOfWords } from "../../kernels/scenario-draft.ts";
import { stateOf } from "../../kernels/scenario-rows.ts";
import { nowSeconds } from "../../sync/now.ts";
import { useDeleteScenario, useWriteScenario } from "../../sync/scenarios.ts";
import { useText, type Text } from "../../text/text.ts";
import type { ScenarioGround } from "./use-scenario-ground.ts";

interface ScenarioItemProps {
  readonly ground: ScenarioGround;
  readonly scenario: Scenario;
  readonly isCompared: boolean;
  /** No more can be ticked. */
  readonly isFull: boolean;
  readonly onCompare: (isWanted: boolean) => void;
  readonly onEdit: () => void;
  readonly onWritten: (scenario: Scenario, words: string) => void;
  readonly onDeleted: () => void;
}

/** One scenario: its changes in words, how far it has been worked out, and what can be done with it. */
export function ScenarioItem(props: ScenarioItemProps): JSX.Element {
  const { ground, scenario, isCompared, isFull, onCompare, onEdit, onWritten, onDeleted } = props;
  const text = useText();
  const format = useFormat();
  const { whatIf } = text;
  const [isSure, setSure] = useState(false);
  const write = useWriteScenario(ground.plantId);
  const remove = useDeleteScenario(ground.plantId);
  const { name, changes } = scenario;
  const copy = (): void => {
    const draft = { name: nameOfWords(whatIf.nameOfCopy(name)), changes: [...changes] };
    write.mutate({ over: null, draft }, { onSuccess: (made) => onWritten(made, whatIf.copied(made.name)) });
  };
  return (
    <li className={isCompared ? "scenario scenario-compared" : "scenario"}>
      <label className="scenario-name">
        <input
          type="checkbox"
          checked={isCompared}
          disabled={!isCompared && isFull}
          onChange={({ target }) => onCompare(target.checked)}
        />
        <strong>{name}</strong>
      </label>
      <p className="hint">{stateWords(scenario, text, format)}</p>
      <ul className="scenario-changes">
        {changes.map((change, place) => (
          <li key={place}>{ground.say(change)}</li>
        ))}
      </ul>
      <div className="what-if-buttons">
        {scenario.adopted === null && (
          <button type="button" className="button" aria-label={whatIf.editOf(name)} onClick={onEdit}>
            {whatIf.edit}
          </button>
        )}
        <button
          type="button"
          className="button"
          aria-label={whatIf.copyOf(name)}
          disabled={write.isPending}
          onClick={copy}
        >
          {whatIf.copy}
        </button>
        <button
          type="button"
          className={isSure ? "button button-main" : "button"}
          aria-label={isSure ? undefined : whatIf.removeOf(name)}
          disabled={remove.isPending}
          onClick={() => {
            if (isSure) remove.mutate(scenario, { onSuccess: onDeleted });
            else setSure(true);
          }}
          onBlur={() => setSure(false)}
        >
          {isSure ? whatIf.removeSure : whatIf.remove}
        </button>
      </div>
      {write.error !== null && <FailureWords cause={write.error} />}
      {remove.error !== null && <FailureWords cause={remove.error} />}
    </li>
  );
}

/** "worked out, 14:05"; of another day with the day. */
function stateWords(scenario: Scenario, text: Text, format: Format): string {
  const { whatIf } = text;
  const { adopted, outcome } = scenario;
  const timeOf = (iso: string): string => {
    const at = secondsOf(iso);
    return format.day(at) === format.day(nowSeconds()) ? format.clock(at) : format.instant(at);
  };
  if (adopted !== null) return whatIf.adoptedBy(timeOf(adopted.at), personName(adopted.by, text));
  const state = whatIf.states[stateOf(scenario)];
  return outcome === null ? state : whatIf.stateAt(state, timeOf(outcome.at));
}
