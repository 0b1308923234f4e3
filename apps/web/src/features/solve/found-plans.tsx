import type { PlanDocument, SolveRunResponse } from "@formweek/contracts";
import { useState, type JSX } from "react";
import { createPortal } from "react-dom";
import { Link } from "wouter";
import { problemInWords } from "../../components/notice.tsx";
import { useNaming } from "../../format/use-naming.ts";
import { useTakeStep, useWorkingPlan } from "../../sync/working-plan.ts";
import { useText } from "../../text/text.ts";
import { CompareDialog } from "./compare-dialog.tsx";

interface FoundPlansProps {
  readonly plantId: string;
  readonly run: SolveRunResponse;
  /** The plan on the board. */
  readonly standing: PlanDocument | null;
}

/** What came of a run that was not to make a plan by itself: where to find it. */
export function FoundPlans({ plantId, run, standing }: FoundPlansProps): JSX.Element | null {
  const { compare: text, whatIf } = useText();
  const { task } = run;
  if (task.kind === "scenarios" || task.kind === "help")
    return (
      <span>
        {run.state === "stopped" ? whatIf.solve.stopped : whatIf.solve.done}{" "}
        <Link href={foundAt(task, run.runId)} className="text-button">
          {whatIf.solve.toIt}
        </Link>
      </span>
    );
  if (task.kind === "remedies")
    return (
      <span>
        {text.lookedFor(task.orderId)}{" "}
        <Link href={`/?order=${encodeURIComponent(task.orderId)}`} className="text-button">
          {text.showOrder}
        </Link>
      </span>
    );
  if (run.findings?.kind !== "trade-off") return <span>{text.nothing}</span>;
  return <ComparedPlans plantId={plantId} runId={run.runId} findings={run.findings} standing={standing} />;
}

/** Where scenarios or what would help are shown. */
function foundAt(
  task: Extract<SolveRunResponse["task"], { kind: "scenarios" | "help" }>,
  runId: string,
): string {
  const shown = new URLSearchParams();
  if (task.kind === "help") shown.set("help", runId);
  else shown.set("with", task.scenarioIds.join(","));
  return `/what-if?${shown.toString()}`;
}

interface ComparedPlansProps {
  readonly plantId: string;
  readonly runId: string;
  readonly findings: Extract<SolveRunResponse["findings"], { kind: "trade-off" }>;
  /** The plan on the board. */
  readonly standing: PlanDocument | null;
}

function ComparedPlans({ plantId, runId, findings, standing }: ComparedPlansProps): JSX.Element {
  const text = useText();
  const naming = useNaming();
  const [isOpen, setOpen] = useState(false);
  const working = useWorkingPlan(plantId);
  const step = useTakeStep(plantId);
  const choose = (place: number): void => {
    setOpen(false);
    if (working.data === undefined) return;
    const { revision, planId } = working.data;
    step.mutate({ step: { kind: "found plan", runId, place }, revision, planId, overFrozen: false });
  };
  const failure = step.error === null ? null : problemInWords(step.error, text, naming);
  return (
    <>
      <span>{text.compare.compared(findings.plans.length)} </span>
      <button
        type="button"
        className="button"
        disabled={step.isPending || working.data === undefined}
        onClick={() => setOpen(true)}
      >
        {text.compare.show}
      </button>
      {failure !== null && (
        <span role="alert" className="late-words">
          {failure.title} {failure.cause} {failure.remedy}
        </span>
      )}
      {isOpen &&
        // outside of what is read out when it changes
        createPortal(
          <CompareDialog
            findings={findings}
            standing={standing?.summary ?? null}
            onChoose={choose}
            onClose={() => setOpen(false)}
          />,
          document.body,
        )}
    </>
  );
}
