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
  const { compare: text } = useText();
  if (run.task.kind === "remedies")
    return (
      <span>
        {text.lookedFor(run.task.orderId)}{" "}
        <Link href={`/?order=${encodeURIComponent(run.task.orderId)}`} className="text-button">
          {text.showOrder}
        </Link>
      </span>
    );
  if (run.findings?.kind !== "trade-off") return <span>{text.nothing}</span>;
  return <ComparedPlans plantId={plantId} runId={run.runId} findings={run.findings} standing={standing} />;
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
