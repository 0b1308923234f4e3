import type { PlanDocument, SolveRunResponse } from "@formweek/contracts";
import { useEffect, type JSX } from "react";
import { Icon } from "../../components/icon.tsx";
import { problemInWords } from "../../components/notice.tsx";
import { useKeptFocus } from "../../components/use-kept-focus.ts";
import { useFormat } from "../../format/use-format.ts";
import { useNaming } from "../../format/use-naming.ts";
import { CallError } from "../../sync/client.ts";
import { isRunning, useSolveRun } from "../../sync/queries.ts";
import { followSolve, useFollowedSolve, useStopSolve } from "../../sync/solves.ts";
import { useText, type Text } from "../../text/text.ts";
import { FoundPlans } from "./found-plans.tsx";
import { SolveCurve } from "./solve-curve.tsx";
import { StartSolve } from "./start-solve.tsx";
import type { Look } from "./use-look.ts";
import { useOutcome } from "./use-outcome.ts";

interface SolveBarProps {
  readonly plantId: string;
  readonly document: PlanDocument | null;
  readonly hasOrders: boolean;
  readonly look: Look;
}

/** Starts a solve, shows how it goes, stops it, and says what came of it. */
export function SolveBar({ plantId, document, hasOrders, look }: SolveBarProps): JSX.Element {
  const followed = useFollowedSolve(plantId);
  const run = useSolveRun(plantId, followed);
  const outcome = useOutcome(plantId, run.data, document);
  useForgetUnknown(plantId, followed, run.error);
  const isGoing = run.data !== undefined && isRunning(run.data.state);
  const focus = useKeptFocus(`${isGoing ? "run" : "start"} ${outcome.ended?.runId ?? ""}`);
  const found = outcome.ended?.state === "failed" ? null : outcome.ended;
  return (
    <div className="solve" {...focus}>
      {isGoing ? (
        <RunningSolve plantId={plantId} run={run.data} look={look} />
      ) : (
        <StartSolve plantId={plantId} isFirst={document === null} hasOrders={hasOrders} />
      )}
      <div role="status" className={outcome.isFailure ? "solve-outcome late-words" : "solve-outcome"}>
        {outcome.words.map((sentence) => (
          <span key={sentence}>{sentence} </span>
        ))}
        {found !== null && found.task.kind !== "plan" && (
          <>
            <FoundPlans plantId={plantId} run={found} standing={document} />{" "}
          </>
        )}
        {outcome.ended !== null && (
          <button type="button" className="text-button" onClick={outcome.dismiss}>
            <DismissWord />
          </button>
        )}
      </div>
    </div>
  );
}

function DismissWord(): JSX.Element {
  const text = useText();
  return <>{text.solve.dismiss}</>;
}

interface RunningSolveProps {
  readonly plantId: string;
  readonly run: SolveRunResponse;
  readonly look: Look;
}

function RunningSolve({ plantId, run, look }: RunningSolveProps): JSX.Element {
  const words = useText();
  const { solve: text } = words;
  const format = useFormat();
  const naming = useNaming();
  const doing = doingWords(run, words);
  const isPlanning = run.task.kind === "plan";
  const stop = useStopSolve(plantId);
  const { progress } = run;
  const isStopping = stop.isPending || stop.isSuccess;
  const stopRun = (): void => stop.mutate({ runId: run.runId, keep: look.plan?.number ?? null });
  const failure = stop.error === null ? null : problemInWords(stop.error, words, naming);
  const share = Math.min(1, Math.max(0, progress?.share ?? 0));
  return (
    <section className={isPlanning ? "solve-run" : "solve-run solve-run-plain"} aria-label={doing}>
      {isPlanning && <SolveCurve run={run} />}
      <div className="solve-progress">
        <span className="solve-line">
          {progress === null
            ? run.state === "queued"
              ? text.queued
              : doing
            : !isPlanning
              ? doing
              : `${text.best} ${format.money(progress.bestTotal)} · ${text.lateNow(progress.lateOrders)} · ${text.elapsed(format.decimal(progress.elapsedMs / 1000, 0))}`}
        </span>
        <progress value={share} max={1} aria-label={doing} />
      </div>
      <div className="solve-buttons">
        {look.canLook && (
          <button
            type="button"
            className="button"
            title={look.isLooking ? words.look.backHint : words.look.openHint}
            onClick={look.toggle}
          >
            {look.isLooking ? words.look.back : words.look.open}
          </button>
        )}
        <StopButton isStopping={isStopping} isLooking={look.plan !== null} onStop={stopRun} />
      </div>
      {failure !== null && (
        <p role="alert" className="solve-failure">
          <strong>{failure.title}</strong> {failure.cause} {failure.remedy}
        </p>
      )}
    </section>
  );
}

interface StopButtonProps {
  readonly isStopping: boolean;
  /** The run's best plan so far is on the board: just that one is kept. */
  readonly isLooking: boolean;
  readonly onStop: () => void;
}

function StopButton({ isStopping, isLooking, onStop }: StopButtonProps): JSX.Element {
  const { solve: text, look } = useText();
  const hint = isLooking ? look.keepHint : text.stopHint;
  return (
    <button
      type="button"
      className={isLooking ? "button button-main" : "button"}
      aria-label={isStopping ? text.stopping : isLooking ? look.keep : text.stopHint}
      title={hint}
      disabled={isStopping}
      onClick={onStop}
    >
      <Icon name="stop" /> {isStopping ? text.stopping : isLooking ? look.keep : text.stop}
    </button>
  );
}

/** What a run is at. */
function doingWords({ task }: SolveRunResponse, { solve, compare, whatIf }: Text): string {
  switch (task.kind) {
    case "plan":
      return solve.running;
    case "remedies":
      return compare.remedies(task.orderId);
    case "trade-off":
      return compare.comparing;
    case "scenarios":
      return whatIf.solve.running(task.scenarioIds.length);
    case "help":
      return whatIf.solve.helping;
  }
}

/** A run that the server no longer knows is not followed any longer. */
function useForgetUnknown(plantId: string, followed: string | null, error: Error | null): void {
  useEffect(() => {
    if (followed !== null && error instanceof CallError && error.problem.status === 404)
      followSolve(plantId, null);
  }, [error, followed, plantId]);
}
