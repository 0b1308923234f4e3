import type { ScenarioChange } from "@formweek/contracts";
import { useMemo, type JSX } from "react";
import { EmptyNotice } from "../../components/notice.tsx";
import { useFormat } from "../../format/use-format.ts";
import { useNaming } from "../../format/use-naming.ts";
import { secondsOf } from "../../kernels/board-plan.ts";
import { nameOfWords } from "../../kernels/scenario-draft.ts";
import { scenarioExamples } from "../../kernels/scenario-examples.ts";
import { useText } from "../../text/text.ts";
import type { ScenarioGround } from "./use-scenario-ground.ts";

interface FirstScenarioProps {
  readonly ground: ScenarioGround;
  /** What came of what was done last, in words. */
  readonly told: string;
  /** Opens the form, filled with that. */
  readonly onBegin: (changes: readonly ScenarioChange[], name: string) => void;
}

/** What a scenario is, with examples made of the plant. */
export function FirstScenario({ ground, told, onBegin }: FirstScenarioProps): JSX.Element {
  const { whatIf: text } = useText();
  const format = useFormat();
  const naming = useNaming();
  const { shift, copy } = useMemo(() => scenarioExamples(ground), [ground]);
  const begin = (change: ScenarioChange): void => onBegin([change], nameOfWords(ground.say(change)));
  return (
    <div>
      <p role="status" className="hold-told">
        {told}
      </p>
      <EmptyNotice isInner title={text.emptyTitle}>
        <p>{text.emptyHint}</p>
        <div className="what-if-buttons">
          {shift !== null && (
            <button type="button" className="button" onClick={() => begin(shift)}>
              {text.exampleShift(
                naming.line(shift.shift.lineIds[0] ?? ""),
                // noon: the day is its own in every zone that plants lie in
                format.day(secondsOf(`${shift.shift.date}T12:00:00Z`)),
              )}
            </button>
          )}
          {copy !== null && (
            <button type="button" className="button" onClick={() => begin(copy)}>
              {text.exampleCopy(naming.mould(copy.mouldId))}
            </button>
          )}
          <button type="button" className="button button-main" onClick={() => onBegin([], "")}>
            {text.add}
          </button>
        </div>
      </EmptyNotice>
    </div>
  );
}
