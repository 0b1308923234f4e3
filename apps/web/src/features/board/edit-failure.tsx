import type { JSX } from "react";
import { Icon } from "../../components/icon.tsx";
import { problemInWords } from "../../components/notice.tsx";
import { useNaming } from "../../format/use-naming.ts";
import { silentServer, type CallError } from "../../sync/client.ts";
import type { WantedStep } from "../../sync/working-plan.ts";
import { useText } from "../../text/text.ts";
import { EditConflict } from "./edit-conflict.tsx";
import { usePlanEdits } from "./use-plan-edits.ts";
import { useWantedWords } from "./wanted-words.ts";

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
  if (failure.problem.code === silentServer && refused !== null) return <Unanswered refused={refused} />;
  const { title, cause, remedy } = problemInWords(failure, text, naming);
  return (
    <div className="edit-failure" role="alert">
      <Icon name="warn" />
      <p>
        <strong>{title}</strong> {cause} {remedy}
      </p>
      <DismissButton onPress={dismiss} />
    </div>
  );
}

/** The server did not say whether it took the step: it stays here to be sent again. */
function Unanswered({ refused }: { readonly refused: WantedStep }): JSX.Element {
  const { edit: text } = useText();
  const { isReady, sendAgain, dismiss } = usePlanEdits();
  const wanted = useWantedWords(refused.step);
  return (
    <div className="edit-failure" role="alert">
      <Icon name="warn" />
      <p>
        <strong>{text.unanswered(wanted)}</strong> {text.unansweredHint}
      </p>
      <button type="button" className="button" disabled={!isReady} onClick={sendAgain}>
        {text.sendAgain}
      </button>
      <DismissButton onPress={dismiss} />
    </div>
  );
}

function DismissButton({ onPress }: { readonly onPress: () => void }): JSX.Element {
  const { edit: text } = useText();
  return (
    <button
      type="button"
      className="button button-icon"
      aria-label={text.dismiss}
      title={text.dismiss}
      onClick={onPress}
    >
      <Icon name="close" />
    </button>
  );
}
