import type { Concern } from "@formweek/contracts";
import { useState, type JSX } from "react";
import { Disclosure } from "../../components/disclosure.tsx";
import { Icon } from "../../components/icon.tsx";
import { problemInWords } from "../../components/notice.tsx";
import { useNaming } from "../../format/use-naming.ts";
import { comparingSeconds, useStartRun, usualSeconds } from "../../sync/solves.ts";
import { useText } from "../../text/text.ts";

const choices = [5, 15, 30, 60, 300] as const;
const concerns = ["lateness", "changes", "overtime", "calm"] as const satisfies readonly Concern[];

interface StartSolveProps {
  readonly plantId: string;
  readonly isFirst: boolean;
  readonly hasOrders: boolean;
}

/** What is started: for how long, and what counts for more. */
export function StartSolve({ plantId, isFirst, hasOrders }: StartSolveProps): JSX.Element {
  const text = useText();
  const naming = useNaming();
  const [seconds, setSeconds] = useState<number>(usualSeconds);
  const [favour, setFavour] = useState<Concern | null>(null);
  const start = useStartRun(plantId);
  const failure = start.error === null ? null : problemInWords(start.error, text, naming);
  return (
    <div className="solve-start">
      <Disclosure
        side="right"
        panelClass="popover settings"
        label={
          <>
            <Icon name="settings" /> <span className="unseen">{text.solve.options}: </span>
            {text.solve.secondsChoice(seconds)}
            {favour !== null && ` · ${text.compare.concerns[favour]}`}
          </>
        }
      >
        <label className="solve-seconds">
          <span>{text.solve.seconds}</span>
          <select
            className="select"
            value={seconds}
            onChange={(event) => setSeconds(Number(event.target.value))}
          >
            {choices.map((choice) => (
              <option key={choice} value={choice}>
                {text.solve.secondsChoice(choice)}
              </option>
            ))}
          </select>
        </label>
        {!isFirst && (
          <label className="solve-seconds">
            <span>{text.compare.matters}</span>
            <select
              className="select"
              value={favour ?? "none"}
              onChange={(event) => setFavour(concerns.find((each) => each === event.target.value) ?? null)}
            >
              {(["none", ...concerns] as const).map((choice) => (
                <option key={choice} value={choice}>
                  {text.compare.concerns[choice]}
                </option>
              ))}
            </select>
          </label>
        )}
      </Disclosure>
      <button
        type="button"
        className="button button-main"
        disabled={!hasOrders || start.isPending}
        onClick={() => start.mutate({ kind: "plan", seconds, favour })}
      >
        {isFirst ? text.solve.planFirst : text.solve.plan}
      </button>
      {!isFirst && (
        <button
          type="button"
          className="button"
          title={text.compare.startHint}
          aria-description={text.compare.startHint}
          disabled={!hasOrders || start.isPending}
          onClick={() => start.mutate({ kind: "trade-off", seconds: Math.max(seconds, comparingSeconds) })}
        >
          {text.compare.start}
        </button>
      )}
      {!hasOrders && <span className="hint">{text.solve.needsOrders}</span>}
      {failure !== null && (
        <p role="alert" className="solve-failure">
          <strong>{failure.title}</strong> {failure.cause} {failure.remedy}
        </p>
      )}
    </div>
  );
}
