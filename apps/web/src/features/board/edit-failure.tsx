import type { JSX } from "react";
import { Icon } from "../../components/icon.tsx";
import { problemInWords } from "../../components/notice.tsx";
import { useNaming } from "../../format/use-naming.ts";
import { useText } from "../../text/text.ts";
import { usePlanEdits } from "./use-plan-edits.ts";

/** Why the last step was refused and what to do; the board below shows the plan that stands. */
export function EditFailure(): JSX.Element | null {
  const text = useText();
  const naming = useNaming();
  const { failure, dismiss } = usePlanEdits();
  if (failure === null) return null;
  const { title, cause, remedy } = problemInWords(failure, text, naming);
  return (
    <div className="edit-failure" role="alert">
      <Icon name="warn" />
      <p>
        <strong>{title}</strong> {cause} {remedy}
      </p>
      <button
        type="button"
        className="button button-icon"
        aria-label={text.edit.dismiss}
        title={text.edit.dismiss}
        onClick={dismiss}
      >
        <Icon name="close" />
      </button>
    </div>
  );
}
