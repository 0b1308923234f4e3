import type { HelpFindings, Scenario, SolveRunResponse } from "@formweek/contracts";
import { useState, type JSX } from "react";
import { FailureWords } from "../../components/failure-words.tsx";
import { useKeptFocus } from "../../components/use-kept-focus.ts";
import { useFormat } from "../../format/use-format.ts";
import { nameOfWords } from "../../kernels/scenario-draft.ts";
import {
  helpSeconds,
  rankedChanges,
  type RankedChange,
  type Thoroughness,
} from "../../kernels/scenario-rows.ts";
import { useSolveRun } from "../../sync/queries.ts";
import { useWriteScenario } from "../../sync/scenarios.ts";
import { useStartRun } from "../../sync/solves.ts";
import { useText } from "../../text/text.ts";
import { RunFailure } from "./run-failure.tsx";
import { RunProgress } from "./run-progress.tsx";
import type { ScenarioGround } from "./use-scenario-ground.ts";
import { usePlantRun } from "./use-plant-run.ts";

interface HelpDeskProps {
  readonly ground: ScenarioGround;
  readonly thoroughness: Thoroughness;
  /** Search that is shown; null: the one that is followed, if it is one. */
  readonly runId: string | null;
  readonly onRun: (runId: string) => void;
  /** A change has become a scenario; in words. */
  readonly onMade: (scenario: Scenario, words: string) => void;
}

/** What would help most: asked for, watched, stopped, and each change one click from a scenario. */
export function HelpDesk({ ground, thoroughness, runId, onRun, onMade }: HelpDeskProps): JSX.Element {
  const {
    whatIf: { help: text, solve },
  } = useText();
  const { run: followed, isGoing } = usePlantRun(ground.plantId);
  const kept = useSolveRun(ground.plantId, runId);
  const start = useStartRun(ground.plantId);
  const shown = followed?.task.kind === "help" && runId === null ? followed : kept.data;
  const isLooking = isGoing && followed?.task.kind === "help";
  const focus = useKeptFocus(isLooking ? "run" : "start");
  return (
    <section className="load-card" aria-labelledby="what-if-help" {...focus}>
      <h2 id="what-if-help">{text.title}</h2>
      <p className="hint">{text.lead}</p>
      {isLooking && followed !== undefined ? (
        <RunProgress plantId={ground.plantId} run={followed} doing={solve.helping} />
      ) : (
        <>
          {shown !== undefined && <Found ground={ground} run={shown} onMade={onMade} />}
          <button
            type="button"
            className="button"
            disabled={isGoing || start.isPending}
            onClick={() =>
              start.mutate(
                { kind: "help", seconds: helpSeconds(thoroughness) },
                { onSuccess: (accepted) => onRun(accepted.runId) },
              )
            }
          >
            {shown === undefined ? text.start : text.again}
          </button>
          {isGoing && <p className="hint">{solve.busy}</p>}
        </>
      )}
      {start.error !== null && <FailureWords cause={start.error} />}
    </section>
  );
}

interface FoundProps {
  readonly ground: ScenarioGround;
  readonly run: SolveRunResponse;
  readonly onMade: (scenario: Scenario, words: string) => void;
}

function Found({ ground, run, onMade }: FoundProps): JSX.Element | null {
  const {
    whatIf: { help: text, compare },
  } = useText();
  if (run.state === "failed") return <RunFailure run={run} />;
  const { findings } = run;
  if (findings?.kind !== "help") return run.state === "stopped" ? <p>{text.stopped}</p> : null;
  const { changes, tried } = findings;
  return (
    <>
      <p role="status">
        {changes.length === 0 ? text.nothing(tried) : text.tried(tried)}{" "}
        {run.state === "stopped" && text.stopped}
      </p>
      {changes.length > 0 && (
        <>
          <HelpList ground={ground} findings={findings} onMade={onMade} />
          <p className="hint">{compare.priceNote}</p>
        </>
      )}
    </>
  );
}

interface HelpListProps extends Omit<FoundProps, "run"> {
  readonly findings: HelpFindings;
}

function HelpList({ ground, findings, onMade }: HelpListProps): JSX.Element {
  const { whatIf } = useText();
  const { help: text } = whatIf;
  const write = useWriteScenario(ground.plantId);
  const [wanted, setWanted] = useState<string | null>(null);
  return (
    <ol className="help-list" aria-label={text.list}>
      {rankedChanges(findings).map((ranked) => {
        const { change } = ranked.tried;
        const words = ground.say(change);
        const make = (): void => {
          setWanted(words);
          const draft = { name: nameOfWords(words), changes: [change] };
          write.mutate(
            { over: null, draft },
            { onSuccess: (scenario) => onMade(scenario, text.made(scenario.name)) },
          );
        };
        return (
          <li key={words} className="help-change">
            <p>
              <strong>{words}</strong>
            </p>
            <Saved ranked={ranked} />
            <button
              type="button"
              className="button"
              aria-label={text.makeOf(words)}
              disabled={write.isPending}
              onClick={make}
            >
              {text.make}
            </button>
            {write.error !== null && wanted === words && <FailureWords cause={write.error} />}
          </li>
        );
      })}
    </ol>
  );
}

function Saved({ ranked }: { readonly ranked: RankedChange }): JSX.Element {
  const {
    whatIf: { help: text },
  } = useText();
  const format = useFormat();
  const { ordersSaved, costSaved, ordersShare, costShare } = ranked;
  const orders =
    ordersSaved === 0
      ? text.ordersSame
      : ordersSaved > 0
        ? text.orders(ordersSaved)
        : text.ordersMore(-ordersSaved);
  const cost = costSaved < 0 ? text.costMore(format.money(-costSaved)) : text.cost(format.money(costSaved));
  return (
    <dl className="help-bars">
      <Bar words={orders} share={ordersShare} kind="orders" />
      <Bar words={cost} share={costShare} kind="cost" />
    </dl>
  );
}

interface BarProps {
  readonly words: string;
  readonly share: number;
  readonly kind: "orders" | "cost";
}

function Bar({ words, share, kind }: BarProps): JSX.Element {
  const {
    whatIf: { compare: text },
  } = useText();
  return (
    <div className="help-bar">
      <dt className="unseen">{kind === "orders" ? text.rows.lateOrders : text.rows.cost}</dt>
      <dd>
        <span className="figure-bar" aria-hidden="true">
          <span
            className={`figure-fill fill-${kind}`}
            style={{ width: `${Math.round(share * 1000) / 10}%` }}
          />
        </span>
        {words}
      </dd>
    </div>
  );
}
