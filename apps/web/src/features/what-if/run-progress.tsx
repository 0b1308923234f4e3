import type { SolveRunResponse } from "@formweek/contracts";
import type { JSX } from "react";
import { FailureWords } from "../../components/failure-words.tsx";
import { Icon } from "../../components/icon.tsx";
import { useStopSolve } from "../../sync/solves.ts";
import { useText } from "../../text/text.ts";

interface RunProgressProps {
  readonly plantId: string;
  readonly run: SolveRunResponse;
  /** What it is at. */
  readonly doing: string;
}

/** How far a run is, with the way to stop it. */
export function RunProgress({ plantId, run, doing }: RunProgressProps): JSX.Element {
  const {
    whatIf: { solve: text },
  } = useText();
  const stop = useStopSolve(plantId);
  const isStopping = stop.isPending || stop.isSuccess;
  const share = Math.min(1, Math.max(0, run.progress?.share ?? 0));
  return (
    <div className="what-if-run remedies-progress">
      <span role="status">{run.state === "queued" ? text.queued : doing}</span>
      <progress value={share} max={1} aria-label={doing} />
      <button
        type="button"
        className="button"
        aria-label={isStopping ? undefined : text.stopHint}
        title={text.stopHint}
        disabled={isStopping}
        onClick={() => stop.mutate({ runId: run.runId, keep: null })}
      >
        <Icon name="stop" /> {isStopping ? text.stopping : text.stop}
      </button>
      {stop.error !== null && <FailureWords cause={stop.error} />}
    </div>
  );
}
