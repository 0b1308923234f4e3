import type { Scenario } from "@formweek/contracts";
import { useId, type JSX } from "react";
import { useKeptFocus } from "../../components/use-kept-focus.ts";
import { useFormat } from "../../format/use-format.ts";
import { scenarioSeconds, type Thoroughness } from "../../kernels/scenario-rows.ts";
import { useStartRun } from "../../sync/solves.ts";
import { useText } from "../../text/text.ts";
import { RunFailure } from "./run-failure.tsx";
import { RunProgress } from "./run-progress.tsx";
import { StartFailure } from "./start-failure.tsx";
import { usePlantRun } from "./use-plant-run.ts";

interface SolveDeskProps {
  readonly plantId: string;
  /** Those that are ticked. */
  readonly scenarios: readonly Scenario[];
  readonly thoroughness: Thoroughness;
  readonly onThoroughness: (thoroughness: Thoroughness) => void;
}

/** Works out the scenarios that are ticked: for how long, how far it is, and what came of it. */
export function SolveDesk(props: SolveDeskProps): JSX.Element {
  const { plantId, scenarios, thoroughness, onThoroughness } = props;
  const {
    whatIf: { solve: text },
  } = useText();
  const format = useFormat();
  const id = useId();
  const start = useStartRun(plantId);
  const { run, isGoing } = usePlantRun(plantId);
  const isOurs = run?.task.kind === "scenarios";
  const focus = useKeptFocus(isGoing ? "run" : "start");
  // what was adopted stands in the plant already
  const open = scenarios.filter(({ adopted }) => adopted === null);
  const aboutSeconds = (choice: Thoroughness): string =>
    format.count(scenarioSeconds(Math.max(1, open.length), choice));
  return (
    <div className="what-if-solve" {...focus}>
      {isGoing && run?.task.kind === "scenarios" ? (
        <RunProgress plantId={plantId} run={run} doing={text.running(run.task.scenarioIds.length)} />
      ) : (
        <div className="what-if-buttons">
          <label className="solve-seconds" htmlFor={`${id}-how`}>
            <span>{text.thoroughness}</span>
            <select
              id={`${id}-how`}
              className="select"
              value={thoroughness}
              onChange={({ target }) => onThoroughness(target.value === "thorough" ? "thorough" : "quick")}
            >
              <option value="quick">{text.quick(aboutSeconds("quick"))}</option>
              <option value="thorough">{text.thorough(aboutSeconds("thorough"))}</option>
            </select>
          </label>
          <button
            type="button"
            className="button button-main"
            disabled={open.length === 0 || isGoing || start.isPending}
            onClick={() =>
              start.mutate({
                kind: "scenarios",
                scenarioIds: open.map((scenario) => scenario.id),
                seconds: scenarioSeconds(open.length, thoroughness),
              })
            }
          >
            {open.length === 0 ? text.startNone : text.start(open.length)}
          </button>
        </div>
      )}
      {scenarios.length === 0 && <p className="hint">{text.pick}</p>}
      {isGoing && !isOurs && <p className="hint">{text.busy}</p>}
      <p role="status" className="hint">
        {isOurs && run.state === "done" && text.done}
        {isOurs && run.state === "stopped" && text.stopped}
      </p>
      {isOurs && <RunFailure run={run} />}
      {start.error !== null && <StartFailure cause={start.error} scenarios={open} />}
    </div>
  );
}
