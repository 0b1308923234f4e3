import { useId, useState, type JSX } from "react";
import { Link } from "wouter";
import type { PlanResponse, Publication } from "@formweek/contracts";
import { ComparisonWords } from "../../components/comparison-words.tsx";
import { FailureWords } from "../../components/failure-words.tsx";
import { Modal } from "../../components/modal.tsx";
import { LoadingNotice } from "../../components/notice.tsx";
import { PlanFigures } from "../../components/plan-figures.tsx";
import { useFormat } from "../../format/use-format.ts";
import { freezeDays, frozenUntil, runsBefore, type FreezeChoice } from "../../kernels/frozen-runs.ts";
import { nowSeconds } from "../../sync/now.ts";
import { useComparison, usePublish } from "../../sync/versions.ts";
import { useText } from "../../text/text.ts";
import { compareAddress } from "../../format/compare-address.ts";

interface PublishDialogProps {
  readonly plan: PlanResponse;
  /** Revision of the working plan at which `plan` is worked on; null: the plan of the newest one is on its way. */
  readonly revision: number | null;
  /** What was published last; null: nothing was. */
  readonly published: Publication | null;
  readonly onClose: () => void;
}

/** What the plant gets and what changes for it, a note, and what is to stay in place. Shows the plan as it was when it opened. */
export function PublishDialog(props: PublishDialogProps): JSX.Element {
  const { versions: text } = useText();
  const [seen, setSeen] = useState({ plan: props.plan, revision: props.revision ?? 0 });
  const { published, onClose } = props;
  const plantId = seen.plan.document.plant.id;
  const publish = usePublish(plantId);
  const [note, setNote] = useState("");
  const [choice, setChoice] = useState<FreezeChoice>("twoDays");
  const until = frozenUntil(seen.plan.document, choice, nowSeconds());
  const isStale = seen.revision !== props.revision && !publish.isPending && !publish.isSuccess;
  const give = (): void =>
    publish.mutate(
      {
        revision: seen.revision,
        planId: seen.plan.planId,
        note,
        frozenUntil: until === null ? null : new Date(until * 1000).toISOString().replace(".000Z", "Z"),
      },
      { onSuccess: onClose },
    );
  const lookAgain = (): void => {
    if (props.revision === null) return;
    publish.reset();
    setSeen({ plan: props.plan, revision: props.revision });
  };
  return (
    <Modal title={text.dialogTitle} onClose={onClose}>
      {publish.error !== null && <FailureWords cause={publish.error} />}
      {publish.error === null && isStale && <p role="alert">{text.changedMeanwhile}</p>}
      <Changes plan={seen.plan} published={published} />
      <NoteField note={note} onNote={setNote} />
      <FreezeField plan={seen.plan} choice={choice} until={until} onChoice={setChoice} />
      <div className="tool-group">
        {isStale ? (
          <button
            type="button"
            className="button button-main"
            disabled={props.revision === null}
            onClick={lookAgain}
          >
            {text.lookAgain}
          </button>
        ) : (
          <button type="button" className="button button-main" disabled={publish.isPending} onClick={give}>
            {publish.isPending ? text.publishing : text.publishNow}
          </button>
        )}
        <button type="button" className="button" onClick={onClose}>
          {text.cancel}
        </button>
      </div>
    </Modal>
  );
}

interface ChangesProps {
  readonly plan: PlanResponse;
  readonly published: Publication | null;
}

function Changes({ plan, published }: ChangesProps): JSX.Element {
  const { versions: text } = useText();
  const { planId, document } = plan;
  const isNew = published !== null && published.planId !== planId;
  const pair = { fromId: isNew ? published.planId : null, toId: isNew ? planId : null };
  const comparison = useComparison(document.plant.id, pair);
  if (published === null || !isNew)
    return (
      <>
        <p>{published === null ? text.dialogFirst : text.dialogSame}</p>
        <PlanFigures before={null} after={document} />
      </>
    );
  if (comparison.error !== null) return <FailureWords cause={comparison.error} />;
  if (comparison.data === undefined) return <LoadingNotice />;
  return (
    <>
      <p>{text.dialogHint}</p>
      <ComparisonWords comparison={comparison.data} />
      <PlanFigures before={comparison.data.from} after={comparison.data.to} />
      <p>
        <Link href={compareAddress(published.planId, planId)}>{text.everyDifference}</Link>
      </p>
    </>
  );
}

interface NoteFieldProps {
  readonly note: string;
  readonly onNote: (note: string) => void;
}

function NoteField({ note, onNote }: NoteFieldProps): JSX.Element {
  const { versions: text } = useText();
  const id = useId();
  return (
    <div className="dialog-field">
      <label htmlFor={id}>{text.note}</label>
      <textarea
        id={id}
        rows={2}
        maxLength={500}
        value={note}
        aria-describedby={`${id}-hint`}
        onChange={(event) => onNote(event.target.value)}
      />
      <p id={`${id}-hint`} className="hint">
        {text.noteHint}
      </p>
    </div>
  );
}

interface FreezeFieldProps {
  readonly plan: PlanResponse;
  readonly choice: FreezeChoice;
  /** Instant, seconds; null: nothing is frozen. */
  readonly until: number | null;
  readonly onChoice: (choice: FreezeChoice) => void;
}

const freezeChoices = Object.keys(freezeDays) as FreezeChoice[];

function FreezeField({ plan, choice, until, onChoice }: FreezeFieldProps): JSX.Element {
  const { versions: text } = useText();
  const format = useFormat();
  const id = useId();
  return (
    <div className="dialog-field">
      <label htmlFor={id}>{text.freeze}</label>
      <select
        id={id}
        className="select"
        value={choice}
        aria-describedby={`${id}-hint`}
        onChange={(event) => {
          const chosen = freezeChoices.find((known) => known === event.target.value);
          if (chosen !== undefined) onChoice(chosen);
        }}
      >
        {freezeChoices.map((known) => (
          <option key={known} value={known}>
            {text.freezeChoices[known]}
          </option>
        ))}
      </select>
      <p id={`${id}-hint`} className="hint">
        {until === null
          ? text.freezeNothing
          : text.freezeHint(format.instant(until), runsBefore(plan.document, until))}
      </p>
    </div>
  );
}
