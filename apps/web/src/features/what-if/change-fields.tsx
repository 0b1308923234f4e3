import { useId, type JSX } from "react";
import { FieldFrame } from "../../components/field-frame.tsx";

interface FieldProps {
  readonly label: string;
  readonly name: string;
  /** What to write instead of what stands there; null: it is good. */
  readonly remedy: string | null;
  readonly hint?: string | null;
  readonly value: string;
  readonly onChange: (value: string) => void;
}

interface TextFieldProps extends FieldProps {
  readonly inputMode?: "numeric" | "decimal";
  readonly placeholder?: string;
}

/** A field of text. */
export function TextField({ inputMode, placeholder, ...field }: TextFieldProps): JSX.Element {
  return (
    <FieldFrame label={field.label} name={field.name} remedy={field.remedy} hint={field.hint ?? null}>
      {(control) => (
        <input
          {...control}
          className="field"
          autoComplete="off"
          maxLength={120}
          inputMode={inputMode}
          placeholder={placeholder}
          value={field.value}
          onChange={({ target }) => field.onChange(target.value)}
        />
      )}
    </FieldFrame>
  );
}

interface ChoiceFieldProps extends FieldProps {
  readonly choices: readonly { readonly id: string; readonly name: string }[];
}

/** One of a few records. */
export function ChoiceField({ choices, ...field }: ChoiceFieldProps): JSX.Element {
  const isKnown = choices.some(({ id }) => id === field.value);
  return (
    <FieldFrame label={field.label} name={field.name} remedy={field.remedy}>
      {(control) => (
        <select
          {...control}
          className="select"
          value={field.value}
          onChange={({ target }) => field.onChange(target.value)}
        >
          {!isKnown && <option value={field.value}>{field.value}</option>}
          {choices.map(({ id, name }) => (
            <option key={id} value={id}>
              {name}
            </option>
          ))}
        </select>
      )}
    </FieldFrame>
  );
}

interface FoundFieldProps extends FieldProps {
  /** Id, and what it is. */
  readonly choices: readonly (readonly [id: string, name: string])[];
}

/** One of many records, found as it is typed. */
export function FoundField({ choices, ...field }: FoundFieldProps): JSX.Element {
  const listId = useId();
  return (
    <>
      <FieldFrame label={field.label} name={field.name} remedy={field.remedy} hint={field.hint ?? null}>
        {(control) => (
          <input
            {...control}
            className="field"
            autoComplete="off"
            spellCheck={false}
            list={listId}
            value={field.value}
            onChange={({ target }) => field.onChange(target.value)}
          />
        )}
      </FieldFrame>
      <datalist id={listId}>
        {choices.map(([id, name]) => (
          <option key={id} value={id}>
            {name}
          </option>
        ))}
      </datalist>
    </>
  );
}
