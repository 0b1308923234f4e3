import type { JSX } from "react";
import { Modal } from "../../components/modal.tsx";
import { problemInWords } from "../../components/notice.tsx";
import { useNaming } from "../../format/use-naming.ts";
import type { WantedStep } from "../../sync/working-plan.ts";
import type { CallError } from "../../sync/client.ts";
import { useText } from "../../text/text.ts";
import { isFrozen } from "./edit-failure.tsx";
import { usePlanEdits } from "./use-plan-edits.ts";
import { useWantedWords } from "./wanted-words.ts";

/** Asks before a change by hand moves what is frozen. */
export function FrozenQuestion(): JSX.Element | null {
  const { failure, refused } = usePlanEdits();
  if (failure === null || refused === null || !isFrozen(failure)) return null;
  return <Question failure={failure} refused={refused} />;
}

interface QuestionProps {
  readonly failure: CallError;
  readonly refused: WantedStep;
}

function Question({ failure, refused }: QuestionProps): JSX.Element {
  const text = useText();
  const naming = useNaming();
  const { dismiss, takeAgain } = usePlanEdits();
  const wanted = useWantedWords(refused.step);
  const { title, cause, faults } = problemInWords(failure, text, naming);
  return (
    <Modal title={text.versions.frozenTitle} onClose={dismiss}>
      <p>{text.versions.frozenWhat(wanted)}</p>
      <p>
        <strong>{title}</strong> {cause}
      </p>
      <ul className="frozen-orders">
        {faults.map(({ problem }) => (
          <li key={problem}>{problem}</li>
        ))}
      </ul>
      <p className="hint">{text.versions.frozenAfter}</p>
      <div className="tool-group">
        <button type="button" className="button button-main" onClick={dismiss}>
          {text.versions.frozenLeave}
        </button>
        <button type="button" className="button" onClick={() => takeAgain({ overFrozen: true })}>
          {text.versions.frozenAnyway}
        </button>
      </div>
    </Modal>
  );
}
