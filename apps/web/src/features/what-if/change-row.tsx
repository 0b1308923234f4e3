import type { JSX } from "react";
import { readChange, type ChangeDraft } from "../../kernels/scenario-draft.ts";
import { useText } from "../../text/text.ts";
import { ChangeForm } from "./change-form.tsx";
import { fieldsOfChange } from "./change-remedies.ts";
import type { ScenarioGround } from "./use-scenario-ground.ts";

interface ChangeRowProps {
  readonly ground: ScenarioGround;
  readonly draft: ChangeDraft;
  readonly isOpen: boolean;
  /** What is wrong with it, by field; undefined: nothing. */
  readonly remedies: ReadonlyMap<string, string> | undefined;
  /** Opens it, or folds it up. */
  readonly onOpen: () => void;
  readonly onChange: (draft: ChangeDraft) => void;
  readonly onRemove: () => void;
}

const none: ReadonlyMap<string, string> = new Map();

/** One change of a scenario: a sentence, and its fields while it is open. */
export function ChangeRow(props: ChangeRowProps): JSX.Element {
  const { ground, draft, isOpen, remedies = none, onOpen, onChange, onRemove } = props;
  const {
    whatIf: { editor: text, kinds },
  } = useText();
  const reading = readChange(draft, ground);
  const words =
    reading.kind === "read" ? ground.say(reading.change) : `${kinds[draft.kind]}: ${text.unfinished}`;
  const atFields: readonly string[] = isOpen ? fieldsOfChange[draft.kind] : [];
  const ofWhole = [...remedies].filter(([field]) => !atFields.includes(field));
  return (
    <li className="change-row">
      <p className="change-words">
        <strong>{words}</strong>
      </p>
      {ofWhole.map(([field, remedy]) => (
        <p key={field} role="alert" className="late-words">
          {remedy}
        </p>
      ))}
      {isOpen && <ChangeForm ground={ground} draft={draft} remedies={remedies} onChange={onChange} />}
      <div className="what-if-buttons">
        <button
          type="button"
          className="button"
          aria-expanded={isOpen}
          aria-label={isOpen ? undefined : text.openOf(words)}
          onClick={onOpen}
        >
          {isOpen ? text.fold : text.open}
        </button>
        <button type="button" className="button" aria-label={text.takeOf(words)} onClick={onRemove}>
          {text.take}
        </button>
      </div>
    </li>
  );
}
