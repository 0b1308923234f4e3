import { useQueryClient } from "@tanstack/react-query";
import type { PlanDocument, SolveRunResponse } from "@formweek/contracts";
import { useEffect, useRef, useState, type JSX } from "react";
import { Icon } from "../../components/icon.tsx";
import { problemInWords } from "../../components/notice.tsx";
import { useFormat } from "../../format/use-format.ts";
import { useNaming } from "../../format/use-naming.ts";
import { CallError } from "../../sync/client.ts";
import { isRunning, keys, useSolveRun } from "../../sync/queries.ts";
import {
  followSolve,
  useFollowedSolve,
  useStartSolve,
  useStopSolve,
  usualSeconds,
} from "../../sync/solves.ts";
import { useText } from "../../text/text.ts";
import { SolveCurve } from "./solve-curve.tsx";

const choices = [5, 15, 30, 60, 300] as const;

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
  return (
    <div className="solve">
      {isGoing ? (
        <RunningSolve plantId={plantId} run={run.data} />
      ) : (
        <StartSolve plantId={plantId} isFirst={document === null} hasOrders={hasOrders} />
      )}
      <div role="status" className={outcome.isFailure ? "solve-outcome late-words" : "solve-outcome"}>
        {outcome.words.map((sentence) => (
          <span key={sentence}>{sentence} </span>
        ))}
        {outcome.words.length > 0 && (
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

interface StartSolveProps {
  readonly plantId: string;
  readonly isFirst: boolean;
  readonly hasOrders: boolean;
}

function StartSolve({ plantId, isFirst, hasOrders }: StartSolveProps): JSX.Element {
  const text = useText();
  const naming = useNaming();
  const [seconds, setSeconds] = useState<number>(usualSeconds);
  const start = useStartSolve(plantId);
  const failure = start.error === null ? null : problemInWords(start.error, text, naming);
  return (
    <div className="solve-start">
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
      <button
        type="button"
        className="button button-main"
        disabled={!hasOrders || start.isPending}
        onClick={() => start.mutate(seconds)}
      >
        {isFirst ? text.solve.planFirst : text.solve.plan}
      </button>
      {!hasOrders && <span className="hint">{text.solve.needsOrders}</span>}
      {failure !== null && (
        <p role="alert" className="solve-failure">
          <strong>{failure.title}</strong> {failure.cause} {failure.remedy}
        </p>
      )}
    </div>
  );
}

function RunningSolve({
  plantId,
  run,
}: {
  readonly plantId: string;
  readonly run: SolveRunResponse;
}): JSX.Element {
  const { solve: text } = useText();
  const format = useFormat();
  const stop = useStopSolve(plantId);
  const { progress } = run;
  const isStopping = stop.isPending || stop.isSuccess;
  const share = Math.min(1, Math.max(0, progress?.share ?? 0));
  return (
    <section className="solve-run" aria-label={text.running}>
      <SolveCurve run={run} />
      <div className="solve-progress">
        <span className="solve-line">
          {progress === null
            ? run.state === "queued"
              ? text.queued
              : text.running
            : `${text.best} ${format.money(progress.bestTotal)} · ${text.lateNow(progress.lateOrders)} · ${text.elapsed(format.decimal(progress.elapsedMs / 1000, 0))}`}
        </span>
        <progress value={share} max={1} aria-label={text.running} />
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

interface Outcome {
  readonly isFailure: boolean;
  readonly words: readonly string[];
  readonly dismiss: () => void;
}

interface Before {
  readonly runId: string;
  /** Plan that was shown when the run was first seen; null when there was none. */
  readonly document: PlanDocument | null;
}

/**
 * What came of the run that was watched: remembers the plan from before it, and compares once the run has ended and its
 * plan has arrived. A run that had ended before the page was opened is not announced again.
 */
function useOutcome(
  plantId: string,
  run: SolveRunResponse | undefined,
  document: PlanDocument | null,
): Outcome {
  const text = useText();
  const naming = useNaming();
  const format = useFormat();
  const client = useQueryClient();
  const before = useRef<Before | null>(null);
  const [ended, setEnded] = useState<SolveRunResponse | null>(null);

  useEffect(() => {
    if (run === undefined) return;
    if (isRunning(run.state)) {
      if (before.current?.runId === run.runId) return;
      before.current = {
        runId: run.runId,
        document,
      };
      setEnded(null);
      return;
    }
    if (before.current?.runId !== run.runId) return;
    void client.invalidateQueries({ queryKey: keys.latestPlan(plantId) });
    void client.invalidateQueries({ queryKey: keys.orders(plantId) });
    setEnded(run);
  }, [client, document, plantId, run]);

  const dismiss = (): void => {
    before.current = null;
    setEnded(null);
    followSolve(plantId, null);
  };
  if (ended === null) return { isFailure: false, words: [], dismiss };
  if (ended.state === "failed") {
    const problem = ended.problem === null ? null : text.refusals.problem(ended.problem, naming);
    return {
      isFailure: true,
      words: [text.solve.failed + ".", problem?.cause ?? "", problem?.remedy ?? ""].filter(
        (words) => words !== "",
      ),
      dismiss,
    };
  }
  const words = [ended.state === "stopped" ? text.solve.stopped : text.solve.done];
  const was = before.current?.document ?? null;
  // a first plan has nothing to be compared with, least of all with itself
  if (was !== null && document !== null && was !== document) {
    const [from, to] = [format.money(was.objective.total), format.money(document.objective.total)];
    words.push(from === to ? text.solve.sameCost(to) : text.solve.lessCost(from, to));
    words.push(text.solve.lateChange(was.summary.late, document.summary.late));
  }
  return { isFailure: false, words, dismiss };
}

/** A run that the server no longer knows is not followed any longer. */
function useForgetUnknown(plantId: string, followed: string | null, error: Error | null): void {
  useEffect(() => {
    if (followed !== null && error instanceof CallError && error.problem.status === 404)
      followSolve(plantId, null);
  }, [error, followed, plantId]);
}
