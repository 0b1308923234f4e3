import type { Scenario } from "@formweek/contracts";
import { useRef, type JSX } from "react";
import { useText } from "../../text/text.ts";
import { ScenarioItem } from "./scenario-item.tsx";
import type { ScenarioGround } from "./use-scenario-ground.ts";
import { MOST_COMPARED } from "./use-what-if-address.ts";

interface ScenarioListProps {
  readonly ground: ScenarioGround;
  readonly scenarios: readonly Scenario[];
  /** Ids of those that are ticked. */
  readonly compared: readonly string[];
  /** What came of what was done last, in words. */
  readonly told: string;
  readonly onCompare: (ids: readonly string[]) => void;
  readonly onNew: () => void;
  readonly onEdit: (scenario: Scenario) => void;
  readonly onWritten: (scenario: Scenario, words: string) => void;
  readonly onTold: (words: string) => void;
}

/** Every scenario, to be ticked, changed, copied and deleted. */
export function ScenarioList(props: ScenarioListProps): JSX.Element {
  const { ground, scenarios, compared, told, onCompare, onNew, onEdit, onWritten, onTold } = props;
  const { whatIf: text } = useText();
  const title = useRef<HTMLHeadingElement>(null);
  const isFull = compared.length >= MOST_COMPARED;
  return (
    <section className="load-card scenarios" aria-labelledby="scenarios-title">
      <div className="scenarios-head">
        <h2 id="scenarios-title" ref={title} tabIndex={-1}>
          {text.list}
        </h2>
        <button type="button" className="button button-main" onClick={onNew}>
          {text.add}
        </button>
      </div>
      <p role="status" className="hold-told">
        {told}
      </p>
      <ul className="scenario-items" aria-labelledby="scenarios-title">
        {scenarios.map((scenario) => (
          <ScenarioItem
            key={scenario.id}
            ground={ground}
            scenario={scenario}
            isCompared={compared.includes(scenario.id)}
            isFull={isFull}
            onCompare={(isWanted) =>
              onCompare(
                isWanted ? [...compared, scenario.id] : compared.filter((each) => each !== scenario.id),
              )
            }
            onEdit={() => onEdit(scenario)}
            onWritten={onWritten}
            onDeleted={() => {
              onTold(text.removed(scenario.name));
              // the button that was pressed goes with its scenario
              title.current?.focus();
            }}
          />
        ))}
      </ul>
      {isFull && scenarios.length > MOST_COMPARED && <p className="hint">{text.tickMost}</p>}
    </section>
  );
}
