import type { JSX } from "react";
import { Icon } from "../../components/icon.tsx";
import { problemInWords } from "../../components/notice.tsx";
import { useNaming } from "../../format/use-naming.ts";
import type { CallError } from "../../sync/client.ts";
import { useText } from "../../text/text.ts";
import { EditConflict } from "./edit-conflict.tsx";
import { usePlanEdits } from "./use-plan-edits.ts";

/** The step was decided on a plan that somebody else has changed since. */
export function isConflict(failure: CallError | null): boolean {
  return failure?.problem.code === "working-plan-changed";
}

/** The step would move what is frozen, and nobody has said that it may. */
export function isFrozen(failure: CallError | null): boolean {
  return failure?.problem.code === "frozen-runs";
}

/** Why the last step was refused and what to do; the board below shows the plan that stands. */
export function EditFailure(): JSX.Element | null {
  const text = useText();
  const naming = useNaming();
  const { failure, refused, dismiss } = usePlanEdits();
  if (failure === null || isFrozen(failure)) return null;
  if (isConflict(failure) && refused !== null) return <EditConflict refused={refused} />;
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
