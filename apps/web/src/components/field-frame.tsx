import { useId, type JSX } from "react";

interface FieldFrameProps {
  readonly label: string;
  readonly name: string;
  /** What to write instead of what stands there; null: it is good. */
  readonly remedy: string | null;
  /** What else to know of what stands there, or before writing there. */
  readonly hint?: string | null;
  readonly isTick?: boolean;
  readonly children: (control: FieldControlProps) => JSX.Element;
}

/** A field's label, its control, and beside it what to write where it is faulty. */
export function FieldFrame({
  label,
  name,
  remedy,
  hint = null,
  isTick = false,
  children,
}: FieldFrameProps): JSX.Element {
  const id = useId();
  const remedyId = `${id}-remedy`;
  const isFaulty = remedy !== null;
  const hintId = `${id}-hint`;
  const notes = [isFaulty ? remedyId : null, hint === null ? null : hintId].filter((note) => note !== null);
  const told = {
    "aria-invalid": isFaulty,
    ...(notes.length > 0 ? { "aria-describedby": notes.join(" ") } : {}),
  };
  return (
    <div className={isTick ? "order-field order-field-tick" : "order-field"}>
      <label htmlFor={id}>{label}</label>
      {children({ id, name, ...told })}
      {isFaulty && (
        <p id={remedyId} className="late-words">
          {remedy}
        </p>
      )}
      {hint !== null && (
        <p id={hintId} className="hint">
          {hint}
        </p>
      )}
    </div>
  );
}

/** Fields whose text the browser cannot read, such as half a date: it hands out nothing for them. */
export function halfWritten(form: HTMLFormElement | null): readonly string[] {
  const inputs = [...(form?.querySelectorAll("input") ?? [])];
  return inputs.filter(({ validity }) => validity.badInput).map(({ name }) => name);
}

/** What a field frame hands to its control. */
export interface FieldControlProps {
  readonly id: string;
  readonly name: string;
  readonly "aria-invalid": boolean;
  readonly "aria-describedby"?: string;
}
