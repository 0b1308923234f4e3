import type { PlanDocument, SolveRunResponse } from "@formweek/contracts";
import { useEffect, type JSX } from "react";
import { Icon } from "../../components/icon.tsx";
import { useKeptFocus } from "../../components/use-kept-focus.ts";
import { useFormat } from "../../format/use-format.ts";
import { CallError } from "../../sync/client.ts";
import { isRunning, useSolveRun } from "../../sync/queries.ts";
import { followSolve, useFollowedSolve, useStopSolve } from "../../sync/solves.ts";
import { useText, type Text } from "../../text/text.ts";
import { FoundPlans } from "./found-plans.tsx";
import { SolveCurve } from "./solve-curve.tsx";
import { StartSolve } from "./start-solve.tsx";
import { useOutcome } from "./use-outcome.ts";

interface SolveBarProps {
  readonly plantId: string;
  readonly document: PlanDocument | null;
  readonly hasOrders: boolean;
}

/** Starts a solve, shows how it goes, stops it, and says what came of it. */
export function SolveBar({ plantId, document, hasOrders }: SolveBarProps): JSX.Element {
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
        <RunningSolve plantId={plantId} run={run.data} />
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

function RunningSolve({
  plantId,
  run,
}: {
  readonly plantId: string;
  readonly run: SolveRunResponse;
}): JSX.Element {
  const { solve: text, compare } = useText();
  const format = useFormat();
  const doing = doingWords(run, text.running, compare);
  const isPlanning = run.task.kind === "plan";
  const stop = useStopSolve(plantId);
  const { progress } = run;
  const isStopping = stop.isPending || stop.isSuccess;
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
      <button
        type="button"
        className="button"
        aria-label={isStopping ? text.stopping : text.stopHint}
        title={text.stopHint}
        disabled={isStopping}
        onClick={() => stop.mutate(run.runId)}
      >
        <Icon name="stop" /> {isStopping ? text.stopping : text.stop}
      </button>
    </section>
  );
}

/** What a run is at. */
function doingWords({ task }: SolveRunResponse, planning: string, text: Text["compare"]): string {
  switch (task.kind) {
    case "plan":
      return planning;
    case "remedies":
      return text.remedies(task.orderId);
    case "trade-off":
      return text.comparing;
  }
}

/** A run that the server no longer knows is not followed any longer. */
function useForgetUnknown(plantId: string, followed: string | null, error: Error | null): void {
  useEffect(() => {
    if (followed !== null && error instanceof CallError && error.problem.status === 404)
      followSolve(plantId, null);
  }, [error, followed, plantId]);
}
