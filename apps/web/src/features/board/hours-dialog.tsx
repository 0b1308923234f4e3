import type { HoursEdit } from "@formweek/contracts";
import { useEffect, useId, useRef, type JSX, type ReactNode, type SubmitEvent } from "react";
import { problemInWords } from "../../components/notice.tsx";
import { useNaming } from "../../format/use-naming.ts";
import { useText } from "../../text/text.ts";
import { usePlanEdits } from "./use-plan-edits.ts";

interface HoursDialogProps {
  readonly title: string;
  readonly action: string;
  /** What is asked for; null while a field says nothing that can be asked. */
  readonly edit: HoursEdit | null;
  readonly onTaken: () => void;
  readonly onClose: () => void;
  readonly children: ReactNode;
}

/** A form of one change of hours: stays open until the plan is timed again, and says why where that is refused. */
export function HoursDialog(props: HoursDialogProps): JSX.Element {
  const { title, action, edit, onTaken, onClose, children } = props;
  const text = useText();
  const naming = useNaming();
  const { take, failure, dismiss, isReady, isBusy } = usePlanEdits();
  const dialog = useRef<HTMLDialogElement>(null);
  const titleId = useId();
  useEffect(() => dialog.current?.showModal(), []);
  const submit = (event: SubmitEvent): void => {
    event.preventDefault();
    if (edit === null) return;
    take(edit, () => {
      // first, since nothing behind an open dialog takes the focus
      dialog.current?.close();
      onTaken();
    });
  };
  const close = (): void => {
    dismiss();
    onClose();
  };
  const problem = failure === null ? null : problemInWords(failure, text, naming);
  return (
    <dialog ref={dialog} className="dialog hours-dialog" aria-labelledby={titleId} onClose={close}>
      <form onSubmit={submit}>
        <h2 id={titleId}>{title}</h2>
        {children}
        {problem !== null && (
          <p role="alert" className="late-words">
            {problem.title} {problem.cause} {problem.remedy}
          </p>
        )}
        <div className="tool-group">
          <button type="submit" className="button button-main" disabled={!isReady || edit === null}>
            {isBusy ? text.edit.working : action}
          </button>
          <button type="button" className="button" onClick={() => dialog.current?.close()}>
            {text.hours.leave}
          </button>
        </div>
      </form>
    </dialog>
  );
}
