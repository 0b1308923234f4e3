import { useState, type JSX } from "react";
import { Link } from "wouter";
import type { Publication, WorkingPlanResponse, WorkingPlanStep } from "@formweek/contracts";
import { personName } from "../../format/person.ts";
import { stepWords } from "../../format/step-words.ts";
import { useFormat } from "../../format/use-format.ts";
import { secondsOf, type BoardPlan } from "../../kernels/board-plan.ts";
import { compareAddress } from "../../format/compare-address.ts";
import { useText } from "../../text/text.ts";
import { RestoreDialog } from "./restore-dialog.tsx";

interface HistorySectionProps {
  readonly board: BoardPlan;
  readonly working: WorkingPlanResponse;
  readonly publications: readonly Publication[];
  readonly steps: readonly WorkingPlanStep[];
  /** Loads earlier steps; null: there are none, or they are on their way. */
  readonly onOlder: (() => void) | null;
  readonly isLoadingOlder: boolean;
}

/** Who did what to the plan, newest first, with the way back to each plan. */
export function HistorySection(props: HistorySectionProps): JSX.Element {
  const { versions: text } = useText();
  const { board, working, publications, steps, onOlder, isLoadingOlder } = props;
  const [wantedId, setWanted] = useState<string | null>(null);
  const [isRestored, setRestored] = useState(false);
  return (
    <section className="history-section" aria-labelledby="history-title">
      <h2 id="history-title">{text.history}</h2>
      <p className="hint">{text.historyHint}</p>
      <p role="status" className="restored-words">
        {isRestored && (
          <>
            {text.restored} <Link href="/">{text.toBoard}</Link>
          </>
        )}
      </p>
      <ol className="history">
        {steps.map((step, index) => (
          <Step
            key={step.revision}
            step={step}
            board={board}
            isWorking={index === 0}
            isOtherPlan={step.planId !== working.planId}
            isPublished={publications[0]?.revision === step.revision}
            workingId={working.planId}
            onRestore={() => {
              setRestored(false);
              setWanted(step.planId);
            }}
          />
        ))}
      </ol>
      {(onOlder !== null || isLoadingOlder) && (
        <button type="button" className="button" disabled={onOlder === null} onClick={onOlder ?? undefined}>
          {isLoadingOlder ? text.loadingOlder : text.older}
        </button>
      )}
      {wantedId !== null && (
        <RestoreDialog
          plantId={board.document.plant.id}
          planId={wantedId}
          working={working}
          onClose={() => setWanted(null)}
          onRestored={() => {
            setWanted(null);
            setRestored(true);
          }}
        />
      )}
    </section>
  );
}

interface StepProps {
  readonly step: WorkingPlanStep;
  readonly board: BoardPlan;
  /** It led to where the working plan stands. */
  readonly isWorking: boolean;
  readonly isOtherPlan: boolean;
  /** It gave out what is published now. */
  readonly isPublished: boolean;
  readonly workingId: string | null;
  readonly onRestore: () => void;
}

function Step({
  step,
  board,
  isWorking,
  isOtherPlan,
  isPublished,
  workingId,
  onRestore,
}: StepProps): JSX.Element {
  const text = useText();
  const format = useFormat();
  const { versions } = text;
  const at = format.instant(secondsOf(step.at));
  const words = stepWords(board, step, { text, format });
  const named = versions.stepOf(at, words);
  return (
    <li className={step.kind === "publish" ? "history-step history-publish" : "history-step"}>
      <span className="history-when">
        <time dateTime={step.at}>{at}</time> {personName(step.by, text)}
      </span>
      <span className="history-what">
        {words}
        {isWorking && <span className="tag">{versions.isWorking}</span>}
        {isPublished && <span className="tag tag-published">{versions.isPublished}</span>}
        {step.note !== null && step.note !== "" && <q className="history-note">{step.note}</q>}
      </span>
      {isOtherPlan && workingId !== null && (
        <span className="history-do">
          <Link
            href={compareAddress(step.planId, workingId)}
            className="button"
            aria-label={versions.compareWith(named)}
          >
            {versions.compareShort}
          </Link>
          <button
            type="button"
            className="button"
            aria-label={versions.restoreWhat(named)}
            onClick={onRestore}
          >
            {versions.restore}
          </button>
        </span>
      )}
    </li>
  );
}
