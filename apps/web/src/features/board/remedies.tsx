import type { RemedyFindings, SolveRunResponse } from "@formweek/contracts";
import type { JSX } from "react";
import { Icon } from "../../components/icon.tsx";
import { problemInWords } from "../../components/notice.tsx";
import type { PlanNames } from "../../format/plan-names.ts";
import { useFormat } from "../../format/use-format.ts";
import { useNaming } from "../../format/use-naming.ts";
import type { BoardPlan } from "../../kernels/board-plan.ts";
import { isRunning, useSolveRun } from "../../sync/queries.ts";
import { useFollowedSolve, useStartRun, useStopSolve } from "../../sync/solves.ts";
import { useWorkingPlan } from "../../sync/working-plan.ts";
import { useText } from "../../text/text.ts";
import { RemedyList } from "./remedy-list.tsx";

interface RemediesProps {
  readonly plan: BoardPlan;
  readonly orderId: string;
  readonly names: PlanNames;
}

/** What would help a late order: asked for, watched, stopped, and then one click away. */
export function Remedies({ plan, orderId, names }: RemediesProps): JSX.Element {
  const { remedies: text } = useText();
  const plantId = plan.document.plant.id;
  const { data: run } = useSolveRun(plantId, useFollowedSolve(plantId));
  const isOurs = run?.task.kind === "remedies" && run.task.orderId === orderId;
  const isGoing = run !== undefined && isRunning(run.state);
  return (
    <section className="remedies" aria-label={text.title}>
      <h3>{text.title}</h3>
      {isOurs && isGoing && <Looking plantId={plantId} run={run} />}
      {isOurs && !isGoing && <Found run={run} plan={plan} names={names} />}
      {!(isOurs && isGoing) && <Find plantId={plantId} orderId={orderId} isBusy={isGoing} isAgain={isOurs} />}
    </section>
  );
}

interface FindProps {
  readonly plantId: string;
  readonly orderId: string;
  /** Another run works on the plant. */
  readonly isBusy: boolean;
  /** It was looked for already. */
  readonly isAgain: boolean;
}

function Find({ plantId, orderId, isBusy, isAgain }: FindProps): JSX.Element {
  const text = useText();
  const naming = useNaming();
  const working = useWorkingPlan(plantId);
  const start = useStartRun(plantId);
  const revision = working.data?.revision;
  const failure = start.error === null ? null : problemInWords(start.error, text, naming);
  return (
    <>
      <button
        type="button"
        className={isAgain ? "text-button" : "button"}
        disabled={isBusy || revision === undefined || start.isPending}
        onClick={() => {
          if (revision !== undefined) start.mutate({ kind: "remedies", orderId, revision });
        }}
      >
        {isAgain ? text.remedies.again : text.remedies.find}
      </button>
      {isBusy && <p className="hint">{text.remedies.busy}</p>}
      {!isBusy && !isAgain && <p className="hint">{text.remedies.findHint}</p>}
      {failure !== null && (
        <p role="alert" className="late-words">
          {failure.title} {failure.cause} {failure.remedy}
        </p>
      )}
    </>
  );
}

interface RunProps {
  readonly plantId: string;
  readonly run: SolveRunResponse;
}

function Looking({ plantId, run: { runId, progress } }: RunProps): JSX.Element {
  const { remedies: text } = useText();
  const format = useFormat();
  const stop = useStopSolve(plantId);
  const isStopping = stop.isPending || stop.isSuccess;
  return (
    <div className="remedies-progress">
      <span role="status">
        {progress === null ? text.starting : text.looking(format.count(progress.steps))}
      </span>
      <progress value={progress?.share ?? 0} max={1} aria-label={text.progress} />
      <button
        type="button"
        className="button"
        disabled={isStopping}
        onClick={() => stop.mutate({ runId, keep: null })}
      >
        <Icon name="stop" /> {isStopping ? text.stopping : text.stop}
      </button>
    </div>
  );
}

interface FoundProps {
  readonly run: SolveRunResponse;
  readonly plan: BoardPlan;
  readonly names: PlanNames;
}

function Found({ run, plan, names }: FoundProps): JSX.Element {
  const { remedies: text } = useText();
  if (run.state === "failed" || run.findings?.kind !== "remedies")
    return (
      <p role="alert" className="late-words">
        {run.problem === null ? text.stopped : `${text.failed} ${run.problem.cause} ${run.problem.remedy}`}
      </p>
    );
  const { findings } = run;
  if (findings.planId !== plan.planId) return <p className="hint">{text.outdated}</p>;
  return (
    <>
      <p className="hint" role="status">
        {leadOf(findings, text)} {run.state === "stopped" && text.stopped}
      </p>
      <RemedyList runId={run.runId} findings={findings} plan={plan} names={names} />
    </>
  );
}

function leadOf({ tried, remedies }: RemedyFindings, text: ReturnType<typeof useText>["remedies"]): string {
  return remedies.length === 0 ? text.nothing(tried) : text.tried(tried);
}
