import type { JSX } from "react";
import type { FilterChoice } from "../kernels/filter-choice.ts";

interface FilterSelectProps {
  readonly label: string;
  /** Words for no filter. */
  readonly all: string;
  /** Words for a value, as of a link, that is none of the choices. */
  readonly missing: (value: string) => string;
  readonly value: string | null;
  readonly choices: readonly FilterChoice[];
  readonly onChange: (value: string | null) => void;
}

/** One part of a filter; a value that is not among the choices stays to be seen and taken away. */
export function FilterSelect({
  label,
  all,
  missing,
  value,
  choices,
  onChange,
}: FilterSelectProps): JSX.Element {
  const isKnown = value === null || choices.some(([id]) => id === value);
  return (
    <select
      className="select"
      aria-label={label}
      value={value ?? ""}
      onChange={({ target }) => onChange(target.value === "" ? null : target.value)}
    >
      <option value="">{all}</option>
      {!isKnown && <option value={value}>{missing(value)}</option>}
      {choices.map(([id, name]) => (
        <option key={id} value={id}>
          {name}
        </option>
      ))}
    </select>
  );
}
